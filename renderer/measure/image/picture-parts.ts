import { STRIP } from './ruling-votes.ts';

/** Rows or columns that one thread does. */
export interface Part {
  first: number;
  /** The one after the last. */
  end: number;
}

/** Tiles and strips are not divided between threads: the larger of both. */
const UNDIVIDED = STRIP;

/**
 * A picture's rows (or columns) in two parts, for two threads; in one where it is too small.
 * @param share of the first part
 */
export function parts(length: number, share = 0.5): Part[] {
  const middle = Math.round((share * length) / UNDIVIDED) * UNDIVIDED;
  if (middle === 0 || middle >= length) return [{ first: 0, end: length }];
  return [
    { first: 0, end: middle },
    { first: middle, end: length },
  ];
}
