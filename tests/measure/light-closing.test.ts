/** Letters drawn as rings of known darkness: what closes them to the eye is a matter of common practice, no source. */
import { expect, test } from 'vitest';
import { ERASED } from '../../renderer/measure/image/contrast.ts';
import { lightlyClosed } from '../../renderer/measure/measures/light-closing.ts';
import type { Layout } from '../../renderer/measure/lines/page-layout.ts';
import { frameOf } from '../../renderer/measure/lines/frame.ts';
import type { LetterResult, LineResult } from '../../renderer/measure/types.ts';

const SIDE = 64;
const [PAPER, INK] = [230, 70];
/** A ring of 40 px on a baseline at 52; its top, 12 px wide, is as dark as given (share of the contrast). */
function ring(darkness: number, isErased = false) {
  const data = new Uint8Array(SIDE * SIDE).fill(PAPER);
  const bitmap = new Uint8Array(SIDE * SIDE);
  for (let y = 0; y < SIDE; y += 1)
    for (let x = 0; x < SIDE; x += 1) {
      const away = Math.hypot(x - 32, y - 32);
      if (away < 16 || away > 20) continue;
      const isTop = y < 32 && Math.abs(x - 32) < 6;
      data[y * SIDE + x] = isTop ? PAPER - darkness * (PAPER - INK) : INK;
      bitmap[y * SIDE + x] = isTop ? (isErased ? ERASED : 0) : 1;
    }
  const tiles = 4;
  const levels = {
    columns: 2,
    rows: 2,
    paper: new Float32Array(tiles).fill(PAPER),
    ink: new Float32Array(tiles).fill(INK),
    half: new Uint8Array(tiles).fill((PAPER + INK) / 2),
  };
  return { image: { width: SIDE, height: SIDE, data }, ink: { bitmap, levels } };
}

const frame = frameOf(SIDE, SIDE, 10, 0);
const layout = {
  frame,
  lines: [
    {
      trend: { u0: 0, level: Math.log(40), slope: 0 },
      baseline: { curve: { u0: 0, step: SIDE, slope: 0, v: [52, 52] } },
    },
  ],
} as unknown as Pick<Layout, 'frame' | 'lines'>;
const letter = { closureExpected: true, loops: 0, box: { xMm: 1.1, yMm: 1.1, widthMm: 4.2, heightMm: 4.2 } };
const loopsOf = ({ image, ink }: ReturnType<typeof ring>, change: Partial<LetterResult> = {}): number => {
  const lines = [{ words: [{ letters: [{ ...letter, ...change }] }] }] as unknown as LineResult[];
  return lightlyClosed(lines, layout, image, ink, 5)[0]!.words[0]!.letters[0]!.loops;
};

test('a light stroke closes a letter, paper does not', () => {
  expect([0, 0.15, 0.3, 0.45].map((darkness) => loopsOf(ring(darkness)))).toEqual([0, 0, 1, 1]);
});

test('what is left of a printed line closes nothing', () => {
  expect(loopsOf(ring(0.4, true))).toBe(0);
});

test('letters that need not close, and letters closed already, stay as they are', () => {
  expect(loopsOf(ring(0.4), { closureExpected: false })).toBe(0);
  expect(loopsOf(ring(0.4), { closureExpected: null })).toBe(0);
  expect(loopsOf(ring(0.4), { loops: 2 })).toBe(2);
});
