import { expect, test } from 'vitest';
import { rulesCurrent } from '../../../db/rules/index.ts';
import { ownRepeats, withHand } from '../../../renderer/logic/record/hand-ranges.ts';

const { thresholds } = rulesCurrent();
const sample = (id: string, visitId: string, kind = 'sentences', hand = 'right') => ({
  id,
  visitId,
  task: { kind },
  conditions: { hand, doseState: 'on', cue: null, paper: '', instruction: null },
});
const page = (sampleId: string, value: number | null, version = 'page-5', pageId = sampleId, at = '1') => ({
  sampleId,
  pageId,
  version,
  at,
  result: { measures: [{ code: 'x-height', value, unit: 'mm' }] },
});
const record = (samples: unknown[], pageMeasurements: unknown[]) => ({ samples, pageMeasurements }) as never;

test('repeats are pages of one visit under the same conditions, each by its latest measurement', () => {
  const own = ownRepeats(
    record(
      [sample('a', 'v1'), sample('b', 'v1'), sample('c', 'v1', 'sentences', 'left'), sample('d', 'v2')],
      [page('a', 2), page('a', 2.5, 'page-5', 'a', '2'), page('b', 2.7), page('c', 9), page('d', 2.6)],
    ),
    'page-5',
  );
  expect(own('x-height', 'mm')).toEqual([[2.5, 2.7]]);
  expect(own('x-height', 'xh'), 'another unit').toEqual([]);
  expect(own('slant', 'deg')).toEqual([]);
});

test('pages of an older method, without a value, and signatures are no repeats', () => {
  const samples = [
    sample('a', 'v1'),
    sample('b', 'v1'),
    sample('s', 'v3', 'signature'),
    sample('t', 'v3', 'signature'),
  ];
  expect(
    ownRepeats(record(samples, [page('a', 2, 'page-4'), page('b', 2.2), page('s', 3), page('t', 4)]), 'page-5')(
      'x-height',
      'mm',
    ),
  ).toEqual([]);
  expect(ownRepeats(record(samples, [page('a', null), page('b', 2.2)]), 'page-5')('x-height', 'mm')).toEqual([]);
});

// By hand: relative SD .12 times 1.25 for weeks apart, t(.975, 6) = 2.447: exp(+-.367).
test('before any repeats the range of ordinary writers is used; own repeats narrow it; no figure gives none', () => {
  const [first] = withHand([{ code: 'x-height', value: 2, unit: 'mm' }], () => [], thresholds);
  expect(first!.handLow).toBeCloseTo(2 * Math.exp(-0.367), 2);
  expect(first!.handHigh).toBeCloseTo(2 * Math.exp(0.367), 2);
  expect(first!.handPages).toBe(0);
  const [own] = withHand(
    [{ code: 'x-height', value: 2, unit: 'mm' }],
    () => [[2, 2.02, 1.98, 2.01, 2, 1.99]],
    thresholds,
  );
  expect(own!.handPages).toBe(6);
  expect(own!.handHigh!).toBeLessThan(first!.handHigh!);
  const [none] = withHand([{ code: 'closure', value: 80, unit: '%' }], () => [[80, 82]], thresholds);
  expect(none).toMatchObject({ handLow: null, handHigh: null, handPages: 0 });
  const [unknown] = withHand([{ code: 'x-height', value: null, unit: 'mm' }], () => [], thresholds);
  expect(unknown).toMatchObject({ handLow: null, handHigh: null });
});

test('what cannot be negative has no interval below zero', () => {
  const uneven = [{ code: 'x-height-cv', value: 2, unit: '%' }];
  const [shown] = withHand(uneven, () => [], thresholds);
  expect(shown!.handLow).toBe(0);
  expect(shown!.handHigh).toBeGreaterThan(2);
  const [turned] = withHand([{ code: 'baseline-angle', value: 0.2, unit: 'deg' }], () => [], thresholds);
  expect(turned!.handLow, 'a line may fall as well').toBeLessThan(0);
});
