/** A chain of points x0, y0, x1, y1, …; x to the right, y up, baseline at 0. */
export type Chain = Float64Array;

/** One letter, in units of its font's x-height (the median height of a c e m n o r s u v w x z is 1). */
export interface Glyph {
  readonly char: string;
  /** Pen travel to the next letter, in x-heights. */
  readonly advance: number;
  /** Filled outlines (outline fonts); non-zero winding. */
  readonly rings: readonly Chain[];
  /** Centre lines of the pen (single-stroke fonts). */
  readonly strokes: readonly Chain[];
}

/** Letters of one hand. */
export interface LetterFont {
  readonly name: string;
  /** Letters are connected to their neighbours. */
  readonly joined: boolean;
  /** Outlines are filled; single-stroke letters are drawn with a pen of any width. */
  readonly kind: 'outline' | 'pen';
  has(char: string): boolean;
  /** @throws RangeError for a character that the font lacks */
  glyph(char: string): Glyph;
  /** Extra advance between two neighbours, in x-heights. */
  kern(left: string, right: string): number;
}

/** Letters whose top is the x-height (measure 'x-height'). */
export const X_HEIGHT_LETTERS = 'acemnorsuvwxz';

/** Smallest and largest coordinates of some chains; null when there is no point. */
export function extent(chains: readonly Chain[]): { left: number; right: number; low: number; high: number } | null {
  let left = Infinity;
  let right = -Infinity;
  let low = Infinity;
  let high = -Infinity;
  for (const chain of chains) {
    for (let i = 0; i + 1 < chain.length; i += 2) {
      const x = chain[i] as number;
      const y = chain[i + 1] as number;
      if (x < left) left = x;
      if (x > right) right = x;
      if (y < low) low = y;
      if (y > high) high = y;
    }
  }
  return left === Infinity ? null : { left, right, low, high };
}
