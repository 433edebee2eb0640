import sharp from 'sharp';
import { median } from '../../../renderer/statistics/order-statistics.ts';
import { decodePage } from '../../../electron/files/decode/decode.ts';
import { seededRandom } from '../../../build/letters/random.ts';
import { cornersOf, viewOf } from './camera.ts';
import { drawPage, pxPerMm } from './draw.ts';
import { fontOf, layOut, PAPERS } from './layout.ts';
import type { PageInk } from './layout.ts';
import { countLoops } from './loops.ts';
import type { MadePage, PageSpec } from './types.ts';

/** Fonts whose stems stand upright and have no serifs, so that the added shear is the whole slant. */
const UPRIGHT = new Set(['EMSReadability', 'HersheySans1']);
/** Slab serifs that melt into the stems, and letters drawn twice: the pen's width is not the width that is seen. */
const WIDER = new Set(['EMSNixish', 'HersheySansMed', 'HersheyScriptMed']);

/** Light falling unevenly and a soft shadow edge, as a factor for each pixel; then noise. In place on RGB bytes. */
function expose(rgb: Uint8Array, width: number, height: number, spec: PageSpec): void {
  const { uneven, shadow } = spec.picture;
  if (uneven === 0 && shadow === 0) return;
  const random = seededRandom(spec.seed + 2);
  const direction = random.between(0, 2 * Math.PI);
  const [dx, dy] = [Math.cos(direction), Math.sin(direction)];
  const edge = random.between(0.25, 0.75);
  const lean = random.between(-0.4, 0.4);
  for (let y = 0; y < height; y += 1)
    for (let x = 0; x < width; x += 1) {
      const u = x / width;
      const v = y / height;
      const light = 1 - uneven * (0.5 + 0.5 * ((u - 0.5) * dx + (v - 0.5) * dy) * 1.4);
      const shade = 1 - shadow / (1 + Math.exp(-(u + lean * (v - 0.5) - edge) * 22));
      const factor = light * shade;
      const at = 3 * (y * width + x);
      for (let c = 0; c < 3; c += 1) rgb[at + c] = (rgb[at + c] as number) * factor;
    }
}

function addNoise(rgb: Uint8Array, width: number, height: number, spec: PageSpec): void {
  if (spec.picture.noise === 0) return;
  const random = seededRandom(spec.seed + 3);
  const table = Float32Array.from({ length: 65_521 }, () => random.normal() * spec.picture.noise);
  let at = Math.floor(random.next() * table.length);
  for (let i = 0; i < width * height; i += 1) {
    at += 1;
    if (at >= table.length) at = Math.floor(random.next() * table.length);
    const extra = table[at] as number;
    for (let c = 0; c < 3; c += 1) {
      const value = (rgb[3 * i + c] as number) + extra;
      rgb[3 * i + c] = value < 0 ? 0 : value > 255 ? 255 : value;
    }
  }
}

/**
 * ln(size) per word that the true heights of the letters show against what was asked for: in uneven hands the mix of
 * tall and low letters fakes a little. The larger of two fair readings: Theil-Sen over the words' medians, least
 * squares over their means, both within lines.
 */
function apparentDecrement(ink: PageInk, asked: number): number {
  let at = 0;
  const slopes: number[] = [];
  let [products, squares] = [0, 0];
  for (const line of ink.lines) {
    const points: { x: number; middle: number; mean: number }[] = [];
    line.words.forEach((_, x) => {
      const lns = (ink.words[at]?.smallLetters ?? []).map((height) => Math.log(height));
      at += 1;
      if (lns.length > 0) points.push({ x, middle: median(lns)!, mean: lns.reduce((a, b) => a + b, 0) / lns.length });
    });
    for (const [i, p] of points.entries())
      for (const q of points.slice(i + 1)) slopes.push((q.middle - p.middle) / (q.x - p.x));
    const x0 = points.reduce((sum, { x }) => sum + x, 0) / points.length;
    for (const { x, mean } of points) {
      products += (x - x0) * mean;
      squares += (x - x0) ** 2;
    }
  }
  if (slopes.length === 0) return 0;
  return Math.max(Math.abs(median(slopes)! - asked), Math.abs(products / squares - asked));
}

/** Makes the page of a specification: the file, its gray values, and what is true about it. Same spec, same page. */
export async function makePage(spec: PageSpec, text?: readonly (readonly string[])[]): Promise<MadePage> {
  const ink = layOut(spec, text);
  const view = viewOf(spec);
  const { width, height } = view;
  const rgba = drawPage(spec, ink, view);
  let rgb: Uint8Array = new Uint8Array(width * height * 3);
  for (let i = 0; i < width * height; i += 1) for (let c = 0; c < 3; c += 1) rgb[3 * i + c] = rgba[4 * i + c] as number;
  expose(rgb, width, height, spec);
  const raw = { width, height, channels: 3 as const };
  if (spec.picture.blurPx >= 0.3)
    rgb = await sharp(rgb, { raw, limitInputPixels: false }).blur(spec.picture.blurPx).raw().toBuffer();
  addNoise(rgb, width, height, spec);
  const picture = sharp(rgb, { raw, limitInputPixels: false }).withMetadata({ density: spec.picture.dpi });
  const { jpeg } = spec.picture;
  const bytes = await (
    jpeg === null ? picture.png({ compressionLevel: 1 }) : picture.jpeg({ quality: jpeg })
  ).toBuffer();
  const gray = (await decodePage(bytes)).gray.data;

  const { writing } = spec;
  const scale = pxPerMm(spec, view);
  const xHeightMm = ink.smallLetters.length ? median(ink.smallLetters)! : 0;
  const font = fontOf(writing.font);
  return {
    spec,
    bytes,
    gray,
    width,
    height,
    truth: {
      dpi: scale * 25.4,
      widthMm: PAPERS[spec.paper].widthMm,
      heightMm: PAPERS[spec.paper].heightMm,
      rotationDeg: spec.picture.rotationDeg,
      turnIsVisible: spec.picture.tilt !== null || spec.ruling.kind !== 'plain',
      lines: ink.lines,
      xHeightMm,
      xHeightPx: xHeightMm * scale,
      lineDecrement: writing.lnPerWord,
      apparentDecrement: apparentDecrement(ink, writing.lnPerWord),
      pageDecrementPercent: writing.percentPerLine,
      wordGapXh: ink.wordGapsXh.length ? median(ink.wordGapsXh)! : 0,
      letterGapXh: writing.letterGapXh !== null && ink.letterGapsXh.length ? median(ink.letterGapsXh)! : null,
      closedLoops: countLoops(ink.words, 1 / scale),
      strokeWidthMm: font.kind === 'pen' && !WIDER.has(font.name) ? writing.penMm : null,
      slantDeg: UPRIGHT.has(writing.font) ? writing.slantDeg : null,
      corners: cornersOf(spec, view),
    },
  };
}
