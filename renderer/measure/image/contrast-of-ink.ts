import type { Ink } from './ink.ts';

/** From this contrast down writing is faint: ordinary pens lie between 45 and 75 %, firm pencil between 40 and 55 %. */
export const FAINT = 0.37;

/** How much darker than its paper the ink is, share of the paper's brightness; null without ink. */
export function contrastOf({ runs, levels: { half, ink, paper } }: Ink): number | null {
  if (runs.count === 0) return null;
  let sum = 0;
  let n = 0;
  for (let t = 0; t < half.length; t += 1) {
    if (half[t] === 0) continue;
    sum += 1 - ink[t]! / Math.max(1, paper[t]!);
    n += 1;
  }
  return n === 0 ? null : sum / n;
}
