/** The engine's numerical parts against scipy and against published or analytic values. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { A, B, lowPass } from '../../renderer/ink/prepare/butterworth.ts';
import { naturalSpline } from '../../renderer/ink/prepare/natural-spline.ts';
import { motionOf } from '../../renderer/ink/prepare/motion.ts';
import { powerLaw } from '../../renderer/ink/measures/power-law.ts';
import { dimensionlessJerk, logDimensionlessJerk, sparc } from '../../renderer/ink/measures/smoothness.ts';
import { countPeaks } from '../../renderer/ink/measures/stroke-rows.ts';
import { transform } from '../../renderer/ink/tremor/fourier.ts';
import { medianInterval } from '../../renderer/statistics/median-interval.ts';

interface Reference {
  values: number[];
  filtfilt: number[];
  filtfiltShort: number[];
  splineTimes: number[];
  spline: number[];
  peakValues: number[];
  peaks: number;
  butter: { b: number[]; a: number[] };
  medianRanks: [number, number][];
}

/** Written by scipy 1.17.1: signal.filtfilt, signal.butter, signal.find_peaks, CubicSpline(natural), stats.binom. */
const scipy = JSON.parse(readFileSync(new URL('data/ink-filter.json', import.meta.url), 'utf8')) as Reference;

const largestGap = (a: ArrayLike<number>, b: ArrayLike<number>): number =>
  Array.from(a).reduce((most, each, i) => Math.max(most, Math.abs(each - b[i]!)), 0);

describe('scipy', () => {
  it('gives the same filtered values, with ends', () => {
    expect(largestGap(lowPass(Float64Array.from(scipy.values)), scipy.filtfilt)).toBeLessThan(1e-8);
    const short = Float64Array.from(scipy.values.slice(0, 25));
    expect(largestGap(lowPass(short), scipy.filtfiltShort)).toBeLessThan(1e-8);
  });

  it('designs the same filter', () => {
    expect(largestGap(B, scipy.butter.b)).toBeLessThan(1e-5);
    expect(largestGap(A, scipy.butter.a)).toBeLessThan(1e-5);
  });

  it('gives the same natural spline', () => {
    const t = Float64Array.from(scipy.splineTimes);
    const y = Float64Array.from(scipy.values.slice(0, t.length));
    expect(largestGap(naturalSpline(t, y, 0, 5, scipy.spline.length), scipy.spline)).toBeLessThan(1e-9);
  });

  it('counts the same peaks by prominence', () => {
    expect(countPeaks(Float64Array.from(scipy.peakValues), 0.9)).toBe(scipy.peaks);
  });

  it('takes the same binomial ranks for the interval of a median', () => {
    for (const [n, rank] of scipy.medianRanks) {
      const values = Array.from({ length: n }, (_, i) => i + 1);
      expect(medianInterval(values)).toEqual({ low: rank, high: n + 1 - rank });
    }
  });
});

it('transforms as the plain sum does', () => {
  const n = 32;
  const value = (i: number): number => Math.sin(i * 1.7) + (i % 5);
  const [re, im] = [Float64Array.from({ length: n }, (_, i) => value(i)), new Float64Array(n)];
  transform(re, im);
  for (let k = 0; k < n; k += 1) {
    const sums = [Math.cos, Math.sin].map((f) =>
      Array.from({ length: n }, (_, i) => value(i) * f((2 * Math.PI * k * i) / n)).reduce((a, b) => a + b, 0),
    );
    expect(re[k]).toBeCloseTo(sums[0]!, 9);
    expect(im[k]).toBeCloseTo(-sums[1]!, 9);
  }
});

/** Balasubramanian et al. 2015, J NeuroEng Rehabil 12:112: formulas and the authors' code; values to 1e-4. */
describe('smoothness', () => {
  const bell = Float64Array.from({ length: 200 }, (_, i) => Math.exp(-5 * ((i - 100) / 100) ** 2));
  const minimumJerk = (n: number): Float64Array =>
    Float64Array.from({ length: n }, (_, i) => 30 * (i / (n - 1)) ** 2 * (1 - i / (n - 1)) ** 2);

  it('of the published bell', () => {
    expect(sparc(bell, 100)).toBeCloseTo(-1.41403, 4);
    expect(dimensionlessJerk(bell, 100)).toBeCloseTo(-335.74684, 4);
    expect(logDimensionlessJerk(bell, 100)).toBeCloseTo(-5.81636, 4);
  });

  it('of a minimum-jerk movement, long and short', () => {
    expect(sparc(minimumJerk(101), 100)).toBeCloseTo(-1.405829, 4);
    expect(logDimensionlessJerk(minimumJerk(101), 100)).toBeCloseTo(-5.301633, 4);
    expect(sparc(minimumJerk(25), 200)).toBeCloseTo(-1.22937, 4);
    expect(sparc(minimumJerk(25), 200, 20)).toBeCloseTo(-1.40048, 4);
  });

  it('of two movements that part from one another', () => {
    // Offsets 0.25 to 1.5 s of two movements of 1 s at 100 Hz.
    const wanted = [-1.403413, -1.63111, -1.961028, -2.244545, -3.119025];
    const one = minimumJerk(101);
    const got = [25, 50, 75, 100, 150].map((shift) => {
      const both = new Float64Array(101 + shift);
      for (let i = 0; i < 101; i += 1) {
        both[i]! += one[i]!;
        both[i + shift]! += one[i]!;
      }
      return sparc(both, 100)!;
    });
    for (const [i, value] of got.entries()) expect(value).toBeCloseTo(wanted[i]!, 3);
  });

  it('of half a sine: -ln(pi^4 / 2) in the limit; size changes nothing', () => {
    const half = Float64Array.from({ length: 20_001 }, (_, i) => Math.sin((Math.PI * i) / 20_000));
    expect(logDimensionlessJerk(half, 20_000)).toBeCloseTo(-Math.log(Math.PI ** 4 / 2), 3);
    expect(
      sparc(
        half.map((v) => 7 * v),
        20_000,
      ),
    ).toBeCloseTo(sparc(half, 20_000)!, 9);
  });
});

/** Lacquaniti, Terzuolo, Viviani 1983: an ellipse drawn by two sines obeys the law exactly. */
it('finds a third in a noise-free ellipse', () => {
  const t = Float64Array.from({ length: 1000 }, (_, i) => i * 5);
  const turn = t.map((ms) => (2 * Math.PI * ms) / 1600);
  const contact = {
    trace: 0,
    t,
    x: turn.map((a) => 20 * Math.cos(a)),
    y: turn.map((a) => 8 * Math.sin(a)),
    force: null,
  };
  expect(powerLaw([motionOf(contact, 5)!])!.exponent).toBeCloseTo(1 / 3, 3);
});
