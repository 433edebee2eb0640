import { createCanvas } from '@napi-rs/canvas';
import { extent } from '../../../build/letters/glyph.ts';
import type { Chain } from '../../../build/letters/glyph.ts';
import type { WordShape } from './word-shape.ts';

/** Pixels for one x-height in the drawings that are counted. */
const FINE = 90;
/** White areas of fewer pixels of that drawing are the ends of sharp notches, cut off by the pixels. */
const NOTCH = 8;

/**
 * White areas inside the ink of a bitmap (ink 1, paper 0; ink joins over corners, paper over sides only).
 * Areas of fewer than `least` pixels are left out. A plain flood fill, written apart from the measuring engine so that it can check it.
 */
export function countHoles(ink: Uint8Array, width: number, height: number, least = 1): number {
  const seen = Uint8Array.from(ink);
  const stack: number[] = [];
  const visit = (at: number): void => {
    if (seen[at] !== 0) return;
    seen[at] = 1;
    stack.push(at);
  };
  const flood = (start: number): boolean => {
    let touchesEdge = false;
    let area = 0;
    stack.push(start);
    seen[start] = 1;
    while (stack.length > 0) {
      const at = stack.pop() as number;
      area += 1;
      const x = at % width;
      const y = (at - x) / width;
      if (x === 0 || y === 0 || x === width - 1 || y === height - 1) touchesEdge = true;
      if (x > 0) visit(at - 1);
      if (x < width - 1) visit(at + 1);
      if (y > 0) visit(at - width);
      if (y < height - 1) visit(at + width);
    }
    return !touchesEdge && area >= least;
  };
  let holes = 0;
  for (let i = 0; i < seen.length; i += 1) if (seen[i] === 0 && flood(i)) holes += 1;
  return holes;
}

/** Holes of a word drawn finely; `thickerMm` grows the ink on every side (closing what is narrower than twice that). */
function holesOfWord(shape: WordShape, thickerMm: number): number {
  const seen = extent([...shape.rings, ...shape.strokes]);
  if (!seen) return 0;
  const unit = FINE / shape.scaleMm;
  const pad = 6 + (shape.penMm / 2 + thickerMm) * unit;
  const width = Math.ceil((seen.right - seen.left) * unit + 2 * pad);
  const height = Math.ceil((seen.high - seen.low) * unit + 2 * pad);
  const context = createCanvas(width, height).getContext('2d');
  const trace = (chains: readonly Chain[], close: boolean): void => {
    context.beginPath();
    for (const chain of chains) {
      for (let i = 0; i + 1 < chain.length; i += 2) {
        const x = ((chain[i] as number) - seen.left) * unit + pad;
        const y = (seen.high - (chain[i + 1] as number)) * unit + pad;
        if (i === 0) context.moveTo(x, y);
        else context.lineTo(x, y);
      }
      if (close) context.closePath();
    }
  };
  context.lineCap = 'round';
  context.lineJoin = 'round';
  trace(shape.rings, true);
  context.fill('nonzero');
  trace(shape.strokes, false);
  context.lineWidth = Math.max(shape.penMm * unit, 0.001);
  if (shape.penMm > 0) context.stroke();
  context.globalCompositeOperation = 'destination-out';
  trace(shape.erasers, true);
  context.fill('nonzero');
  const pixels = context.getImageData(0, 0, width, height).data;
  const ink = new Uint8Array(width * height);
  for (let i = 0; i < ink.length; i += 1) ink[i] = (pixels[4 * i + 3] as number) >= 128 ? 1 : 0;
  return countHoles(thickerMm > 0 ? grown(ink, width, height, thickerMm * unit) : ink, width, height, NOTCH);
}

/** Ink grown by a round brush of the given radius, px. */
function grown(ink: Uint8Array, width: number, height: number, radius: number): Uint8Array {
  const out = new Uint8Array(ink.length);
  const reach = Math.floor(radius);
  for (let y = 0; y < height; y += 1)
    for (let x = 0; x < width; x += 1) {
      if (!ink[y * width + x]) continue;
      // Only edge pixels can add anything.
      const inside =
        x > 0 &&
        y > 0 &&
        x < width - 1 &&
        y < height - 1 &&
        ink[y * width + x - 1] &&
        ink[y * width + x + 1] &&
        ink[(y - 1) * width + x] &&
        ink[(y + 1) * width + x];
      out[y * width + x] = 1;
      if (inside) continue;
      for (let dy = -reach; dy <= reach; dy += 1) {
        const span = Math.floor(Math.sqrt(radius * radius - dy * dy));
        const row = y + dy;
        if (row < 0 || row >= height) continue;
        out.fill(1, row * width + Math.max(0, x - span), row * width + Math.min(width - 1, x + span) + 1);
      }
    }
  return out;
}

/** Closed loops of a page: as drawn, and with gaps and holes under 2 px of the picture closed. */
export function countLoops(words: readonly WordShape[], mmPerPx: number): { low: number; high: number } {
  const known = new Map<string, [number, number]>();
  let low = 0;
  let high = 0;
  for (const shape of words) {
    const still = shape.erasers.length === 0 && shape.penMm === 0;
    const key = still ? `${shape.text} ${(mmPerPx / shape.scaleMm).toFixed(2)}` : '';
    const pair = known.get(key) ?? [holesOfWord(shape, 0), holesOfWord(shape, mmPerPx)];
    if (still) known.set(key, pair);
    low += Math.min(...pair);
    high += Math.max(...pair);
  }
  return { low, high };
}
