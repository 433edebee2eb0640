import { createCanvas } from '@napi-rs/canvas';
import type { SKRSContext2D } from '@napi-rs/canvas';
import sharp from 'sharp';
import type { Chain } from '../../letters/glyph.ts';
import { seededRandom } from '../../letters/random.ts';
import type { DemoPageSpec } from './hand.ts';
import { wrapLines, writeLines } from './write.ts';
import type { Sheet, WrittenLetter } from './write.ts';

const SIZES = { A4: { widthMm: 210, heightMm: 297 }, Letter: { widthMm: 215.9, heightMm: 279.4 } } as const;
const INKS = { blue: [38, 62, 138], black: [34, 34, 40], pencil: [92, 92, 96] } as const;
/** Printed ruling of the sheets, mm. */
const PITCH = { plain: 13.5, ruled: 17.4, midline: 17.4, squares: 15 } as const;

/** Where this paper is written on; a ruled sheet is used on every second line. */
export function sheetOf(spec: DemoPageSpec): Sheet {
  const { widthMm } = SIZES[spec.paper.size];
  const margin = spec.paper.ruling === 'ruled' ? 33 : 27;
  return { leftMm: margin, rightMm: widthMm - 15, firstBaselineMm: 44, pitchMm: PITCH[spec.paper.ruling] };
}

function trace(context: SKRSContext2D, chain: Chain): void {
  for (let i = 0; i + 1 < chain.length; i += 2) {
    const [x, y] = [chain[i] as number, chain[i + 1] as number];
    if (i === 0) context.moveTo(x, y);
    else context.lineTo(x, y);
  }
  context.closePath();
}

function drawRuling(context: SKRSContext2D, spec: DemoPageSpec): void {
  const { widthMm, heightMm } = SIZES[spec.paper.size];
  const { firstBaselineMm, pitchMm } = sheetOf(spec);
  const line = (x0: number, y0: number, x1: number, y1: number): void => {
    context.beginPath();
    context.moveTo(x0, y0);
    context.lineTo(x1, y1);
    context.stroke();
  };
  context.lineWidth = 0.22;
  context.strokeStyle = '#a9bdd8';
  const { ruling } = spec.paper;
  const below = 0.4;
  if (ruling === 'ruled') {
    for (let y = firstBaselineMm + below - 17.4; y < heightMm + 9; y += 8.7) line(-9, y, widthMm + 9, y);
    context.strokeStyle = '#dc9a9a';
    line(25.4, -9, 25.4, heightMm + 9);
  } else if (ruling === 'midline') {
    for (let y = firstBaselineMm + below; y < heightMm - 18; y += pitchMm) {
      line(18, y, widthMm - 12, y);
      line(18, y - 9, widthMm - 12, y - 9);
      context.setLineDash([2, 2]);
      line(18, y - 4.5, widthMm - 12, y - 4.5);
      context.setLineDash([]);
    }
  } else if (ruling === 'squares') {
    for (let y = firstBaselineMm + below - 45; y < heightMm + 9; y += 5) line(-9, y, widthMm + 9, y);
    for (let x = 2; x < widthMm + 9; x += 5) line(x, -9, x, heightMm + 9);
  }
}

/** Ink as coverage, so that pressure and paper tooth can act on it. */
function drawInk(context: SKRSContext2D, letters: readonly WrittenLetter[], weight: number, xHeightMm: number): void {
  context.lineJoin = 'round';
  for (const { rings, opening, pressure } of letters) {
    context.beginPath();
    for (const ring of rings) trace(context, ring);
    context.fillStyle = `rgba(0,0,0,${pressure})`;
    context.fill('nonzero');
    if (weight > 1) {
      context.strokeStyle = context.fillStyle;
      context.lineWidth = (weight - 1) * 0.14 * xHeightMm;
      context.stroke();
    }
    if (!opening) continue;
    context.globalCompositeOperation = 'destination-out';
    context.beginPath();
    trace(context, opening);
    context.fillStyle = '#000';
    context.fill();
    context.globalCompositeOperation = 'source-over';
  }
}

/** Lays ink and light on the paper: tooth of the paper, a faint cast of the scanner's lamp, sensor noise. */
function expose(
  paper: Uint8ClampedArray,
  ink: Uint8ClampedArray,
  spec: DemoPageSpec,
  width: number,
  height: number,
): Buffer {
  const random = seededRandom(spec.seed + 7);
  const color = INKS[spec.paper.ink];
  const grain = spec.paper.ink === 'pencil' ? 0.45 : 0.12;
  const noise = Float32Array.from({ length: 32_749 }, () => random.normal());
  const cast = random.between(-0.5, 0.5);
  const out = Buffer.alloc(width * height * 3);
  for (let y = 0; y < height; y += 1) {
    const light = 0.985 - 0.02 * Math.abs(y / height - 0.5 + cast * 0.3);
    let at = Math.floor(random.next() * noise.length);
    for (let x = 0; x < width; x += 1) {
      const i = y * width + x;
      at = at + 1 === noise.length ? 0 : at + 1;
      const speck = noise[at] as number;
      let cover = (ink[4 * i + 3] as number) / 255;
      if (cover > 0) cover *= 1 - grain * Math.max(0, 0.35 + 0.5 * speck);
      for (let c = 0; c < 3; c += 1) {
        const ground = (paper[4 * i + c] as number) * light;
        out[3 * i + c] = Math.max(0, Math.min(255, ground + (color[c as 0 | 1 | 2] - ground) * cover + 0.7 * speck));
      }
    }
  }
  return out;
}

export interface DemoPagePicture {
  bytes: Buffer;
  mime: 'image/jpeg';
  dpi: number;
  width: number;
  height: number;
  /** The lines as they were written: long ones are broken at word ends. */
  lines: string[];
}

/** A scanned page of an invented client, as a JPEG with its resolution. Same specification, same bytes. */
export async function drawDemoPage(given: DemoPageSpec, dpi = 300): Promise<DemoPagePicture> {
  const lines = wrapLines(given, sheetOf(given));
  const spec = { ...given, lines };
  const { widthMm, heightMm } = SIZES[spec.paper.size];
  const unit = dpi / 25.4;
  const [width, height] = [Math.round(widthMm * unit), Math.round(heightMm * unit)];
  const canvas = (): SKRSContext2D => {
    const context = createCanvas(width, height).getContext('2d');
    context.translate(width / 2, height / 2);
    context.rotate((-spec.paper.rotationDeg * Math.PI) / 180);
    context.translate(-width / 2, -height / 2);
    context.scale(unit, unit); // drawn in mm from here on
    return context;
  };
  const paper = canvas();
  paper.fillStyle = '#faf8f2';
  paper.fillRect(-widthMm, -heightMm, 3 * widthMm, 3 * heightMm);
  drawRuling(paper, spec);
  const ink = canvas();
  drawInk(ink, writeLines(spec, sheetOf(spec)), spec.hand.weight, spec.hand.xHeightMm);
  const rgb = expose(
    paper.getImageData(0, 0, width, height).data,
    ink.getImageData(0, 0, width, height).data,
    spec,
    width,
    height,
  );
  const bytes = await sharp(rgb, { raw: { width, height, channels: 3 } })
    .blur(0.7)
    .withMetadata({ density: dpi })
    .jpeg({ quality: 72 })
    .toBuffer();
  return { bytes, mime: 'image/jpeg', dpi, width, height, lines };
}
