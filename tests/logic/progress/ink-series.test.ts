/** Series of pen motion: surfaces and devices apart, the first try and practice left out, change by the one model. */
import { englishTelling } from '../../../renderer/logic/texts/screens/telling.ts';
import { expect, test } from 'vitest';
import { rulesInUse } from '../../../db/rules/in-use.ts';
import type { InkRecording } from '../../../db/types/sample.ts';
import { changeLimits } from '../../../renderer/change/index.ts';
import { inkMeasures } from '../../../renderer/logic/program/facts/ink-facts.ts';
import { inkSeries } from '../../../renderer/logic/progress/ink-series.ts';
import { smallMultiples } from '../../../renderer/logic/progress/small-multiples.ts';
import { sampleValues } from '../../../renderer/logic/record/measure-values.ts';
import { exchangeValues } from '../../../renderer/logic/exchange/values.ts';
import { observationOf } from '../../../renderer/logic/exchange/fhir-observations.ts';
import { line, loops, recordingOf } from '../sample/ink-facts.ts';
import { record, sample } from './facts.ts';

const rules = rulesInUse(null);
const limits = changeLimits(rules.thresholds);
const days = ['2026-01-05', '2026-01-12', '2026-01-19', '2026-01-26'];

/** Three bouts of loops a visit, of these heights, mm; visits a week apart. */
function written(heights: readonly number[], more: Partial<InkRecording> = {}) {
  const samples = heights.map((_, i) => sample(`s${i}`, days[i]!, { baseline: i < 2 }));
  const visits = heights.map((_, i) => ({ id: `v-${days[i]}`, date: days[i]! }));
  const inkRecordings = heights.flatMap((height, i) =>
    [0, 1, 2].map((n) =>
      recordingOf(loops(0, 0, height * [1, 1.02, 0.98][n]!), {
        clientId: 'c',
        visitId: `v-${days[i]}`,
        sampleId: `s${i}`,
        startedAt: `${days[i]}T09:0${n}:00.000Z`,
        ...more,
      }),
    ),
  );
  return record({ visits: visits as never, samples, inkRecordings, samplePages: [], pageMeasurements: [] });
}
const heightOf = (made: ReturnType<typeof written>) =>
  inkSeries(made, limits, englishTelling)[0]!.series.find(({ code }) => code === 'stroke-height')!;

test('a hand that grew by a third is told, one that stayed is not', () => {
  expect(heightOf(written([5, 5, 6.6, 6.7])).verdict).toMatch(/^Higher by more than this hand varies/);
  expect(heightOf(written([5, 5, 5.05, 5])).verdict).toMatch(/^Within what this hand varies/);
});

test('with one bout a visit nobody knows how much the hand varies', () => {
  const made = written([5, 5, 6.6, 6.7]);
  made.inkRecordings = made.inkRecordings.filter((_, i) => i % 3 === 0);
  expect(heightOf(made).verdict).toMatch(/^Cannot be told yet: 3 more repeats/);
});

test('surface, device, hand and dose state split the series; help and false starts stand in none', () => {
  const made = written([5, 5]);
  const [first] = made.inkRecordings;
  made.inkRecordings.push(
    { ...first!, id: 'a', surface: 'tablet-paper' },
    { ...first!, id: 'b', device: 'Other pen' },
    { ...first!, id: 'c', hand: 'left' },
    { ...first!, id: 'd', cues: { bandMm: 6, stopMarks: false, paceHz: null, sound: false, sizes: false } },
    { ...first!, id: 'e', abandoned: true },
  );
  const groups = inkSeries(made, limits, englishTelling);
  expect(groups).toHaveLength(4);
  const points = groups.flatMap(({ series }) => series.find(({ code }) => code === 'stroke-height')!.points);
  expect(points).toHaveLength(9);
  expect(groups[0]!.title).toBe('A row of joined loops, right hand, medicine on: on the glass of a screen, Test pen');
  expect(heightOf(made).points[0]!.words).toContain('(first try)');
});

test('pages drawn from ink never stand beside paper', () => {
  const made = written([5, 5]);
  const at = '2026-01-05T10:00:00.000Z';
  const page = {
    id: 'p',
    sampleId: 's0',
    order: 0,
    ink: { recordingId: made.inkRecordings[1]!.id, surface: 'screen', device: '' },
  };
  const measure = { code: 'x-height', value: 5, unit: 'mm', n: 9, low: 4, high: 6, method: 'm' };
  const result = { lines: [], measures: [measure], warnings: [], page: {} };
  made.samplePages = [page as never];
  made.pageMeasurements = [{ sampleId: 's0', pageId: 'p', at, version: 'page-5', corrections: [], result } as never];
  expect(sampleValues(made)).toEqual([]);
  expect(smallMultiples(made, englishTelling)).toEqual([]);
  expect(exchangeValues(made, rules).filter(({ code }) => code === 'ink-page-x-height')).toHaveLength(1);
});

test('exports name method and device; codes are never those of paper', () => {
  const values = exchangeValues(written([5]), rules).filter(({ who }) => who === 'pen');
  expect(values.every(({ code }) => code.startsWith('ink-'))).toBe(true);
  const one = values.find(({ code }) => code === 'ink-stroke-height')!;
  const told = observationOf(one, { clientId: 'c', visits: new Set(), idOf: (name) => name });
  expect(told.method!.text).toBe('pen motion; version ink-3');
  expect(told.contained).toEqual([
    {
      resourceType: 'Device',
      id: 'pen',
      deviceName: [{ name: 'Test pen, On the glass of a screen', type: 'user-friendly-name' }],
    },
  ]);
  expect(told.device).toEqual({ reference: '#pen' });
});

test('the rules see clear trends, stops and rhythms of the latest bouts, and unknown where nobody looked', () => {
  const of = { clientId: 'c', visitId: 'v-2026-01-05', sampleId: 's0' };
  const at = (minute: number) => ({ ...of, startedAt: `2026-01-05T10:0${minute}:00.000Z` });
  const made = written([5]);
  made.client = { handNow: 'right' } as never;
  const said = () => Object.fromEntries(inkMeasures(made).map(({ code, value }) => [code, value]));
  expect(said()).toMatchObject({
    'ink-size-decrement': 0,
    'ink-stops': 0,
    'ink-rhythm': null,
    'ink-lifts-per-word': null,
  });
  made.inkRecordings.push(
    recordingOf(loops(0.02, 2), at(1)),
    recordingOf(line({ hz: 4.8, amplitudeMm: 0.5 }), at(2)),
    recordingOf(line({ hz: 6, amplitudeMm: 0.9 }), { ...at(3), hand: 'left' }),
  );
  const now = said();
  // 2 % a stroke: 0.98^10 - 1 = -18.3 % in ten strokes.
  expect(now['ink-size-decrement']).toBeCloseTo(-18.3, 0);
  expect(now['ink-stops']).toBe(2);
  expect(now['ink-rhythm']).toBeCloseTo(0.5 / Math.SQRT2, 1);
  expect(now['ink-rhythm-frequency']).toBeCloseTo(4.8, 1);
});
