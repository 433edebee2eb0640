/**
 * Ink as data. Columns of numbers instead of objects: half an hour of writing is 430,000 samples.
 * x and y are mm where the ink is calibrated, else units of the device; y runs down. t is ms. NaN: not told.
 */

export const INK_TASKS = ['writing', 'loops', 'line', 'spiral', 'hold'] as const;
export type InkTask = (typeof INK_TASKS)[number];

/** One stretch of pen motion, touching (`down`, a contact) or hovering (`up`). */
export interface InkTrace {
  kind: 'down' | 'up';
  x: Float64Array;
  y: Float64Array;
  /** Null: the file tells no time. */
  t: Float64Array | null;
  /** Pressure, 0 to 1 where the document says `forceIsShare`. */
  force: Float64Array | null;
  /** Degrees. */
  tiltX: Float64Array | null;
  tiltY: Float64Array | null;
  rotation: Float64Array | null;
}

export interface InkDocument {
  traces: InkTrace[];
  /** Traces of each line and word (indices into `traces`), where the file groups them. */
  lines: number[][];
  words: number[][];
  task: string | null;
  text: string | null;
  /** Unix time of the recording's zero, ms. */
  startedAtMs: number | null;
  /** x and y are mm. */
  calibrated: boolean;
  /** Pressure runs from 0 to 1; false where its largest value is not known. */
  forceIsShare: boolean;
}

export interface InkWarning {
  code: string;
  message: string;
}

/** Why a value is null or not reliable. */
export type InkReason =
  'few' | 'noise' | 'rate' | 'task' | 'no-scale' | 'no-time' | 'no-pressure' | 'no-text' | 'no-words' | 'quality';

export interface InkMeasure {
  code: string;
  value: number | null;
  unit: string;
  /** How many strokes, contacts, gaps or samples it rests on. */
  n: number;
  /** 95 % interval; null where none is told. */
  low: number | null;
  high: number | null;
  method: string;
  reliable: boolean;
  why: InkReason | null;
}

export type InkVerdict = 'good' | 'limited' | 'unusable';

export interface InkQuality {
  verdict: InkVerdict;
  rateHz: number | null;
  /** Share of samples lost on the way, 0 to 1. */
  droppedShare: number;
  /** Longest interval inside a contact that was not a still pen, ms. */
  longestGapMs: number | null;
  /** Scatter of positions about the filtered path, mm. */
  noiseMm: number | null;
  pressure: boolean;
  tilt: boolean;
  hover: boolean;
  calibrated: boolean;
}

export type TremorReason =
  'task' | 'short' | 'quality' | 'rate' | 'no-scale' | 'no-clear-peak' | 'below-noise' | 'no-time';

export interface InkTremor {
  frequencyHz: number | null;
  amplitudeRmsMm: number | null;
  /** Power of the position between 3 and 12 Hz. */
  bandPowerMm2: number | null;
  peakRatio: number | null;
  windows: number;
  /** Why no tremor is reported; null when one is. */
  reason: TremorReason | null;
}

/** Seconds from the first sample of the first contact. */
export interface InkSpan {
  fromS: number;
  toS: number;
}

/** Box of the ink of a word, mm from the top left corner of the drawn page. */
export interface InkBox {
  xMm: number;
  yMm: number;
  widthMm: number;
  heightMm: number;
}

export interface InkWord extends InkSpan {
  lifts: number;
  box: InkBox | null;
}

export interface InkResult {
  source: { format: string; contacts: number; samples: number; task: InkTask; letters: number | null };
  quality: InkQuality;
  measures: InkMeasure[];
  tremor: InkTremor;
  stops: InkSpan[];
  pauses: InkSpan[];
  words: InkWord[];
  warnings: InkWarning[];
}
