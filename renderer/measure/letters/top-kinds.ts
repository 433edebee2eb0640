import type { Layout } from '../lines/page-layout.ts';
import type { Blob } from '../pieces/ink-pieces.ts';
import { nearOnes, sizeAt } from '../lines/letter-tops.ts';
import type { LetterTop } from '../lines/letter-tops.ts';
import type { LineWork } from '../lines/line-work.ts';
import { traceAt } from '../lines/trace.ts';

/** The outline about a top is looked at in steps of so many x-heights, so many to each side: out to a letter's width. */
const STEP = 0.15;
const STEPS = 4;
/** Upper and lower outline at each. */
const LOOKS = 2 * (2 * STEPS + 1);
/**
 * Tops look alike when their outlines differ by at most this on average, x-heights: more mixes letters, less leaves most
 * tops alone with their looks (tried with 0.05 to 0.16 on 74 drawn pages of joined hands).
 */
const ALIKE = 0.08;
/** Ink reaches no further above a top, or below it, as far as looks go; nor from the baseline, x-heights. */
const ABOVE = 0.6;
const BELOW = -1;
const HANGING = -0.5;
const STANDING = 1;
/** Where there is no ink the outlines are here. */
const NO_LOWER = 0.5;
/** Tops of joined writing from this share on: separate letters are told apart as wholes. */
const JOINED = 0.4;

/** Looks of one top, free of its height; tops whose sums differ too much cannot be alike. */
interface Looks {
  values: Float32Array;
  sum: number;
}

/**
 * Sorts the small tops of joined writing into kinds that look alike, without reading them: the same outline to both
 * sides. The first of a kind stands for it. Only used to compare like with like; empty where letters stand apart.
 */
export function headKinds(layout: Layout): Map<LetterTop, number> {
  const found = new Map<LetterTop, number>();
  const small = layout.lines.map(({ tops, trend }) => nearOnes(tops, trend));
  const all = small.flat();
  if (all.filter((top) => top.joined).length < JOINED * all.length) return found;
  const kinds: Looks[] = [];
  layout.lines.forEach((line, i) => {
    for (const top of small[i]!) {
      const looks = looksOf(top, line);
      if (!looks) continue;
      let kind = 0;
      while (kind < kinds.length && !areAlike(kinds[kind]!, looks)) kind += 1;
      if (kind === kinds.length) kinds.push(looks);
      found.set(top, kind);
    }
  });
  return found;
}

function looksOf({ u, height }: LetterTop, { blobs, baseline, trend }: LineWork): Looks | null {
  const size = sizeAt(trend, u);
  const blob = blobs.find(({ blob: b }) => u >= b.u0 - 1 && u <= b.u1 + 1 && b.v1 - b.v0 > height / 2)?.blob;
  if (!blob) return null;
  const base = traceAt(baseline.curve, u);
  const middle = ((u - blob.u0) / (blob.u1 - blob.u0)) * blob.upper.length;
  const values = new Float32Array(LOOKS);
  let sum = 0;
  for (let k = 0; k < LOOKS / 2; k += 1) {
    const at = Math.floor(middle + (k - STEPS) * STEP * size);
    const [above, below] = outlineAt(blob, at, base, height, size);
    values[2 * k] = above;
    values[2 * k + 1] = below;
    sum += above + below;
  }
  return { values, sum };
}

/** Upper outline above the top and lower one above the baseline, x-heights. */
function outlineAt({ upper, lower }: Blob, at: number, base: number, height: number, size: number): [number, number] {
  if (at < 0 || at >= upper.length) return [BELOW, NO_LOWER];
  const above = (base - upper[at]! - height) / size;
  const below = (base - lower[at]!) / size;
  return [Math.max(BELOW, Math.min(ABOVE, above)), Math.max(HANGING, Math.min(STANDING, below))];
}

function areAlike(a: Looks, b: Looks): boolean {
  const most = ALIKE * LOOKS;
  if (Math.abs(a.sum - b.sum) > most) return false;
  let off = 0;
  for (let i = 0; i < LOOKS; i += 1) {
    off += Math.abs(a.values[i]! - b.values[i]!);
    if (off > most) return false;
  }
  return true;
}
