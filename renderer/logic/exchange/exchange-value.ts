import type { Sample } from '../../../db/types/sample.ts';

/** One value, with what stands behind it. */
export interface ExchangeValue {
  /** Id of the fact it was read or computed from; with `code` it names the value. */
  factId: string;
  visitId: string | null;
  /** Calendar day, YYYY-MM-DD. */
  day: string;
  /** Instant, ISO 8601; null where only the day is known. */
  at: string | null;
  sample: Sample | null;
  code: string;
  /** Null for a verdict that compares nothing: its words stand in `about`. */
  value: number | null;
  unit: string;
  n: number | null;
  /** 95 % interval, in the unit. */
  low: number | null;
  high: number | null;
  /** Who read or rated. */
  who: string;
  method: string;
  version: string;
  corrected: boolean;
  /** Item, side or goal that a grade or level belongs to; the sentences of a verdict; of pen recordings task and surface. */
  about: string;
  /** What a pen recording was made with; '' for everything else. */
  device: string;
}

export const blank = {
  n: null,
  low: null,
  high: null,
  who: '',
  method: '',
  version: '',
  corrected: false,
  about: '',
  device: '',
};
