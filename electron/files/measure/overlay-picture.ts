import sharp from 'sharp';
import type { BoxMm, LineResult, PageResult, PointMm } from '../../../renderer/measure/index.ts';

/** Colors that stay apart on paper and in gray print; dashes tell them apart too. */
const INK = {
  word: '#0b6e99',
  doubt: '#c2570c',
  baseline: '#b3261e',
  xHeight: '#7a5c00',
  ruling: '#8a8a8a',
  loop: '#5b2a86',
} as const;

/** A point of the page, mm, as "x,y" in the picture. */
function inPicture(toPicture: readonly number[], { xMm, yMm }: PointMm): string {
  const row = (i: number): number =>
    (toPicture[i] as number) * xMm + (toPicture[i + 1] as number) * yMm + (toPicture[i + 2] as number);
  const below = row(6);
  return `${(row(0) / below).toFixed(1)},${(row(3) / below).toFixed(1)}`;
}

function box(map: readonly number[], { xMm, yMm, widthMm, heightMm }: BoxMm): string {
  const corners = [
    { xMm, yMm },
    { xMm: xMm + widthMm, yMm },
    { xMm: xMm + widthMm, yMm: yMm + heightMm },
    { xMm, yMm: yMm + heightMm },
  ];
  return corners.map((corner) => inPicture(map, corner)).join(' ');
}

function drawLine(map: readonly number[], line: LineResult, thick: number): string {
  const parts: string[] = [];
  for (const word of line.words) {
    const dash = word.excluded ? `stroke-dasharray="${2 * thick}"` : '';
    parts.push(`<polygon points="${box(map, word.box)}" stroke="${word.doubt ? INK.doubt : INK.word}" ${dash}/>`);
  }
  if (line.baseline.length > 1) {
    const foot = line.baseline.map((point) => inPicture(map, point)).join(' ');
    parts.push(`<polyline points="${foot}" stroke="${INK.baseline}"/>`);
    const rise = line.xHeightMm;
    if (rise !== null) {
      const top = line.baseline.map(({ xMm, yMm }) => inPicture(map, { xMm, yMm: yMm - rise })).join(' ');
      parts.push(`<polyline points="${top}" stroke="${INK.xHeight}" stroke-dasharray="${4 * thick} ${2 * thick}"/>`);
    }
  }
  return parts.join('');
}

/** What was read on the page (words, baselines, x-height bands, rulings, loops) as SVG of the picture's size. */
function overlaySvg(result: PageResult, width: number, height: number): string {
  const map = result.page.toPicture;
  const thick = Math.max(1, Math.round(width / 1200));
  const rulings = result.rulings
    .map(
      (line) => `<polyline points="${inPicture(map, line.from)} ${inPicture(map, line.to)}" stroke="${INK.ruling}"/>`,
    )
    .join('');
  const loops = result.loops
    .map((loop) => `<polygon points="${box(map, loop.box)}" stroke="${INK.loop}" stroke-width="${thick / 2}"/>`)
    .join('');
  const lines = result.lines.map((line) => drawLine(map, line, thick)).join('');
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" fill="none" stroke-width="${thick}">` +
    `${rulings}${loops}${lines}</svg>`
  );
}

/** The page with what was read drawn over it, as PNG bytes. */
export async function overlayPng(
  result: PageResult,
  gray: { width: number; height: number; data: Uint8Array },
): Promise<Uint8Array> {
  const { width, height, data } = gray;
  return sharp(data, { raw: { width, height, channels: 1 }, limitInputPixels: false })
    .toColourspace('srgb')
    .composite([{ input: Buffer.from(overlaySvg(result, width, height)), limitInputPixels: false }])
    .png({ compressionLevel: 6 })
    .toBuffer();
}
