/** From page millimeters to pixels of the picture on the screen, and the shapes that the overlay draws. */
import type { Telling } from '../texts/screens/telling.ts';
import { drawnMeasure, type Layer } from './measured/drawn-measures.ts';
import type { BoxMm, PageResult } from '../../../db/types/sample.ts';

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

/** Where the lines of a page lie in the picture; null where there are none. */
export function boundsOf(map: readonly number[], lines: PageResult['lines']) {
  if (lines.length === 0) return null;
  const corners = lines.flatMap(({ box }) => [
    toPicture(map, box.xMm, box.yMm),
    toPicture(map, box.xMm + box.widthMm, box.yMm + box.heightMm),
  ]);
  const xs = corners.map(({ x }) => x);
  return { left: Math.min(...xs), right: Math.max(...xs), top: Math.min(...corners.map(({ y }) => y)) };
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

export type { Layer } from './measured/drawn-measures.ts';

export const layers: readonly Layer[] = ['lines', 'words', 'bands', 'decrement', 'gaps', 'letters', 'closure', 'slant'];

/** The layer that shows what a measure was read from. */
export const layerOf = (measure: string): Layer => drawnMeasure(measure).layer;

type PageLine = PageResult['lines'][number];
type PageWord = PageLine['words'][number];
interface Letter {
  box: BoxMm;
  loops: number;
  closureExpected: boolean | null;
  zone: 'x' | 'ascender' | 'descender' | 'both' | null;
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

/** Foot of a word on its line's baseline: the baseline's height at the word's middle. */
function footOf(line: PageLine, word: PageWord): { xMm: number; yMm: number } | null {
  const base = (line.baseline as { xMm: number; yMm: number }[] | undefined) ?? [];
  const xMm = word.box.xMm + word.box.widthMm / 2;
  const after = base.findIndex((p) => p.xMm >= xMm);
  const right = base[after < 0 ? base.length - 1 : after];
  const left = base[Math.max(0, (after < 0 ? base.length : after) - 1)];
  if (!left || !right) return null;
  const share = right.xMm > left.xMm ? Math.min(1, Math.max(0, (xMm - left.xMm) / (right.xMm - left.xMm))) : 0;
  return { xMm, yMm: left.yMm + share * (right.yMm - left.yMm) };
}

/** Size along a line: an upright as high as each word's small letters, and the line through their tops. */
export function decrementShapes(map: readonly number[], line: PageLine): { uprights: string[]; tops: string } {
  const feet = line.words.flatMap((word) => {
    const foot = word.excluded === true || word.xHeightMm === null ? null : footOf(line, word);
    return foot ? [{ foot, top: { xMm: foot.xMm, yMm: foot.yMm - word.xHeightMm! } }] : [];
  });
  const tops = feet.map(({ top }) => top);
  return { uprights: feet.map(({ foot, top }) => linePoints(map, [foot, top])), tops: linePoints(map, tops) };
}

/** What a measure was read from: boxes to light on the page. */
export function litBoxes(result: PageResult, measure: string): BoxMm[] {
  const words = result.lines.flatMap((line) => line.words.filter((w) => w.excluded !== true));
  const letters = words.flatMap((w) => lettersOf(w).filter((l) => !l.excluded));
  const inZone = (...zones: Letter['zone'][]) => letters.filter((l) => zones.includes(l.zone)).map((l) => l.box);
  const { zones, family } = drawnMeasure(measure);
  if (zones.length > 0) return inZone(...zones);
  if (family === 'word-gaps') return [];
  if (measure === 'closed-loops') return letters.filter((l) => l.loops > 0).map((l) => l.box);
  if (measure === 'closure') return letters.filter((l) => l.closureExpected === true).map((l) => l.box);
  if (measure === 'letter-gap') return letters.map((l) => l.box);
  return words.map((w) => w.box);
}

/** A word's own numbers, for the caption under the page. */
export function wordCaption(result: PageResult, at: { line: number; word: number }, telling: Telling): string {
  const word = result.lines[at.line]?.words[at.word];
  if (!word) return '';
  const { told, decimals } = telling;
  const { caption } = told.measures;
  const parts = [
    word.xHeightMm === null ? '' : caption.height(decimals(word.xHeightMm, 2)),
    word.gapBeforeMm === null ? '' : caption.gap(decimals(word.gapBeforeMm, 1)),
    typeof word.slantDeg === 'number' ? caption.slant(decimals(word.slantDeg, 1)) : '',
    typeof word.strokeWidthMm === 'number' ? caption.stroke(decimals(word.strokeWidthMm, 2)) : '',
  ].filter(Boolean);
  return caption.word(at.line + 1, at.word + 1, word.text ?? '', parts.join(', '));
}

/** Measures that a word has a part in: lit in the list while the word is pointed at. */
export function measuresOfWord(result: PageResult, at: { line: number; word: number }): ReadonlySet<string> {
  const word = result.lines[at.line]?.words[at.word];
  const lit = new Set<string>();
  if (!word || word.excluded === true) return lit;
  if (word.xHeightMm !== null)
    for (const code of ['x-height', 'x-height-cv', 'line-decrement', 'page-decrement']) lit.add(code);
  if (word.gapBeforeMm !== null) for (const code of ['word-gap', 'word-gap-cv', 'gap-ratio']) lit.add(code);
  if (typeof word.slantDeg === 'number') for (const code of ['slant', 'slant-sd']) lit.add(code);
  if (typeof word.strokeWidthMm === 'number') lit.add('stroke-width');
  if (lettersOf(word).some((l) => l.closureExpected === true)) lit.add('closure');
  return lit;
}
