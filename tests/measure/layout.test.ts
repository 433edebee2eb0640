import { expect, test } from 'vitest';
import { baselineOf } from '../../renderer/measure/lines/baseline-fit.ts';
import { peaks } from '../../renderer/measure/lines/extremes.ts';
import type { Extreme } from '../../renderer/measure/lines/extremes.ts';
import { frameOf, uOf, vOf, xOf, yOf } from '../../renderer/measure/lines/frame.ts';
import { sizeAt, sizeTrend } from '../../renderer/measure/lines/letter-tops.ts';
import { modeOf } from '../../renderer/measure/lines/density-peak.ts';
import { drawnTogether } from '../../renderer/measure/lines/shared-direction.ts';
import type { Trace } from '../../renderer/measure/lines/trace.ts';
import { leastSquares } from '../../renderer/statistics/least-squares.ts';
import { seededNumbers } from '../../renderer/measure/seeded-numbers.ts';

const chance = seededNumbers(5);

test('heads stand out by their prominence; a single stroke has one', () => {
  expect(peaks(Float32Array.from([1, 2, 3, 2, 1]), 1, 1)).toEqual([2]);
  expect(peaks(Float32Array.from([0, 5, 0.5, 4, 0]), 1, 1)).toEqual([1, 3]);
  expect(peaks(Float32Array.from([0, 5, 4.5, 5.2, 0]), 1, 1)).toEqual([3]);
  expect(peaks(Float32Array.from([7, 7, 7]), -1, 1)).toEqual([1]);
});

test('a page turned counter-clockwise has its right side higher in the picture, and the map turns back', () => {
  const frame = frameOf(1000, 1400, 10, (2 * Math.PI) / 180);
  expect(yOf(frame, 900, 700)).toBeLessThan(yOf(frame, 100, 700));
  expect(uOf(frame, xOf(frame, 123, 456), yOf(frame, 123, 456))).toBeCloseTo(123, 9);
  expect(vOf(frame, xOf(frame, 123, 456), yOf(frame, 123, 456))).toBeCloseTo(456, 9);
  expect([uOf(frame, 500, 700), vOf(frame, 500, 700)]).toEqual([expect.closeTo(500, 9), expect.closeTo(700, 9)]);
});

/** Feet of letters on a wave, a quarter of them descenders, with a little unevenness. */
function feetOn(course: (u: number) => number, xHeight: number): Extreme[] {
  return Array.from({ length: 60 }, (_, i) => {
    const u = 100 + i * xHeight * 0.9 + (i % 6 === 5 ? xHeight : 0);
    const hangs = i % 4 === 3 ? 0.7 * xHeight : 0;
    return { u, v: course(u) + hangs + (chance() - 0.5) * 0.04 * xHeight, blob: i, kind: 'bottom' as const };
  });
}

const flat = (v: number, slope = 0): Trace => ({ u0: 100, step: 2000, v: Float64Array.of(v, v + slope * 2000), slope });

test('the baseline of a straight line keeps its angle in spite of descenders', () => {
  const slope = -Math.tan((1.37 * Math.PI) / 180);
  const found = baselineOf(
    flat(480, slope),
    feetOn((u) => 500 + slope * (u - 100), 34),
    20,
    34,
  )!;
  expect((-Math.atan(found.straight.slope) * 180) / Math.PI).toBeCloseTo(1.37, 2);
  expect(found.rms).toBeLessThan(0.02 * 34);
});

test('a wavy baseline keeps its wave', () => {
  const wave = (u: number): number => 11.3 * Math.sin((2 * Math.PI * u) / 910);
  // The course of the ink follows the wave in part: it is smoothed over words.
  const v = Float64Array.from({ length: 120 }, (_, i) => 480 + 0.7 * wave(100 + i * 17));
  const feet = feetOn((u) => 500 + wave(u), 34);
  const found = baselineOf({ u0: 100, step: 17, v, slope: 0 }, feet, 20, 34)!;
  const us = Array.from({ length: 400 }, (_, i) => 100 + (i * (feet.at(-1)!.u - 100)) / 399);
  const fit = leastSquares(us, us.map(wave))!;
  const rms = Math.sqrt(us.reduce((sum, u) => sum + (wave(u) - fit.intercept - fit.slope * u) ** 2, 0) / us.length);
  expect(Math.abs(found.rms / rms - 1)).toBeLessThan(0.05);
  expect(found.straight.slope).toBeCloseTo(fit.slope, 2.5);
});

test('the size of a line is that of its small letters, also when it shrinks', () => {
  for (const shrink of [0, -0.35]) {
    const size = (u: number): number => 40 * Math.exp((shrink * (u - 1000)) / 2000);
    const heads = Array.from({ length: 70 }, (_, i) => {
      const u = 50 + i * 28;
      return { u, height: size(u) * (i % 3 === 2 ? 1.75 : 1) * (1 + (chance() - 0.5) * 0.04), joined: false };
    });
    const trend = sizeTrend(heads, 40);
    expect(sizeAt(trend, 200) / size(200)).toBeCloseTo(1, 1.5);
    expect(sizeAt(trend, 1900) / size(1900)).toBeCloseTo(1, 1.5);
    expect(trend.slope * 2000).toBeCloseTo(shrink, 1.5);
  }
});

test('lines are drawn to what they share as far as chance parts them, and no further', () => {
  const chance = seededNumbers(1);
  const lines = (value: (at: number) => number): { at: number; value: number; noise: number }[] =>
    Array.from({ length: 12 }, (_, at) => ({ at, value: value(at), noise: 0.01 }));
  const scatter = Array.from({ length: 12 }, () => 0.2 * (chance() - 0.5));
  const alike = drawnTogether(lines((at) => 3 + scatter[at]! + (at === 5 ? 2 : 0)))!;
  for (const value of alike) expect(Math.abs(value - 3)).toBeLessThan(0.08);
  const apart = drawnTogether(lines((at) => (at % 2 === 0 ? 1 : 5)))!;
  apart.forEach((value, at) => {
    expect(Math.abs(value - (at % 2 === 0 ? 1 : 5))).toBeLessThan(0.05);
  });
  const drifting = drawnTogether(lines((at) => 0.2 * at + scatter[at]!))!;
  drifting.forEach((value, at) => {
    expect(Math.abs(value - 0.2 * at)).toBeLessThan(0.12);
  });
  expect(drawnTogether(lines((at) => at).slice(0, 3))).toBeNull();
});

test('a mode is where most values are', () => {
  expect(modeOf([1, 1.02, 0.98, 3, 5], 0, 6, 0.1)).toBeCloseTo(1, 1.5);
  expect(modeOf([], 0, 1, 0.1)).toBeNull();
});
