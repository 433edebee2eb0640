/** From page millimeters to pixels of the picture on the screen, and the shapes that the overlay draws. */
import type { BoxMm, PageResult } from '../../db/types/sample.ts';

export interface Px {
  x: number;
  y: number;
}

/** Map of the measuring engine: page mm to picture pixels, a 3 x 3 homography row by row; null when the page has none. */
export type ToPicture = readonly number[] | null;

export const mapOf = (result: PageResult): ToPicture => {
  const map = (result.page as { toPicture?: unknown }).toPicture;
  return Array.isArray(map) && map.length === 9 ? (map as number[]) : null;
};

export function toPicture(map: readonly number[], xMm: number, yMm: number): Px {
  const [a = 1, b = 0, c = 0, d = 0, e = 1, f = 0, g = 0, h = 0, i = 1] = map;
  const w = g * xMm + h * yMm + i;
  return { x: (a * xMm + b * yMm + c) / w, y: (d * xMm + e * yMm + f) / w };
}

/** Page mm of a pixel of the picture: the inverse of `toPicture`. */
export function toPage(map: readonly number[], p: Px): { xMm: number; yMm: number } {
  const [a = 1, b = 0, c = 0, d = 0, e = 1, f = 0, g = 0, h = 0, i = 1] = map;
  const A = e * i - f * h,
    B = c * h - b * i,
    C = b * f - c * e;
  const D = f * g - d * i,
    E = a * i - c * g,
    F = c * d - a * f;
  const G = d * h - e * g,
    H = b * g - a * h,
    I = a * e - b * d;
  const w = G * p.x + H * p.y + I;
  return { xMm: (A * p.x + B * p.y + C) / w, yMm: (D * p.x + E * p.y + F) / w };
}

export const boxPoints = (map: readonly number[], box: BoxMm): string =>
  [
    toPicture(map, box.xMm, box.yMm),
    toPicture(map, box.xMm + box.widthMm, box.yMm),
    toPicture(map, box.xMm + box.widthMm, box.yMm + box.heightMm),
    toPicture(map, box.xMm, box.yMm + box.heightMm),
  ]
    .map(({ x, y }) => `${x.toFixed(1)},${y.toFixed(1)}`)
    .join(' ');

export const linePoints = (map: readonly number[], points: readonly { xMm: number; yMm: number }[]): string =>
  points
    .map(({ xMm, yMm }) => toPicture(map, xMm, yMm))
    .map(({ x, y }) => `${x.toFixed(1)},${y.toFixed(1)}`)
    .join(' ');

/** Scale from two clicked points a known distance apart. @throws nothing; null when the points coincide or the distance is not positive */
export function pxPerMm(a: Px, b: Px, distanceMm: number): number | null {
  const distance = Math.hypot(a.x - b.x, a.y - b.y);
  return distance > 0 && distanceMm > 0 ? distance / distanceMm : null;
}

export const dpiOf = (px: number): number => px * 25.4;
export const pxPerMmOf = (dpi: number): number => dpi / 25.4;

export type Layer = 'lines' | 'words' | 'bands' | 'gaps' | 'letters' | 'closure' | 'slant';

export const layers: readonly { code: Layer; name: string }[] = [
  { code: 'lines', name: 'Baselines' },
  { code: 'words', name: 'Words' },
  { code: 'bands', name: 'Letter height' },
  { code: 'gaps', name: 'Gaps' },
  { code: 'letters', name: 'Letters' },
  { code: 'closure', name: 'Closing' },
  { code: 'slant', name: 'Slant' },
];

/** The layer that shows what a measure was read from. */
export function layerOf(measure: string): Layer {
  if (/^(x-height|line-decrement|page-decrement)/.test(measure)) return 'bands';
  if (measure.startsWith('baseline') || measure.includes('drift')) return 'lines';
  if (/gap|overlap/.test(measure)) return 'gaps';
  if (/clos|loop/.test(measure)) return 'closure';
  if (measure.startsWith('slant')) return 'slant';
  return 'letters';
}

type PageLine = PageResult['lines'][number];
type PageWord = PageLine['words'][number];
interface Letter {
  box: BoxMm;
  loops: number;
  closureExpected: boolean | null;
  excluded: boolean;
}
export const lettersOf = (word: PageWord): readonly Letter[] => (word.letters as Letter[] | undefined) ?? [];

/** The x-height band over a line's baseline. */
export function bandPoints(map: readonly number[], line: PageLine): string {
  const base = (line.baseline as { xMm: number; yMm: number }[] | undefined) ?? [];
  const x = line.xHeightMm;
  if (x === null || base.length === 0) return '';
  const top = [...base].reverse().map((p) => ({ xMm: p.xMm, yMm: p.yMm - x }));
  return linePoints(map, [...base, ...top]);
}

/** Boxes of letters: plain, and those that should close as closed or gaping (told by shape and dash as well as color). */
export function letterShapes(
  word: PageWord,
  plain: boolean,
  closure: boolean,
): { box: BoxMm; look: 'letter' | 'closed' | 'gaping' }[] {
  return lettersOf(word).flatMap((letter) => {
    if (letter.excluded) return [];
    const shapes: { box: BoxMm; look: 'letter' | 'closed' | 'gaping' }[] = [];
    if (plain) shapes.push({ box: letter.box, look: 'letter' });
    if (closure && letter.loops > 0) shapes.push({ box: letter.box, look: 'closed' });
    if (closure && letter.loops === 0 && letter.closureExpected === true)
      shapes.push({ box: letter.box, look: 'gaping' });
    return shapes;
  });
}

/** One stroke a word at the word's slant, standing on its foot. */
export function slantLines(map: readonly number[], line: PageLine): string[] {
  return line.words.flatMap((word) => {
    const slant = word.slantDeg as number | null | undefined;
    if (slant === null || slant === undefined) return [];
    const foot = { xMm: word.box.xMm + word.box.widthMm / 2, yMm: word.box.yMm + word.box.heightMm };
    const rise = word.box.heightMm;
    return [
      linePoints(map, [foot, { xMm: foot.xMm + rise * Math.tan((slant * Math.PI) / 180), yMm: foot.yMm - rise }]),
    ];
  });
}
