import { expect, test } from 'vitest';
import { printedOf } from '../../renderer/measure/image/ruling-bands.ts';
import { printOf, solidPrints } from '../../renderer/measure/image/ruling-erase.ts';
import { rulingVotes } from '../../renderer/measure/image/ruling-votes.ts';
import { findRulings } from '../../renderer/measure/image/printed-rulings.ts';
import { plainStages } from '../../renderer/measure/image/pixel-stages.ts';
import { inkOf } from '../../renderer/measure/image/ink.ts';

const WIDTH = 1200;
const HEIGHT = 900;
const PX_PER_MM = 300 / 25.4;

/** Paper with soft-edged printed lines at an angle, and upright strokes standing on every second one. */
function ruledSheet(angleDeg: number, pitch: number, gray: number, strokes: boolean): Uint8Array {
  const data = new Uint8Array(WIDTH * HEIGHT).fill(240);
  const slope = -Math.tan((angleDeg * Math.PI) / 180);
  for (let x = 0; x < WIDTH; x += 1)
    for (let line = 80; line < HEIGHT; line += pitch) {
      const at = line + slope * (x - WIDTH / 2);
      for (let y = Math.max(0, Math.floor(at - 4)); y < Math.min(HEIGHT, at + 4); y += 1) {
        const cover = Math.max(0, Math.min(1, 1.5 + 0.5 - Math.abs(y + 0.5 - at)));
        data[y * WIDTH + x] = Math.min(data[y * WIDTH + x]!, 240 - (240 - gray) * cover);
      }
      if (strokes && x % 37 > 20 && x % 37 < 26 && Math.round((line - 80) / pitch) % 2 === 1)
        for (let y = Math.floor(at - 34); y < at; y += 1) data[y * WIDTH + x] = 40;
    }
  return data;
}

test.each([0, 0.37, -1.83, 2.41])('lines turned by %s degrees are found with their turn', (angle) => {
  const image = { width: WIDTH, height: HEIGHT, data: ruledSheet(angle, 102.7, 175, true) };
  const found = findRulings(image, rulingVotes(image, PX_PER_MM), PX_PER_MM);
  expect(found.across.length).toBeGreaterThanOrEqual(7);
  expect((found.angle! * 180) / Math.PI).toBeCloseTo(angle, 1);
  const steps = found.across.map((line) => line.intercept + (line.slope * WIDTH) / 2).sort((a, b) => a - b);
  for (let i = 1; i < steps.length; i += 1) expect(steps[i]! - steps[i - 1]!).toBeCloseTo(102.7, 0);
});

test('taking lines out leaves the strokes whole', () => {
  const plain = new Uint8Array(WIDTH * HEIGHT).fill(240);
  const ruled = ruledSheet(0, 102.7, 175, true);
  for (let i = 0; i < plain.length; i += 1) if (ruled[i]! <= 40) plain[i] = 40;
  const size = { width: WIDTH, height: HEIGHT };
  const count = (data: Uint8Array): { pieces: number; area: number } => {
    const image = { ...size, data };
    const printed = printedOf(image, rulingVotes(image, PX_PER_MM), PX_PER_MM);
    const stages = plainStages(image);
    stages.threshold();
    const { components } = inkOf(image, stages, printed);
    return { pieces: components.count, area: components.area.reduce((a, b) => a + b, 0) };
  };
  const [without, withLines] = [count(plain), count(ruled)];
  expect(withLines.pieces).toBe(without.pieces);
  expect(Math.abs(withLines.area / without.area - 1)).toBeLessThan(0.02);
});

test('strokes without printed lines are no printed lines', () => {
  const data = new Uint8Array(WIDTH * HEIGHT).fill(240);
  for (let line = 100; line < HEIGHT - 50; line += 110)
    for (let x = 100; x < WIDTH - 100; x += 1)
      if (x % 41 < 27) for (let y = line; y < line + 4; y += 1) data[y * WIDTH + x] = 40;
      else if (x % 41 === 30) for (let y = line - 30; y < line + 4; y += 1) data[y * WIDTH + x] = 40;
  // Rows of dashes of equal length are printed; unequal ones are writing.
  for (let line = 100; line < HEIGHT - 50; line += 110)
    for (let x = 100; x < WIDTH - 100; x += 1)
      if ((x * x) % 97 < 40) for (let y = line; y < line + 4; y += 1) data[y * WIDTH + x] = 240;
  const image = { width: WIDTH, height: HEIGHT, data };
  expect(findRulings(image, rulingVotes(image, PX_PER_MM), PX_PER_MM).across).toEqual([]);
});

test('print beside a place is as dark as the line at its middle, and fades with the blur', () => {
  const line = { intercept: 100, slope: 0, from: 0, to: 400, filled: 1 };
  const place = { along: 1, across: 400, length: 400, breadth: 300 };
  const print = printOf(solidPrints([{ line, reach: 3, half: 1.6, offset: 0.2, depth: 50, ...place }], 0.8));
  const below = print(30, 96, 1, true)!;
  expect(below(3.7)).toBeCloseTo(50, 6);
  expect(below(0)).toBeLessThan(3);
  expect(below(3)).toBeGreaterThan(below(2));
  expect(print(30, 105, -1, true)!(5.3)).toBeCloseTo(50, 6);
  expect(print(30, 80, 1, true)).toBeNull();
  expect(print(96, 30, 1, false)).toBeNull();
});
