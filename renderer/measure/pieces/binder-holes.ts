import type { Components } from '../image/components.ts';

/** Holes of binders: diameter 5 to 8 mm, at least this far apart down a side (common practice: ISO 838, 80 mm; others). */
const SIZE_MM = { least: 4, most: 9.5 } as const;
const APART_MM = 60;
/** Middle of a hole from the side of the sheet, at most; a photo shows table beside it. */
const MARGIN_MM = 22;
/** Holes of one sheet lie over each other and are of one size, to these shares. */
const ROUND = 0.15;
const ALIGNED_MM = 1.5;
/** Beside a hole there is no other ink; a letter has its neighbor nearer than this, mm. */
const ALONE_MM = 5;

/** Smaller pieces are no neighbors, mm. */
const SPECK_MM = 0.5;

interface Box {
  isAlone: boolean;
  left: number;
  right: number;
  top: number;
  bottom: number;
}

/**
 * Punched holes: round pieces of one size over each other near a side. Letters are not: none comes twice, so large, at
 * the very margin, over nothing but paper.
 * @returns whether a piece of ink is a hole or lies in one
 */
export function binderHoles(components: Components, width: number, pxPerMm: number): (c: number) => boolean {
  const round: Box[] = [];
  for (let c = 0; c < components.count; c += 1) {
    const box = {
      left: components.left[c]!,
      right: components.right[c]!,
      top: components.top[c]!,
      bottom: components.bottom[c]!,
    };
    const [wide, high] = [box.right - box.left, box.bottom - box.top];
    if (Math.min(wide, high) < SIZE_MM.least * pxPerMm || Math.max(wide, high) > SIZE_MM.most * pxPerMm) continue;
    if (Math.abs(wide / high - 1) > ROUND) continue;
    const middle = (box.left + box.right) / 2;
    if (Math.min(middle, width - middle) < MARGIN_MM * pxPerMm)
      round.push({ ...box, isAlone: isAlone(components, box, pxPerMm) });
  }
  const like = (a: Box): Box[] =>
    round.filter(
      (b) =>
        b.isAlone &&
        Math.abs(a.top - b.top) > APART_MM * pxPerMm &&
        Math.abs(a.left + a.right - b.left - b.right) / 2 < ALIGNED_MM * pxPerMm &&
        Math.abs((a.right - a.left) / (b.right - b.left) - 1) < ROUND,
    );
  // Writing may run up to one of them, not to all.
  const holes = round.filter((a) => like(a).length >= (a.isAlone ? 1 : 2));
  return (c) =>
    holes.some(
      ({ left, right, top, bottom }) =>
        components.left[c]! >= left &&
        components.right[c]! <= right &&
        components.top[c]! >= top &&
        components.bottom[c]! <= bottom,
    );
}

/** Whether no ink but specks lies beside a box. */
function isAlone(components: Components, { left, right, top, bottom }: Omit<Box, 'isAlone'>, pxPerMm: number): boolean {
  const reach = ALONE_MM * pxPerMm;
  const speck = (SPECK_MM * pxPerMm) ** 2;
  for (let c = 0; c < components.count; c += 1) {
    if (components.area[c]! < speck || components.bottom[c]! <= top || components.top[c]! >= bottom) continue;
    const [l, r] = [components.left[c]!, components.right[c]!];
    if (l >= left && r <= right) continue;
    if (l < right + reach && r > left - reach) return false;
  }
  return true;
}
