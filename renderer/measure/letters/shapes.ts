import type { Hole } from '../image/holes.ts';
import type { Layout } from '../lines/page-layout.ts';
import { JOINED_WIDTH } from '../lines/line-work.ts';
import type { InkMap } from '../pieces/run-map.ts';
import type { Group } from './word-groups.ts';

/** Cells of the grid that a letter's ink is looked at through, each way. */
const GRID = 5;
/** Letters look alike when their cells differ by at most this on average … */
const ALIKE = 0.075;
/** … and their width over height by at most this (ln). */
const ALIKE_RATIO = 0.13;

/** A letter's looks, free of its size. */
interface Looks {
  cells: Float32Array;
  lnRatio: number;
  loops: number;
}

/**
 * Sorts the unjoined letters of a page into kinds that look alike, without reading them: same loops, same proportions,
 * ink in the same places. The first of a kind stands for it. Only used to compare like with like.
 */
export function shapeKinds(layout: Layout, holesByBlob: ReadonlyMap<number, readonly Hole[]>): Map<Group, number> {
  const kinds: Looks[] = [];
  const found = new Map<Group, number>();
  layout.words.forEach((words, i) => {
    for (const word of words) {
      const widest = JOINED_WIDTH * layout.sizeOf(i, word);
      for (const group of word.groups) {
        if (group.to - group.from > widest) continue;
        const looks = looksOf(group, layout.map, holesByBlob);
        let kind = 0;
        while (kind < kinds.length && !areAlike(kinds[kind]!, looks)) kind += 1;
        if (kind === kinds.length) kinds.push({ ...looks, cells: looks.cells.slice() });
        found.set(group, kind);
      }
    }
  });
  return found;
}

/** Cells of the letter at hand: only the first of a kind keeps its own. */
const handCells = new Float32Array(GRID * GRID);

function looksOf(group: Group, map: InkMap, holesByBlob: ReadonlyMap<number, readonly Hole[]>): Looks {
  let left = Infinity;
  let right = -Infinity;
  let top = Infinity;
  let bottom = -Infinity;
  let loops = 0;
  for (const { blob } of group.blobs) {
    left = Math.min(left, blob.left);
    right = Math.max(right, blob.right);
    top = Math.min(top, blob.top);
    bottom = Math.max(bottom, blob.bottom);
    loops += holesByBlob.get(blob.component)?.length ?? 0;
  }
  const [wide, high] = [right - left, bottom - top];
  const cells = handCells.fill(0);
  for (const { blob } of group.blobs) {
    let y = -1;
    let row = 0;
    for (let i = blob.firstRun, end = i + blob.runCount; i < end; i += 1) {
      if (map.row[i] !== y) {
        y = map.row[i]!;
        row = GRID * Math.min(GRID - 1, Math.floor((GRID * (y - top + 0.5)) / high));
      }
      const to = (GRID * (map.to[i]! - left)) / wide;
      let from = (GRID * (map.from[i]! - left)) / wide;
      // Spread over its cells.
      for (let c = Math.floor(from); from < to && c < GRID; from = c) {
        cells[row + c] = cells[row + c]! + Math.min(to, c + 1) - from;
        c += 1;
      }
    }
  }
  const rows = high / GRID;
  for (let k = 0; k < cells.length; k += 1) cells[k] = cells[k]! / rows;
  return { cells, lnRatio: Math.log(wide / high), loops };
}

function areAlike(a: Looks, b: Looks): boolean {
  if (a.loops !== b.loops || Math.abs(a.lnRatio - b.lnRatio) > ALIKE_RATIO) return false;
  let sum = 0;
  for (let k = 0; k < a.cells.length; k += 1) sum += Math.abs(a.cells[k]! - b.cells[k]!);
  return sum <= ALIKE * a.cells.length;
}
