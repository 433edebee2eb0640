/** How each measure is shown on its page: the layer that it was read from, and the letters that it speaks of. */

export type Layer = 'lines' | 'words' | 'bands' | 'decrement' | 'gaps' | 'letters' | 'closure' | 'slant';

/** Part of a letter: small body, what stands above it, what hangs below it. */
type Zone = 'x' | 'ascender' | 'descender' | 'both' | 'other';

export interface DrawnMeasure {
  layer: Layer;
  /** Letters of these zones are lit; none = as the family says. */
  zones: readonly Exclude<Zone, 'other'>[];
  /** word-gaps: what lies between words, so no letter is lit. */
  family: 'letters' | 'word-gaps';
}

const row = (
  layer: Layer,
  zones: DrawnMeasure['zones'] = [],
  family: DrawnMeasure['family'] = 'letters',
): DrawnMeasure => ({
  layer,
  zones,
  family,
});

const rows: Readonly<Record<string, DrawnMeasure>> = {
  'x-height': row('bands', ['x']),
  'x-height-cv': row('bands', ['x']),
  'line-decrement': row('decrement', ['x']),
  'line-decrement-letter': row('decrement', ['x']),
  'page-decrement': row('decrement', ['x']),
  'first-last-five': row('decrement'),
  'baseline-angle': row('lines'),
  'baseline-rms': row('lines'),
  'margin-drift': row('lines'),
  'ruling-distance': row('letters'),
  'word-gap': row('gaps', [], 'word-gaps'),
  'word-gap-cv': row('gaps', [], 'word-gaps'),
  'gap-ratio': row('gaps', [], 'word-gaps'),
  'gap-separation': row('gaps', [], 'word-gaps'),
  'letter-gap': row('gaps'),
  'closed-loops': row('closure'),
  closure: row('closure'),
  slant: row('slant'),
  'slant-sd': row('slant'),
  'ascender-ratio': row('letters', ['ascender', 'both']),
  'descender-ratio': row('letters', ['descender', 'both']),
  'stroke-width': row('letters'),
  darkness: row('letters'),
};

/** A measure that no row names is shown by its letters. */
export const drawnMeasure = (code: string): DrawnMeasure => rows[code] ?? row('letters');

/**
 * Where ordinary writing lies, in the measure's unit (common practice, no source): the height of a small chart where
 * this hand's own spread is not known. Nothing is judged by it.
 */
const ordinary: Readonly<Record<string, readonly [low: number, high: number]>> = {
  'ascender-ratio': [1, 3],
  'descender-ratio': [0, 2],
  'line-decrement-letter': [-0.05, 0.05],
  'first-last-five': [-40, 40],
  'baseline-rms': [0, 1.5],
  'ruling-distance': [0, 3],
  'word-gap-cv': [0, 80],
  'gap-ratio': [0, 30],
  'gap-separation': [0.5, 1],
  closure: [0, 100],
  'slant-sd': [0, 20],
  darkness: [0, 100],
  'margin-drift': [-1, 1],
};

/** Null for counts, and for measures whose spread is always known. */
export const ordinaryRange = (code: string): readonly [low: number, high: number] | null => ordinary[code] ?? null;
