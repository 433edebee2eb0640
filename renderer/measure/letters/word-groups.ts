import type { LineBlob, LineWork } from '../lines/line-work.ts';

/** A letter, or letters that touch, with the dots and bars over them. */
export interface Group {
  blobs: LineBlob[];
  from: number;
  to: number;
}

/** The ink between two word gaps. */
export interface WordWork {
  groups: Group[];
  from: number;
  to: number;
  /** Free space before it along the baseline, pixels; null for the first of a line. */
  gapBefore: number | null;
  /** Whether a gap beside it may as well be one inside a word. */
  doubt?: boolean;
  /** Moved into its line by hand: it stands above or below it. */
  moved?: boolean;
}

/** A word that belongs to a line although it stands elsewhere: inserted above or below it, with a caret perhaps. */
export interface MovedWord {
  line: number;
  word: WordWork;
  /** Where it was taken out of another line: the space there is no word gap. Null where that line is gone. */
  hole: { line: number; at: number } | null;
}

/** Ink that shares this much of its width with the group before belongs to it (dots, bars, accents). */
const SHARED = 0.5;

/** Joins blobs that lie over each other. */
export function groupsOf(line: LineWork): Group[] {
  const groups: Group[] = [];
  for (const lineBlob of line.blobs) {
    const last = groups[groups.length - 1];
    if (last) {
      const overlap = Math.min(last.to, lineBlob.to) - lineBlob.from;
      const narrower = Math.min(last.to - last.from, lineBlob.to - lineBlob.from);
      if (overlap > SHARED * narrower) {
        last.blobs.push(lineBlob);
        last.to = Math.max(last.to, lineBlob.to);
        continue;
      }
    }
    groups.push({ blobs: [lineBlob], from: lineBlob.from, to: lineBlob.to });
  }
  return groups;
}

/** Free space between neighboring groups, pixels; negative when they overlap. */
export function gapsOf(groups: readonly Group[]): number[] {
  const gaps: number[] = [];
  let right = -Infinity;
  groups.forEach((group, i) => {
    if (i > 0) gaps.push(group.from - right);
    right = Math.max(right, group.to);
  });
  return gaps;
}
