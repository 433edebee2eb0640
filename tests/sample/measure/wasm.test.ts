import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { asModule, compiled } from '../../../build/wasm.ts';
import { fastStages, plainStages } from '../../../renderer/sample/measure/image/pixel-stages.ts';
import { seededNumbers } from '../../../renderer/sample/measure/numbers.ts';
import type { GrayImage } from '../../../renderer/sample/measure/types.ts';

const source = new URL('../../../renderer/sample/measure/image/wasm/bytes.ts', import.meta.url);

test('the committed bytes are what the source compiles to', async () => {
  const code = readFileSync(source, 'utf8').replace(/\s/g, '');
  expect(asModule(await compiled()).replace(/\s/g, '')).toBe(code);
}, 60_000);

/** Paper of some brightness with noise and dark strokes. */
function picture(width: number, height: number, seed: number, paper: number, noise: number): GrayImage {
  const chance = seededNumbers(seed);
  const data = Uint8Array.from({ length: width * height }, (_, i) => {
    const x = i % width;
    const stroke = (x + Math.floor(i / width / 3)) % 23 < 3 && Math.floor(i / width / 9) % 2 === 0;
    return Math.max(0, Math.min(255, (stroke ? paper * 0.3 : paper) + (chance() - 0.5) * noise));
  });
  return { width, height, data };
}

test('threshold and votes equal the plain ones bit for bit, at any size and brightness', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 210 }),
      fc.integer({ min: 1, max: 210 }),
      fc.integer(),
      fc.integer({ min: 5, max: 255 }),
      fc.integer({ min: 0, max: 300 }),
      (width, height, seed, paper, noise) => {
        const image = picture(width, height, seed, paper, noise);
        const [plain, fast] = [plainStages(image), fastStages(image)];
        expect(Buffer.compare(fast.threshold(), plain.threshold())).toBe(0);
        const [a, b] = [plain.votes(11.8), fast.votes(11.8)];
        expect(Buffer.compare(a.across.values, b.across.values)).toBe(0);
        expect(Buffer.compare(a.down.values, b.down.values)).toBe(0);
      },
    ),
    { numRuns: 60, seed: 23 },
  );
}, 60_000);

test('the fast stages are really used here', () => {
  const { buffer } = fastStages(picture(64, 64, 1, 240, 10)).threshold();
  expect(buffer.byteLength).toBeGreaterThan(64 * 64);
});
