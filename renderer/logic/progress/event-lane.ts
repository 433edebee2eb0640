/** Names of what happened, in a lane above a chart: what lies too near is one name, and no two names overlap. */

interface Mark {
  at: number;
  label: string;
}

export interface LaneLabel {
  at: number;
  label: string;
  /** 0 = the row nearest to the chart, 1 = the one above; null = no room, the list of changes names it. */
  row: 0 | 1 | null;
}

/** Marks nearer than this are one, px. */
const MERGE_PX = 8;
/** Widest average letter of the labels at 13 px, and the room between two names. */
const LETTER_PX = 6.8;
const ROOM_PX = 10;

/** @param xOf place of an instant, px; @param width of the lane, px @param changes so many in one name */
export function eventLane(
  marks: readonly Mark[],
  xOf: (at: number) => number,
  width: number,
  changes: (n: number) => string,
): LaneLabel[] {
  const groups: Mark[][] = [];
  for (const mark of [...marks].sort((a, b) => a.at - b.at)) {
    const group = groups.at(-1);
    if (group && xOf(mark.at) - xOf(group[0]!.at) < MERGE_PX) group.push(mark);
    else groups.push([mark]);
  }
  const ends = [-Infinity, -Infinity];
  return groups.map((group) => {
    const label = group.length > 2 ? changes(group.length) : group.map((mark) => mark.label).join('; ');
    const at = group[0]!.at;
    const half = (label.length * LETTER_PX) / 2;
    const middle = Math.min(Math.max(xOf(at), half), Math.max(half, width - half));
    const row = ends.findIndex((end) => middle - half > end + ROOM_PX);
    if (row < 0) return { at, label, row: null };
    ends[row] = middle + half;
    return { at, label, row: row as 0 | 1 };
  });
}
