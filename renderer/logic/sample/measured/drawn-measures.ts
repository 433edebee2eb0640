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
