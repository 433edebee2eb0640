import type { Runs } from './runs.ts';

/** Connected pieces of runs, with what the later stages ask of each. */
export interface Components {
  count: number;
  /** Component of each run, numbered from 0 in order of their first run. */
  labels: Int32Array;
  area: Int32Array;
  left: Int32Array;
  /** Column after the last. */
  right: Int32Array;
  top: Int32Array;
  /** Row after the last. */
  bottom: Int32Array;
}

/**
 * Connected components of runs by union-find, without a label image.
 * @param reach 1 joins diagonal neighbors (8-connected: ink), 0 does not (4-connected: paper)
 */
export function connectedComponents(runs: Runs, reach: 0 | 1): Components {
  const parent = new Int32Array(runs.count);
  for (let i = 0; i < runs.count; i += 1) parent[i] = i;
  for (let y = 1; y < runs.height; y += 1) {
    let above = runs.rows[y - 1]!;
    const aboveEnd = runs.rows[y]!;
    const end = runs.rows[y + 1]!;
    for (let r = aboveEnd; r < end; r += 1) {
      const from = runs.from[r]! - reach;
      const to = runs.to[r]! + reach;
      while (above < aboveEnd && runs.to[above]! <= from) above += 1;
      for (let a = above; a < aboveEnd && runs.from[a]! < to; a += 1) join(parent, a, r);
    }
  }
  return gather(runs, parent);
}

function root(parent: Int32Array, i: number): number {
  let at = i;
  while (parent[at] !== at) {
    parent[at] = parent[parent[at]!]!;
    at = parent[at]!;
  }
  return at;
}

/** The smaller number becomes the root, so that labels follow reading order. */
function join(parent: Int32Array, a: number, b: number): void {
  const ra = root(parent, a);
  const rb = root(parent, b);
  if (ra < rb) parent[rb] = ra;
  else parent[ra] = rb;
}

function gather(runs: Runs, parent: Int32Array): Components {
  const labels = parent;
  let count = 0;
  const numbers = new Int32Array(runs.count);
  for (let i = 0; i < runs.count; i += 1) {
    const top = root(parent, i);
    if (top === i) {
      numbers[i] = count;
      count += 1;
    } else numbers[i] = numbers[top]!;
  }
  labels.set(numbers);
  const area = new Int32Array(count);
  const left = new Int32Array(count).fill(runs.width);
  const right = new Int32Array(count);
  const top = new Int32Array(count).fill(runs.height);
  const bottom = new Int32Array(count);
  for (let y = 0; y < runs.height; y += 1) {
    for (let r = runs.rows[y]!; r < runs.rows[y + 1]!; r += 1) {
      const label = labels[r]!;
      const from = runs.from[r]!;
      const to = runs.to[r]!;
      area[label] = area[label]! + to - from;
      if (from < left[label]!) left[label] = from;
      if (to > right[label]!) right[label] = to;
      if (y < top[label]!) top[label] = y;
      bottom[label] = y + 1;
    }
  }
  return { count, labels, area, left, right, top, bottom };
}
