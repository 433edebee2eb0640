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
  const { rows, from, to } = runs;
  const parent = new Int32Array(runs.count);
  for (let r = 0; r < rows[1]!; r += 1) parent[r] = r;
  for (let y = 1; y < runs.height; y += 1) {
    let above = rows[y - 1]!;
    const aboveEnd = rows[y]!;
    for (let r = aboveEnd, end = rows[y + 1]!; r < end; r += 1) {
      const left = from[r]! - reach;
      const right = to[r]! + reach;
      while (above < aboveEnd && to[above]! <= left) above += 1;
      // Most runs touch one run above: they only take over its root.
      parent[r] = above < aboveEnd && from[above]! < right ? root(parent, above) : r;
      for (let a = above + 1; a < aboveEnd && from[a]! < right; a += 1) join(parent, a, r);
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
  // No run has a later one as its parent: the parent's label is known, in the same list.
  const labels = parent;
  let count = 0;
  for (let i = 0; i < labels.length; i += 1) labels[i] = labels[i] === i ? count++ : labels[labels[i]!]!;
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
