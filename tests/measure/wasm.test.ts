import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { beforeAll, expect, test } from 'vitest';
import { asModule, compiled } from '../../build/wasm.ts';
import { startSecondThread } from '../../electron/files/measure/second-thread.ts';
import { localLevels } from '../../renderer/measure/image/contrast.ts';
import { inkOf } from '../../renderer/measure/image/ink.ts';
import { plainStages } from '../../renderer/measure/image/pixel-stages.ts';
import { fastStages } from '../../renderer/measure/image/fast-stages.ts';
import type { PixelStages } from '../../renderer/measure/image/pixel-stages.ts';
import { bandsOf } from '../../renderer/measure/image/ruling-bands.ts';
import type { Band } from '../../renderer/measure/image/ruling-bands.ts';
import type { PrintedLine } from '../../renderer/measure/image/ruling-follow.ts';
import { joinedRuns } from '../../renderer/measure/image/runs.ts';
import type { Runs } from '../../renderer/measure/image/runs.ts';
import { fastTopSums } from '../../renderer/measure/image/wasm/curves.ts';
import { frameOf } from '../../renderer/measure/lines/frame.ts';
import { roundOf, topSums } from '../../renderer/measure/lines/page-model.ts';
import { fastLuma, lumaOf, plainLuma } from '../../renderer/measure/image/luma.ts';
import { blobsOf } from '../../renderer/measure/pieces/ink-pieces.ts';
import { inkMap } from '../../renderer/measure/pieces/run-map.ts';
import { seededNumbers } from '../../renderer/measure/seeded-numbers.ts';
import type { GrayImage } from '../../renderer/measure/types.ts';

/** A second thread as the page worker has it; it ends with this process. */
const second = startSecondThread();

beforeAll(async () => {
  while (second && !second.isReady) await new Promise((resolve) => setTimeout(resolve, 10));
});

const source = new URL('../../renderer/measure/image/wasm/bytes.ts', import.meta.url);

test('the committed bytes are what the source compiles to', async () => {
  const code = readFileSync(source, 'utf8').replace(/\s/g, '');
  expect(asModule(await compiled()).replace(/\s/g, '')).toBe(code);
});

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

/** Two printed lines, one across and one down, a little askew. */
function bands(width: number, height: number, depth: number): Band[] {
  const line = { slope: 0.013, filled: 1, from: 0 };
  return [
    {
      line: { ...line, intercept: height / 3, to: width + 9 },
      reach: 2.4,
      half: 1.2,
      offset: 0.7,
      depth,
      along: 1,
      across: width,
      length: width,
      breadth: height,
    },
    {
      line: { ...line, intercept: width / 2, to: height },
      reach: 1.9,
      half: 1.2,
      offset: -0.2,
      depth,
      along: width,
      across: 1,
      length: height,
      breadth: width,
    },
  ];
}

/** All stages one after the other; what each answers. */
function through(stages: PixelStages, image: GrayImage, depth: number): unknown[] {
  const answers: unknown[] = [Buffer.from(stages.threshold()), Buffer.from(stages.rims())];
  const votes = stages.votes(11.8);
  answers.push(Buffer.from(votes.across.values), Buffer.from(votes.down.values));
  const printed = bands(image.width, image.height, depth);
  stages.markBands(printed);
  const runs = joinedRuns([stages.runs()]);
  const levels = localLevels(image, stages.gather());
  answers.push(runs, Buffer.from(levels.paper.buffer), Buffer.from(levels.ink.buffer));
  stages.eraseBands(printed, levels);
  answers.push(Buffer.from(stages.bitmap()));
  stages.halfContrast(levels);
  answers.push(Buffer.from(stages.bitmap()), joinedRuns([stages.runs()]));
  return answers;
}

test('every stage equals the plain one bit for bit, at any size and brightness, by one thread and by two', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 210 }),
      fc.integer({ min: 1, max: 210 }),
      fc.integer(),
      fc.integer({ min: 5, max: 255 }),
      fc.integer({ min: 0, max: 300 }),
      fc.integer({ min: 10, max: 180 }),
      (width, height, seed, paper, noise, depth) => {
        const image = picture(width, height, seed, paper, noise);
        const plain = through(plainStages(image), image, depth);
        for (const threads of [null, second]) {
          const fast = through(fastStages(image, threads), image, depth);
          plain.forEach((answer, i) => {
            if (Buffer.isBuffer(answer)) expect(Buffer.compare(fast[i] as Buffer, answer)).toBe(0);
            else {
              const [a, b] = [answer, fast[i]] as [Runs, Runs];
              expect(b.count).toBe(a.count);
              for (const part of ['rows', 'from', 'to'] as const) expect([...b[part]]).toEqual([...a[part]]);
            }
          });
        }
      },
    ),
    { numRuns: 150, seed: 23 },
  );
});

test('outlines are the same either way, beside printed lines and turned', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 2, max: 210 }),
      fc.integer({ min: 2, max: 210 }),
      fc.integer(),
      fc.integer({ min: 0, max: 120 }),
      fc.double({ min: -0.05, max: 0.05, noNaN: true }),
      fc.double({ min: 0.2, max: 3, noNaN: true }),
      (width, height, seed, noise, angle, blur) => {
        const image = picture(width, height, seed, 230, noise);
        const frame = frameOf(width, height, 11.8, angle);
        const [across, down] = bands(width, height, 60).map(({ line }) => line) as [PrintedLine, PrintedLine];
        const rulings = { across: [across], down: [down], angle };
        for (const threads of [null, second]) {
          const stages = fastStages(image, threads);
          stages.threshold();
          const ink = { ...inkOf(image, stages, { rulings, bands: bandsOf(image, rulings, 11.8) }), blurPx: blur };
          const drawn = [ink, { ...ink, outliner: null }].map((own) => {
            const { map, starts } = inkMap(image, own, 4);
            const blobs = blobsOf(image, own, frame, map, starts, 2, 0);
            const edges = blobs.map(({ firstRun }) => [map.edge(firstRun, -1), map.edge(firstRun, 1)]);
            return { blobs: blobs.map((blob) => ({ ...blob, upper: [...blob.upper], lower: [...blob.lower] })), edges };
          });
          expect(ink.outliner).not.toBeNull();
          expect(drawn[0]).toEqual(drawn[1]);
        }
      },
    ),
    { numRuns: 100, seed: 24 },
  );
});

test('the fast stages and the second thread are really used here', () => {
  const { buffer } = fastStages(picture(64, 64, 1, 240, 10)).threshold();
  expect(buffer.byteLength).toBeGreaterThan(64 * 64);
  if (second)
    expect(fastStages(picture(64, 200, 1, 240, 10), second).threshold().buffer).toBe(second.own.memory.buffer);
});

test('gray from red, green and blue is the same either way, whatever the number of pixels', () => {
  const pixels = (count: number, seed: number): Uint8Array => {
    const chance = seededNumbers(seed);
    return Uint8Array.from({ length: 3 * count }, () => 256 * chance());
  };
  for (const count of [0, 1, 15, 16, 17, 65_535, 65_536, 70_001]) {
    const rgb = pixels(count, count);
    expect(Buffer.compare(fastLuma(rgb) as Uint8Array, plainLuma(rgb, 3))).toBe(0);
  }
  expect([...lumaOf(Uint8Array.of(255, 255, 255, 0, 0, 0, 9, 9, 9), 3)]).toEqual([255, 0, 9]);
});

test('what a round of the page model sums is the same either way, whatever the number of tops', () => {
  const model = {
    level: 0.1,
    spread: 0.15,
    offsets: [0.02, -0.05, 0],
    shares: { small: 0.6, tall: 0.35, other: 0.05, join: 0.1 },
    tall: { step: 0.6, spread: 0.2 },
  };
  for (const count of [1, 2, 15, 16, 17, 33, 700]) {
    const chance = seededNumbers(count);
    // Some far from every kind, one at the middle of one.
    const ys = Float64Array.from({ length: count }, (_, i) => (i === 5 ? model.level : 30 * (chance() - 0.5) ** 3));
    const lines = Int32Array.from(ys, () => Math.floor(3 * chance()));
    const round = roundOf({ ys, lines, joined: ys.map(() => Math.round(chance())) }, model);
    const [plain, fast] = [topSums(round), fastTopSums(round)!];
    for (const part of ['sums', 'own', 'products'] as const) expect([...fast[part]]).toEqual([...plain[part]]);
  }
});

test('a wake-up that comes late is no order to the second thread', async () => {
  if (!second) return;
  const pause = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 30));
  const image = picture(64, 200, 3, 240, 10);
  for (let round = 0; round < 3; round += 1) {
    await pause();
    const { flags, places } = second.desk;
    Atomics.notify(flags, places.given);
    await pause();
    expect(flags[places.done]).toBe(flags[places.given]);
    expect(Buffer.compare(fastStages(image, second).threshold(), plainStages(image).threshold())).toBe(0);
  }
});
