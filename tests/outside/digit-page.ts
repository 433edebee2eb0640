import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import sharp from 'sharp';
import { median } from '../../renderer/statistics/order-statistics.ts';
import { seededRandom } from '../../build/letters/random.ts';

/**
 * 5,000 handwritten digits, 20 x 20 pixels each, in one picture: samples/data/digits.png of OpenCV (Apache-2.0), as in
 * Debian's package opencv-doc 4.6.
 */
const SHEET = fileURLToPath(new URL('data/digits.png', import.meta.url));
const CELL = 20;
const ACROSS = 100;

/** A page of real digits in lines; lengths in pixels. */
export interface DigitPage {
  gray: { width: number; height: number; data: Uint8Array };
  pitch: number;
  /** One entry a word: ink height (median of its digits) and the gap before it. */
  lines: { height: number; gapBefore: number | null }[][];
  lnPerWord: number;
}

export interface DigitPageSpec {
  seed: number;
  lines: number;
  words: number;
  digits: number;
  /** Side of a digit's cell at the beginning of a line. */
  cell: number;
  pitch: number;
  wordGap: number;
  digitGap: number;
  lnPerWord: number;
}

const INK = 128;

/** Rows and columns of a bright digit's ink: first, and the one after the last. */
function inkBox(cell: Uint8Array, side: number): { left: number; right: number; top: number; bottom: number } {
  const box = { left: side, right: 0, top: side, bottom: 0 };
  for (let y = 0; y < side; y += 1)
    for (let x = 0; x < side; x += 1)
      if ((cell[y * side + x] as number) >= INK) {
        box.left = Math.min(box.left, x);
        box.right = Math.max(box.right, x + 1);
        box.top = Math.min(box.top, y);
        box.bottom = y + 1;
      }
  return box;
}

/** Lays digits chosen by seed into lines of known pitch, gap and shrinkage, their feet on the line. */
export async function digitPage(spec: DigitPageSpec): Promise<DigitPage> {
  const sheet = await sharp(readFileSync(SHEET)).toColourspace('b-w').raw().toBuffer();
  const width = 2480;
  const height = 3508;
  const page = new Uint8Array(width * height).fill(255);
  const random = seededRandom(spec.seed);
  const lines: DigitPage['lines'] = [];
  for (let row = 0; row < spec.lines; row += 1) {
    const foot = 400 + row * spec.pitch;
    let cursor = 300;
    let gapBefore: number | null = null;
    const line: DigitPage['lines'][number] = [];
    for (let word = 0; word < spec.words; word += 1) {
      const side = Math.round(spec.cell * Math.exp(spec.lnPerWord * word));
      const heights: number[] = [];
      for (let digit = 0; digit < spec.digits; digit += 1) {
        const which = Math.floor(random.next() * 5000);
        const [cx, cy] = [(which % ACROSS) * CELL, Math.floor(which / ACROSS) * CELL];
        const cell = new Uint8Array(CELL * CELL);
        for (let y = 0; y < CELL; y += 1)
          cell.set(sheet.subarray((cy + y) * ACROSS * CELL + cx, (cy + y) * ACROSS * CELL + cx + CELL), y * CELL);
        // Enlarged with a rim, so that no stroke is cut by the cell's edge.
        const large = await sharp(cell, { raw: { width: CELL, height: CELL, channels: 1 } })
          .resize(side, side, { kernel: 'cubic', fit: 'fill' })
          .extend({ top: 2, bottom: 2, left: 2, right: 2, background: '#000' })
          .toColourspace('b-w')
          .raw()
          .toBuffer();
        const box = inkBox(large, side + 4);
        for (let y = 0; y < side + 4; y += 1)
          for (let x = 0; x < side + 4; x += 1) {
            const at = (foot - box.bottom + y) * width + cursor - box.left + x;
            page[at] = Math.min(page[at] as number, 255 - 0.85 * (large[y * (side + 4) + x] as number));
          }
        heights.push(box.bottom - box.top);
        cursor += box.right - box.left + spec.digitGap;
      }
      line.push({ height: median(heights)!, gapBefore });
      gapBefore = Math.round(spec.wordGap * Math.exp(spec.lnPerWord * word));
      cursor += gapBefore - spec.digitGap;
    }
    lines.push(line);
  }
  return { gray: { width, height, data: page }, pitch: spec.pitch, lines, lnPerWord: spec.lnPerWord };
}
