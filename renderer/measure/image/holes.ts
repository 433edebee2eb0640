import { connectedComponents } from './components.ts';
import type { Components } from './components.ts';
import { paperRuns } from './runs.ts';
import type { Runs } from './runs.ts';

export interface Hole {
  left: number;
  /** Column after the last. */
  right: number;
  top: number;
  /** Row after the last. */
  bottom: number;
  area: number;
  /** The piece of ink around it. */
  component: number;
}

/**
 * Closed loops: paper (4-connected) that does not reach the edge of the picture, inside ink (8-connected).
 * @param smallest area in pixels from which a hole counts (1: every hole, as independent counters do)
 */
export function holes(ink: Runs, components: Components, smallest: number): Hole[] {
  const paper = paperRuns(ink);
  const pieces = connectedComponents(paper, 0);
  // Pieces are numbered in the order of their first runs.
  const first = new Int32Array(pieces.count);
  for (let r = 0, next = 0; r < paper.count; r += 1)
    if (pieces.labels[r] === next) {
      first[next] = r;
      next += 1;
    }
  const found: Hole[] = [];
  for (let i = 0; i < pieces.count; i += 1) {
    const left = pieces.left[i]!;
    const top = pieces.top[i]!;
    if (left === 0 || top === 0 || pieces.right[i] === ink.width || pieces.bottom[i] === ink.height) continue;
    if (pieces.area[i]! < smallest) continue;
    const component = inkEndingAt(ink, components, top, paper.from[first[i]!]!);
    found.push({ left, right: pieces.right[i]!, top, bottom: pieces.bottom[i]!, area: pieces.area[i]!, component });
  }
  return found;
}

/** Component of the ink run that ends right before a column of a row. */
function inkEndingAt(ink: Runs, components: Components, y: number, x: number): number {
  let low = ink.rows[y]!;
  let high = ink.rows[y + 1]! - 1;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (ink.to[middle]! < x) low = middle + 1;
    else high = middle;
  }
  return components.labels[low]!;
}
