import { expect, test } from 'vitest';
import { changeOf, changeSamples } from '../../../renderer/logic/record/change-samples.ts';
import { occasionsOf } from '../../../renderer/logic/record/occasions.ts';
import { toCsv } from '../../../renderer/logic/texts/csv-cells.ts';
import { englishTelling } from '../../../renderer/logic/texts/screens/telling.ts';
import { progressPicture } from '../../../renderer/logic/progress/series.ts';
import { ordinarySteps, smallMultiples } from '../../../renderer/logic/progress/small-multiples.ts';
import { progressCsv } from '../../../renderer/logic/progress/table-columns.ts';
import { limits } from '../../limits.ts';
import { conditions, reading, record, sample, stamp } from './facts.ts';

const pictureOf = (facts: Parameters<typeof progressPicture>[0], given: typeof limits, span = {}) =>
  progressPicture(facts, given, span, englishTelling);

test('an empty record gives a reason instead of an empty chart', () => {
  const picture = pictureOf(record({}), limits);
  expect(picture.legibility).toEqual([]);
  expect(picture.notes).toEqual(['There is no writing sample yet. Take one at a visit, then it shows here.']);
});

test('kinds of readers, probes and home logs are series of their own with shapes of their own', () => {
  const picture = pictureOf(
    record({
      samples: [
        sample('a', '2026-01-05', { baseline: true }),
        sample('b', '2026-01-12'),
        sample('p', '2026-01-12', { task: { kind: 'transfer-probe', textCodes: [], text: 'x', spellingNoted: false } }),
        sample('s', '2026-01-12', { task: { kind: 'signature', textCodes: [], text: '', spellingNoted: false } }),
      ],
      readings: [reading('a', 10), reading('b', 15, { reader: 'family' }), reading('p', 12), reading('gone', 3)],
      practiceLogs: [
        {
          ...stamp,
          id: 'l',
          date: '2026-01-08',
          minutes: 10,
          lines: 6,
          fatigueBefore: 1,
          fatigueAfter: 3,
          pain: 0,
          breaks: 1,
          paper: '',
          grip: '',
          note: '',
        },
      ],
    }),
    limits,
  );
  expect(picture.legibility.map((s) => [s.id, s.points.length])).toEqual([
    ['unfamiliar', 1],
    ['family', 1],
    ['probe', 1],
  ]);
  const shapes = [...picture.legibility, ...picture.fatigue].map((s) => s.shape);
  expect(new Set(picture.legibility.map((s) => s.shape)).size).toBe(3);
  expect(new Set(picture.fatigue.map((s) => s.shape)).size).toBe(4);
  expect(shapes).toHaveLength(7);
  expect(picture.rows.map((row) => row.what)).toEqual([
    'Baseline sample',
    'Home practice',
    'Sample',
    'Probe without cues',
  ]);
  expect(picture.notes.join(' ')).toContain('One reading belongs to a sample that was removed');
});

test('program starts, medicine and other conditions are marked on their day', () => {
  const picture = pictureOf(
    record({
      samples: [
        sample('a', '2026-01-05'),
        sample('b', '2026-01-12', { conditions: { ...conditions, doseState: 'off', pen: 'pencil' } }),
      ],
      programs: [
        {
          ...stamp,
          id: 'p',
          visitId: 'v',
          status: 'approved',
          ruleVersion: '1',
          tier: 2,
          lines: [],
          vetoed: [],
          note: '',
          approvedAt: '2026-01-06T10:00:00.000Z',
          approvedBy: 'KT',
        },
      ],
    }),
    limits,
  );
  expect(picture.marks.map((m) => [m.day, m.kind, m.label])).toEqual([
    ['2026-01-06', 'program', 'Program starts, tier 2'],
    ['2026-01-12', 'medicine', 'medicine off'],
    ['2026-01-12', 'conditions', 'Other pen'],
  ]);
});

test('the visit decides the day, also when the sample was entered later', () => {
  const picture = pictureOf(
    record({
      visits: [
        {
          ...stamp,
          id: 'v1',
          date: '2026-01-04',
          kind: 'first',
          minutes: null,
          nextVisit: '',
          told: '',
          skilled: '',
          response: '',
          taughtBack: '',
          plan: '',
        },
      ],
      samples: [sample('a', '2026-01-05', { visitId: 'v1' })],
      readings: [reading('a', 10)],
    }),
    limits,
  );
  expect(picture.legibility[0]!.points[0]).toMatchObject({ day: '2026-01-04', at: Date.parse('2026-01-04T12:00:00Z') });
});

test('the sentence and the picture come from the same points', () => {
  const samples = ['05', '12', '19'].map((d, i) => sample(d, `2026-01-${d}`, { baseline: i === 0 }));
  const facts = record({ samples, readings: samples.map((s, i) => reading(s.id, 10 + i)) });
  const picture = pictureOf(facts, limits);
  expect(changeSamples(occasionsOf(facts)).map(({ right }) => right)).toEqual([10, 11, 12]);
  expect(changeOf(facts, limits).answer.compared).toBe(3);
  expect(picture.legibility[0]!.points.map((p) => Math.round(p.value))).toEqual([50, 55, 60]);
});

test('a span leaves out what lies before it', () => {
  const samples = [sample('a', '2025-01-05'), sample('b', '2026-01-12')];
  const picture = pictureOf(record({ samples }), limits, { from: '2026-01-01' });
  expect(picture.rows).toHaveLength(1);
  expect(pictureOf(record({ samples }), limits, { from: '2026-06-01' }).notes[0]).toContain('no sample in this span');
});

test('CSV makes formulas harmless and keeps numbers', () => {
  expect(
    toCsv(
      ['a', 'b'],
      [
        ['=1+1', -2],
        ['say "hi", then', null],
      ],
    ),
  ).toBe('a,b\r\n\'=1+1,-2\r\n"say ""hi"", then",\r\n');
  expect(progressCsv([]).split('\r\n')).toHaveLength(2);
});

// Two pages of a sample, the first measured twice: the latest measurement of each counts.
test('small multiples average the pages of a sample and name the better direction', () => {
  const page = (id: string, sampleId: string, value: number | null) => ({
    ...stamp,
    id,
    visitId: 'v',
    sampleId,
    pageId: `page ${id.charAt(0)}`,
    method: 'm',
    version: '1',
    uncorrected: null,
    corrections: [],
    result: {
      page: { widthMm: 210, heightMm: 297, dpi: 300, rotationDeg: 0 },
      lines: [],
      warnings: [],
      measures: [{ code: 'gap-ratio', value, unit: '1', n: 10, low: null, high: null, method: '' }],
    },
  });
  const [gap] = smallMultiples(
    record({
      samples: [sample('a', '2026-01-05')],
      pageMeasurements: [
        page('1', 'a', 9),
        page('1b', 'a', 2),
        page('2', 'a', 4),
        page('3', 'a', null),
        page('4', 'gone', 9),
      ],
    }),
    englishTelling,
  );
  expect(gap).toMatchObject({ code: 'gap-ratio', better: 'higher', points: [{ value: 3, day: '2026-01-05' }] });
  // Its spread is not known: drawn on 0 to 30, a chart of 4 steps up and down, not on what it happened to be.
  expect(gap!.steps).toBeNull();
  expect(ordinarySteps(gap!.code, gap!.points)).toEqual([expect.closeTo(-3.2, 9)]);
});
