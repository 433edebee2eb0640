import { readFileSync } from 'node:fs';
import { linearRegression, median, sampleCorrelation } from 'simple-statistics';
import { describe, expect, test } from 'vitest';
import { ac1 } from '../../renderer/statistics/ac1.ts';
import { blandAltman, repeatability } from '../../renderer/statistics/bland-altman.ts';
import { gasTScore } from '../../renderer/statistics/gas-t-score.ts';
import { icc } from '../../renderer/statistics/icc.ts';
import { kappa } from '../../renderer/statistics/kappa.ts';
import { kendall } from '../../renderer/statistics/kendall.ts';
import { minimalChange } from '../../renderer/statistics/minimal-change.ts';
import { nap } from '../../renderer/statistics/nap.ts';
import { newcombeDifference } from '../../renderer/statistics/newcombe-difference.ts';
import { tauU, baselineCorrectedTau } from '../../renderer/statistics/tau-u.ts';
import { theilSen } from '../../renderer/statistics/theil-sen.ts';
import { bandExit, twoSdBand } from '../../renderer/statistics/two-sd-band.ts';
import { orderedWeights, weightedKappa } from '../../renderer/statistics/weighted-kappa.ts';
import { wilson } from '../../renderer/statistics/wilson.ts';

const published = JSON.parse(readFileSync(new URL('./data/published-examples.json', import.meta.url), 'utf8'));

describe('Newcombe 1998, Stat Med 17:857-872, Table I method 3 (recomputed; several independent copies agree)', () => {
  test.each(published.wilson.cases as number[][])('Wilson %i of %i is %f to %f', (right, total, low, high) => {
    const interval = wilson(right!, total!);
    expect(interval.low).toBeCloseTo(low!, 4);
    expect(interval.high).toBeCloseTo(high!, 4);
  });
});

describe('Newcombe 1998, Stat Med 17:873-890, Table II method 10 (recomputed; copies agree)', () => {
  test.each(published.newcombe_diff.cases as number[][])('%i/%i less %i/%i', (...row) => {
    const [a, m, b, n, difference, low, high] = row as [number, number, number, number, number, number, number];
    const found = newcombeDifference(a, m, b, n);
    expect(found.difference).toBeCloseTo(difference, 4);
    expect(found.low).toBeCloseTo(low, 4);
    expect(found.high).toBeCloseTo(high, 4);
  });
});

test('Sen 1968, JASA 63:1379-1389: slope 4, 93 % interval 26/7 to 35/8 (the printed interval is wrong)', () => {
  const { t, y, slope, ci93, intercept_median_y_minus_bx } = published.theil_sen;
  const line = theilSen(t, y, 0.93)!;
  expect(line.slope).toBe(slope);
  expect(line.intercept).toBe(intercept_median_y_minus_bx);
  expect(line.interval!.low).toBeCloseTo(ci93[0], 10);
  expect(line.interval!.high).toBeCloseTo(ci93[1], 10);
  // The same data by other ways: the line through the medians (Conover), and least squares of the library in use.
  const { intercept_conover, ols_slope } = published.theil_sen;
  expect(median(y) - line.slope * median(t)).toBe(intercept_conover);
  expect(linearRegression(t.map((x: number, i: number) => [x, y[i]])).m).toBeCloseTo(ols_slope, 4);
  // Counting orders, these ranks hold the slope in 97 % of cases: Sen's choice is on the safe side.
  expect(line.confidence).toBeCloseTo(0.97, 2);
});

test('Hollander & Wolfe 1973 p. 187: T 26, tau .444, exact p .1194', () => {
  const { x, y, T, tau, p_exact } = published.kendall[0];
  const found = kendall(x, y);
  expect(found.concordant).toBe(T);
  expect(found.tau).toBeCloseTo(tau, 4);
  expect(found.p).toBeCloseTo(p_exact, 4);
  expect(found.pMethod).toBe('exact');
});

test('Kendall 1970 example 3.1 (S and tau-b seen in a public test): S 33, tau-b .859', () => {
  const { A, B, S, tau_b } = published.kendall[1];
  const found = kendall(A, B);
  expect(found.s).toBe(S);
  expect(found.tauB).toBeCloseTo(tau_b, 3);
});

test('smallest exact two-sided p of Kendall for 4 to 7 values (computed by counting orders)', () => {
  const smallest = [4, 5, 6, 7].map((n) => {
    const order = Array.from({ length: n }, (_, i) => i);
    return kendall(order, order).p!;
  });
  expect(smallest[0]).toBeCloseTo(0.083, 3);
  expect(smallest[1]).toBeCloseTo(0.0167, 4);
  expect(smallest[2]).toBeCloseTo(0.0028, 4);
  expect(smallest[3]).toBeCloseTo(0.0004, 4);
});

test('Parker & Vannest 2009, Behav Ther 40:357-367: 104 better, 4 tied, 2 worse, NAP .9636', () => {
  const { A, B, pos, tie, neg, nap: expected } = published.nap[0];
  expect(nap(A, B)).toMatchObject({ better: pos, tied: tie, worse: neg });
  expect(nap(A, B)!.nap).toBeCloseTo(expected, 10);
});

test('Parker, Vannest & Davis 2011, Behav Modif 35:303-322: NAP .9167, tau .8333', () => {
  const { A, B, nap: expected, tau } = published.nap[1];
  expect(nap(A, B)!.nap).toBeCloseTo(expected, 10);
  expect(nap(A, B)!.tau).toBeCloseTo(tau, 10);
});

describe('Tau-U examples (recomputed; the same values stand in public tests)', () => {
  test.each(published.tau_u as { A: number[]; B: number[]; tau: number; tau_u: number }[])('%o', (example) => {
    const found = tauU(example.A, example.B)!;
    expect(found.tau).toBeCloseTo(example.tau, 10);
    expect(found.tauU).toBeCloseTo(example.tau_u, 10);
  });

  test('Tarlow 2017: a baseline that rises by itself leaves nothing once its line is taken out', () => {
    const found = baselineCorrectedTau([1, 2, 3, 4, 5], [6, 7, 8, 9, 10])!;
    expect(found).toMatchObject({ corrected: true, tau: 0, slopePerVisit: 1 });
  });
});

describe('Shrout & Fleiss 1979, Psychol Bull 86:420-428 (recomputed, printed list from memory)', () => {
  const found = icc(published.icc.data);
  test('mean squares', () => {
    expect(found.meanSquares.between).toBeCloseTo(published.icc.BMS, 2);
    expect(found.meanSquares.within).toBeCloseTo(published.icc.WMS, 2);
    expect(found.meanSquares.raters).toBeCloseTo(published.icc.JMS, 2);
    expect(found.meanSquares.error).toBeCloseTo(published.icc.EMS, 2);
  });
  test('six correlations', () => {
    const all = [found.icc11, found.icc21, found.icc31, found.icc1k, found.icc2k, found.icc3k];
    all.forEach((value, i) => expect(value).toBeCloseTo(published.icc.full[i], 6));
    const printed = ['icc11', 'icc21', 'icc31', 'icc1k', 'icc2k', 'icc3k'].map((key) => published.icc[key]);
    all.forEach((value, i) => expect(value).toBeCloseTo(printed[i], 2));
  });
});

test('Weir 2005, J Strength Cond Res 19:231-240, data A (data seen in a public test file, results recomputed)', () => {
  const { A, icc21_A, icc31_A, EMS, SEM, MDC95 } = published.sem_mdc;
  const correlations = icc(A);
  expect(correlations.icc21).toBeCloseTo(icc21_A, 2);
  expect(correlations.icc31).toBeCloseTo(icc31_A, 3);
  expect(correlations.meanSquares.error).toBeCloseTo(EMS, 3);
  const change = minimalChange(A, { pairsSettled: 5 })!;
  expect(change.sem).toBeCloseTo(SEM, 3);
  expect(change.mdc95).toBeCloseTo(MDC95, 2);
  expect(change.provisional).toBe(false);
});

test('Cohen 1960, Educ Psychol Meas 20:37-46 (table seen in public tests, recomputed)', () => {
  const { table, po, pc, kappa: k, se, kappa_max } = published.kappa;
  const found = kappa(table);
  expect(found.observed).toBeCloseTo(po, 10);
  expect(found.chance).toBeCloseTo(pc, 10);
  expect(found.kappa).toBeCloseTo(k, 4);
  expect(found.standardError).toBeCloseTo(se, 4);
  expect(found.kappaMax).toBeCloseTo(kappa_max, 4);
});

test('Cohen 1968, Psychol Bull 70:213-220 (recomputed, weights from memory)', () => {
  const { table, disagreement_weights, qo, qc, kw, same_table_linear, same_table_quadratic } = published.weighted_kappa;
  const found = weightedKappa(table, disagreement_weights);
  expect(found.observed).toBeCloseTo(qo, 10);
  expect(found.chance).toBeCloseTo(qc, 10);
  expect(found.kappa).toBeCloseTo(kw, 4);
  expect(weightedKappa(table, orderedWeights(3, 'linear')).kappa).toBeCloseTo(same_table_linear, 4);
  expect(weightedKappa(table, orderedWeights(3, 'quadratic')).kappa).toBeCloseTo(same_table_quadratic, 4);
});

test('Gwet 2008, Br J Math Stat Psychol 61:29-48 (recomputed, table from memory)', () => {
  const { table, po, kappa: k, ac1: expected } = published.gwet_ac1;
  expect(ac1(table).observed).toBeCloseTo(po, 10);
  expect(ac1(table).ac1).toBeCloseTo(expected, 4);
  expect(kappa(table).kappa).toBeCloseTo(k, 4);
});

describe('Bland & Altman 1986, Lancet i:307-310', () => {
  const b = published.bland_altman;
  test('limits of agreement of the first readings (copies agree; printed limits come from rounded steps)', () => {
    const two = blandAltman(b.wright1, b.mini1, 2)!;
    expect(two.bias).toBeCloseTo(b.mean_diff, 4);
    expect(two.sd).toBeCloseTo(b.sd, 4);
    expect(two.limits.low).toBeCloseTo(b.loa_2sd[0], 2);
    expect(two.limits.high).toBeCloseTo(b.loa_2sd[1], 2);
    expect(Math.abs(two.limits.low - b.printed_loa[0])).toBeLessThan(0.1);
    expect(Math.abs(two.limits.high - b.printed_loa[1])).toBeLessThan(0.1);
    expect(two.seBias).toBeCloseTo(b.se_bias, 3);
    expect(two.seLimit).toBeCloseTo(b.se_loa_sqrt3, 2);
    // The correlation that the paper warns of: high although the meters differ.
    expect(sampleCorrelation(b.wright1, b.mini1)).toBeCloseTo(b.r, 3);
    const usual = blandAltman(b.wright1, b.mini1)!;
    expect(usual.limits.low).toBeCloseTo(b.loa_196[0], 2);
    expect(usual.limits.high).toBeCloseTo(b.loa_196[1], 2);
  });
  test('repeatability (recomputed, second mini readings from memory)', () => {
    expect(repeatability(b.wright1, b.wright2)).toBeCloseTo(b.repeatability_wright, 3);
    expect(repeatability(b.mini1, b.mini2)).toBeCloseTo(b.repeatability_mini, 3);
  });
});

describe('Kiresuk & Sherman 1968, Community Ment Health J 4:443-453 (recomputed; weights of two cases from memory)', () => {
  test.each(published.gas.cases as { x: number[]; w: number[]; T: number }[])('%o', ({ x, w, T }) => {
    const ratings = x.map((level, i) => ({ level, weight: w[i]! }));
    expect(gasTScore(ratings)).toBeCloseTo(T, 2);
  });
  test.each(Object.entries(published.gas.unit_step_equal_weights as Record<string, number>))(
    'one step on %s equal goals moves T by %f',
    (goals, step) => {
      const ratings = Array.from({ length: Number(goals) }, (_, i) => ({ level: i === 0 ? 1 : 0, weight: 1 }));
      expect(gasTScore(ratings)! - 50).toBeCloseTo(step, goals === '1' ? 10 : 3);
    },
  );
});

test('two-SD band on the baseline of Parker & Vannest 2009 (own computation: no published example; rule from memory)', () => {
  const { A, B } = published.nap[0];
  const band = twoSdBand(A)!;
  expect(band.mean).toBeCloseTo(3.7, 10);
  expect(band.sd).toBeCloseTo(1.494, 3);
  expect(band.low).toBeCloseTo(0.71, 2);
  expect(band.high).toBeCloseTo(6.69, 2);
  expect(B.filter((value: number) => value > band.high)).toHaveLength(9);
  expect(bandExit(band, B)).toEqual({ direction: 'up', index: 1 });
});

test('45 of 60 words is .628 to .842: one visit of 60 words is about 11 points either way (own computation)', () => {
  const interval = wilson(45, 60);
  expect(interval.low).toBeCloseTo(0.628, 3);
  expect(interval.high).toBeCloseTo(0.842, 3);
});
