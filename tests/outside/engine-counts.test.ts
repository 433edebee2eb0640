/**
 * The measuring engine against independent ones: OpenCV (Apache-2.0) and scikit-image (BSD), from Debian.
 * Both sides start from the same bytes.
 */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { connectedComponents } from '../../renderer/measure/image/components.ts';
import { holes } from '../../renderer/measure/image/holes.ts';
import { inkRuns } from '../../renderer/measure/image/runs.ts';
import { sauvola } from '../../renderer/measure/image/ink-threshold.ts';
import { makePage } from '../measure/pages/generate.ts';
import { SPECS } from '../measure/pages/specs.ts';
import type { MadePage } from '../measure/pages/types.ts';
import { DIGIT_INK, engineHoles, readDigits } from './digits.ts';
import { missingReference, runReference } from './python.ts';

const missing = missingReference();
const folder = mkdtempSync(path.join(tmpdir(), 'counts-'));
afterAll(() => rmSync(folder, { recursive: true }));

async function pageCalled(name: string): Promise<MadePage> {
  const spec = SPECS.find((one) => one.name === name);
  if (!spec) throw new Error(`no page is called ${name}`);
  return makePage(spec);
}

/** Every 23rd digit: 3,044 of the 70,000; `npm run accuracy` counts all of them. */
const STEP = 23;

describe.skipIf(missing !== null)(`against OpenCV and scikit-image${missing ? ` (skipped: ${missing})` : ''}`, () => {
  test.each(['ruled-kalam', 'pencil-kalam', 'photo-ruled'])(
    'the first threshold of %s differs in at most 10 pixels',
    async (name) => {
      const { gray, width, height } = await pageCalled(name);
      const [input, output] = [path.join(folder, 'gray.bin'), path.join(folder, 'mask.bin')];
      writeFileSync(input, gray);
      runReference('../../build/bench/opencv_reference.py', ['--mask', input, String(width), String(height), output]);
      const theirs = readFileSync(output);
      const ours = sauvola({ width, height, data: gray });
      let different = 0;
      for (let i = 0; i < ours.length; i += 1) if (ours[i] !== theirs[i]) different += 1;
      expect(different).toBeLessThanOrEqual(10);
      expect(ours.reduce((sum, value) => sum + value, 0)).toBeGreaterThan(50_000);
    },
  );

  test.each(['noisy', 'squares-5', 'joined-ruled'])(
    'labelling the bitmap of %s gives the same components and holes',
    async (name) => {
      const { gray, width, height } = await pageCalled(name);
      const ink = sauvola({ width, height, data: gray });
      const file = path.join(folder, 'ink.bin');
      writeFileSync(file, ink);
      const theirs = runReference('opencv_counts.py', ['bitmap', file, String(width), String(height)]) as {
        components: number;
        boxes: number[][];
        opencv: number;
        skimage: number;
      };
      const runs = inkRuns(ink, width, height);
      const found = connectedComponents(runs, 1);
      expect(found.count).toBe(theirs.components);
      const own = Array.from({ length: found.count }, (_, i) =>
        [
          found.left[i]!,
          found.top[i]!,
          found.right[i]! - found.left[i]!,
          found.bottom[i]! - found.top[i]!,
          found.area[i]!,
        ].join(),
      );
      expect(own.sort()).toEqual(theirs.boxes.map((box) => box.join()).sort());
      // The page's rim is paper on both sides here; the references see one more row of it.
      const holesFound = holes(runs, found, 1).length;
      expect([holesFound, holesFound]).toEqual([theirs.opencv, theirs.skimage]);
    },
  );

  test('real digits have as many holes as both references count', () => {
    for (const part of ['train', 't10k'] as const) {
      const set = readDigits(part);
      const theirs = runReference('opencv_counts.py', ['digits', set.file, String(DIGIT_INK), String(STEP)]) as {
        opencv: number[];
        skimage: number[];
      };
      const own = theirs.opencv.map((_, i) => engineHoles(set, i * STEP));
      expect(own).toEqual(theirs.opencv);
      expect(own).toEqual(theirs.skimage);
    }
  });
});
