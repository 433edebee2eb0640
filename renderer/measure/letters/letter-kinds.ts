/** Letters by where they reach: t and f are kept apart, their height differs from hand to hand. */
export const SMALL = 'acemnorsuvwxz';
export const ASCENDING = 'bdhkl';
export const DESCENDING = 'gjpqy';
/** Letters that should close, lower case as written. */
export const CLOSING = 'abdgopq';

/** Usual widths in x-heights, ink only: from the shapes of print and joined model alphabets (common practice). */
const WIDTHS: Record<string, number> = {
  a: 0.9,
  b: 0.85,
  c: 0.8,
  d: 0.9,
  e: 0.85,
  f: 0.65,
  g: 0.9,
  h: 0.85,
  i: 0.25,
  j: 0.45,
  k: 0.8,
  l: 0.3,
  m: 1.4,
  n: 0.85,
  o: 0.9,
  p: 0.9,
  q: 0.9,
  r: 0.65,
  s: 0.7,
  t: 0.65,
  u: 0.9,
  v: 0.85,
  w: 1.3,
  x: 0.85,
  y: 0.9,
  z: 0.85,
  I: 0.4,
  J: 0.9,
  M: 1.6,
  W: 1.8,
  '.': 0.2,
  ',': 0.25,
  "'": 0.2,
  '-': 0.5,
  '!': 0.25,
  ':': 0.2,
  ';': 0.25,
  '1': 0.4,
};
const CAPITAL = 1.25;
const OTHER = 0.9;
/** Free space between letters that do not touch, x-heights. */
export const LETTER_SPACE = 0.18;

export function usualWidth(char: string): number {
  const known = WIDTHS[char];
  if (known !== undefined) return known;
  return char !== char.toLowerCase() ? CAPITAL : OTHER;
}

/** Where a letter reaches; null for capitals, digits, marks and the letters that vary (f, t, i). */
export function zoneOf(char: string): 'x' | 'ascender' | 'descender' | 'both' | null {
  if (SMALL.includes(char)) return 'x';
  if (ASCENDING.includes(char)) return 'ascender';
  if (DESCENDING.includes(char)) return char === 'j' ? 'both' : 'descender';
  return null;
}

/** Whether a letter rises clearly above the small letters: true, false, or null where hands differ. */
export function rises(char: string): boolean | null {
  if (ASCENDING.includes(char) || char === 'f' || /[A-Z0-9]/.test(char)) return true;
  if (SMALL.includes(char) || 'gpqy'.includes(char) || /[.,]/.test(char)) return false;
  return null;
}

/** Whether a letter hangs clearly below the baseline. */
export function hangs(char: string): boolean | null {
  if (DESCENDING.includes(char)) return true;
  if (char === 'f' || char === 'z' || char === ',' || char === 'Q' || char === 'J') return null;
  return false;
}

/** The bowl of a letter lies between these heights, x-heights; loops of ascenders and tails lie beyond. */
export const BOWL = { low: -0.3, high: 1.2 } as const;

/** Most bowls that a letter is written with: capitals, figures and letters with loops of their own vary. */
export function bowlsOf(char: string): number {
  if (CLOSING.includes(char) || 'ekszf'.includes(char)) return 1;
  return /[a-z.,;:'!-]/.test(char) ? 0 : 2;
}
