/** Spirals drawn with a known wobble: the formula of the drawing is the truth. */
import { expect, test } from 'vitest';
import { measureSpiral, type SpiralResult } from '../../renderer/measure/index.ts';

interface Drawn {
  turns: number;
  pitch: number;
  /** Amplitude of the wobble along the radius, mm, and swings of it on a turn. */
  amplitude: number;
  swings: number;
  sense?: 1 | -1;
  dpi?: number;
}

/** Draws r = 3 + pitch turns + amplitude sin(2 pi swings turns) with a round pen of 0.5 mm. */
function drawn({ turns, pitch, amplitude, swings, sense = 1, dpi = 300 }: Drawn): SpiralResult {
  const px = dpi / 25.4;
  const side = Math.ceil(2 * (pitch * turns + 12) * px);
  const data = new Uint8Array(side * side).fill(245);
  const [cx, cy] = [side / 2 + 13.3, side / 2 - 7.7];
  const pen = 0.25 * px;
  for (let at = 0; at < turns; at += 1 / 4000) {
    const r = (3 + pitch * at + amplitude * Math.sin(2 * Math.PI * swings * at)) * px;
    const [x, y] = [cx + r * Math.cos(2 * Math.PI * at), cy + sense * r * Math.sin(2 * Math.PI * at)];
    for (let dy = -pen; dy <= pen; dy += 1)
      for (let dx = -pen; dx <= pen; dx += 1)
        if (dx * dx + dy * dy <= pen * pen) data[Math.round(y + dy) * side + Math.round(x + dx)] = 60;
  }
  return measureSpiral({ width: side, height: side, data }, px, 20);
}

test.each([
  { turns: 4, pitch: 8, amplitude: 0.8, swings: 9 },
  { turns: 3, pitch: 11, amplitude: 1.6, swings: 6.3 },
  { turns: 5, pitch: 7, amplitude: 0.5, swings: 13.7, sense: -1 as const },
  { turns: 4, pitch: 9, amplitude: 0.6, swings: 11, dpi: 200 },
])('a wobble of $amplitude mm, $swings swings a turn, is found', (spec) => {
  const found = drawn(spec);
  expect(found.warnings).toEqual([]);
  expect(Math.abs(found.turns! / spec.turns - 1)).toBeLessThan(0.05);
  expect(Math.abs((found.radialRmsMm! * Math.SQRT2) / spec.amplitude - 1)).toBeLessThan(0.1);
  expect(Math.abs(found.radialRmsPercent! / ((100 * spec.amplitude) / Math.SQRT2 / spec.pitch) - 1)).toBeLessThan(0.1);
  expect(Math.abs(found.swingsPerTurn! / spec.swings - 1)).toBeLessThan(0.05);
  expect(Math.abs(found.frequencyHz! / ((spec.swings * spec.turns) / 20) - 1)).toBeLessThan(0.05);
});

test('an even spiral has no swings, an empty page and a cross no spiral', () => {
  const even = drawn({ turns: 4, pitch: 8, amplitude: 0, swings: 1 });
  expect(even.radialRmsMm).toBeLessThan(0.08);
  expect(even.swingsPerTurn).toBe(0);
  const empty = measureSpiral({ width: 400, height: 400, data: new Uint8Array(160_000).fill(250) }, 10, null);
  expect(empty.turns).toBeNull();
  expect(empty.warnings.map(({ code }) => code)).toEqual(['no-spiral']);
  const cross = new Uint8Array(160_000).fill(250);
  for (let i = 40; i < 360; i += 1)
    for (let w = 0; w < 6; w += 1) cross[i * 400 + 197 + w] = cross[(197 + w) * 400 + i] = 50;
  expect(measureSpiral({ width: 400, height: 400, data: cross }, 10, null).turns).toBeNull();
});
