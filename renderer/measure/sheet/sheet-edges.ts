import type { Point } from './homography.ts';

/** Sheet sizes, mm, upright (ISO 216; ANSI). */
export const PAPERS = [
  { name: 'A4', widthMm: 210, heightMm: 297 },
  { name: 'Letter', widthMm: 215.9, heightMm: 279.4 },
  { name: 'A5', widthMm: 148, heightMm: 210 },
  { name: 'Legal', widthMm: 215.9, heightMm: 355.6 },
  { name: 'A3', widthMm: 297, heightMm: 420 },
] as const;

export interface Paper {
  name: string;
  widthMm: number;
  heightMm: number;
}

/** Sides may differ from a known sheet by this share (torn edges, lens): then it is that sheet. */
const SIDES = 0.045;
/** The size by the scale may differ from a known sheet by this share: a camera's scale is only roughly known. */
const SIZE = 0.12;

/** Height over width of the sheet whose corners are seen: from the perspective where it is strong, else from the sides. */
export function sheetRatio(corners: readonly Point[], width: number, height: number): number {
  const side = (i: number, j: number): number =>
    Math.hypot(corners[i]!.x - corners[j]!.x, corners[i]!.y - corners[j]!.y);
  const plain = (side(0, 3) + side(1, 2)) / (side(0, 1) + side(3, 2));
  const exact = ratioByPerspective(corners, width / 2, height / 2, Math.hypot(width, height));
  // Far from the plain ratio the perspective was too weak to tell.
  return exact !== null && Math.abs(Math.log(exact / plain)) < 0.2 ? exact : plain;
}

/** Zhang & He 2003 (whiteboard scanning; from memory): focal length from two vanishing directions, then the ratio. */
function ratioByPerspective(p: readonly Point[], cx: number, cy: number, diagonal: number): number | null {
  const m = p.map((q) => [q.x - cx, q.y - cy, 1] as const);
  const cross = (a: readonly number[], b: readonly number[]): number[] => [
    a[1]! * b[2]! - a[2]! * b[1]!,
    a[2]! * b[0]! - a[0]! * b[2]!,
    a[0]! * b[1]! - a[1]! * b[0]!,
  ];
  const dot = (a: readonly number[], b: readonly number[]): number => a[0]! * b[0]! + a[1]! * b[1]! + a[2]! * b[2]!;
  const [m1, m2, m3, m4] = [m[0]!, m[1]!, m[3]!, m[2]!];
  const k2 = dot(cross(m1, m4), m3) / dot(cross(m2, m4), m3);
  const k3 = dot(cross(m1, m4), m2) / dot(cross(m3, m4), m2);
  const n2 = m2.map((v, i) => k2 * v - m1[i]!);
  const n3 = m3.map((v, i) => k3 * v - m1[i]!);
  // Both pairs of edges must visibly converge.
  if (Math.abs(k2 - 1) < 0.02 || Math.abs(k3 - 1) < 0.02) return null;
  const f2 = -(n2[0]! * n3[0]! + n2[1]! * n3[1]!) / (n2[2]! * n3[2]!);
  if (!(f2 > 0) || Math.sqrt(f2) < 0.4 * diagonal || Math.sqrt(f2) > 6 * diagonal) return null;
  const across = (n2[0]! ** 2 + n2[1]! ** 2) / f2 + n2[2]! ** 2;
  const down = (n3[0]! ** 2 + n3[1]! ** 2) / f2 + n3[2]! ** 2;
  return Math.sqrt(down / across);
}

/**
 * The known sheet that fits, upright or lying; null when none does.
 * @param ratio height over width
 * @param meanSideMm square root of the area by the scale given, mm; null when no scale is known
 */
export function paperOf(ratio: number, meanSideMm: number | null): Paper | null {
  let best: Paper | null = null;
  let least = Infinity;
  for (const paper of PAPERS)
    for (const lying of [false, true]) {
      const [w, h] = lying ? [paper.heightMm, paper.widthMm] : [paper.widthMm, paper.heightMm];
      const sides = Math.abs(Math.log(ratio / (h / w)));
      const size = meanSideMm === null ? 0 : Math.abs(Math.log(meanSideMm / Math.sqrt(w * h)));
      if (sides > SIDES || size > SIZE) continue;
      // The A sizes have one shape: the size tells them apart; without a scale A4 comes first.
      const cost = sides + 0.3 * size;
      if (cost < least - 1e-9) [least, best] = [cost, { name: paper.name, widthMm: w, heightMm: h }];
    }
  return best;
}
