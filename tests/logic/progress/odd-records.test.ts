/** Records as they come in real life. Each gives a sentence that can be defended, and a picture or the reason for none. */
import { expect, test } from 'vitest';
import { rulesInUse } from '../../../db/rules/in-use.ts';
import type { ClientRecord } from '../../../db/types/record.ts';
import { proposedGoal } from '../../../renderer/logic/goals/new-goal.ts';
import { measuresCsv } from '../../../renderer/logic/exchange/measures-csv.ts';
import { numbersBehind } from '../../../renderer/logic/progress/sentence-numbers.ts';
import { occasionsOf } from '../../../renderer/logic/record/occasions.ts';
import { changeOf, smallestRealChange } from '../../../renderer/logic/record/change-samples.ts';
import { repeatPairs } from '../../../renderer/logic/record/repeat-pairs.ts';
import { changeSentences } from '../../../renderer/logic/texts/change/change-words.ts';
import { englishTelling } from '../../../renderer/logic/texts/screens/telling.ts';
import { progressPicture } from '../../../renderer/logic/progress/series.ts';
import { smallMultiples } from '../../../renderer/logic/progress/small-multiples.ts';
import { progressCsv } from '../../../renderer/logic/progress/table-columns.ts';
import { ladder, limits } from '../../limits.ts';
import { reading, record, sample } from './facts.ts';

const pictureOf = (facts: Parameters<typeof progressPicture>[0], given: typeof limits, span = {}) =>
  progressPicture(facts, given, span, englishTelling);

const rules = rulesInUse(null);

const days = (list: readonly string[], rights: readonly number[], over: object = {}, per: object = {}): ClientRecord =>
  record({
    ...over,
    samples: list.map((day, i) => sample(`s${i}`, day, { baseline: i === 0, ...per })),
    readings: list.map((_, i) => reading(`s${i}`, rights[i]!, { id: `r${i}` })),
  });
const week = ['2026-01-05', '2026-01-12', '2026-01-19', '2026-01-26', '2026-02-02'];

interface Odd {
  what: string;
  made: ClientRecord;
  says: RegExp;
  verdict: string;
}
const odd: Odd[] = [
  { what: 'nothing at all', made: record({}), says: /No sample has been read yet/, verdict: 'nothing' },
  {
    what: 'samples that nobody has read',
    made: { ...days(week, [9, 9, 9, 9, 9]), readings: [] },
    says: /No sample has been read yet/,
    verdict: 'nothing',
  },
  {
    what: 'one visit',
    made: days(week.slice(0, 1), [9]),
    says: /^One visit: 9 of 20 words .* cannot show change: two more samples/,
    verdict: 'cannot-tell',
  },
  {
    what: 'no baseline',
    made: days(week, [9, 10, 12, 13, 15], {}, { baseline: false }),
    says: /^Five visits: from about 9 to about 1[34] words in 20; /,
    verdict: 'cannot-tell',
  },
  {
    what: 'baselines only',
    made: days(week.slice(0, 3), [9, 10, 9], {}, { baseline: true }),
    says: /^Three visits: /,
    verdict: 'cannot-tell',
  },
  {
    what: 'all words legible',
    made: days(week, [20, 20, 20, 20, 20]),
    says: /^Every word could be read at all five visits.*harder task/,
    verdict: 'steady',
  },
  {
    what: 'no word legible',
    made: days(week, [0, 0, 0, 0, 0]),
    says: /^No word could be read at all five visits.*count letters/,
    verdict: 'steady',
  },
  {
    what: 'the same day twice',
    made: days(['2026-01-05', '2026-01-05'], [9, 11]),
    says: /^One visit: 20 of 40 words /,
    verdict: 'cannot-tell',
  },
  {
    what: 'a gap of a year',
    made: days(['2025-01-05', '2025-01-12', '2026-02-02'], [9, 10, 16]),
    says: /^One visit: 16 of 20 words .*first visit after a long break.*new baseline/,
    verdict: 'cannot-tell',
  },
  {
    what: 'readings of a sample that was deleted',
    made: (() => {
      const made = days(week.slice(0, 2), [9, 14]);
      return { ...made, samples: made.samples.slice(0, 1) };
    })(),
    says: /^One visit: 9 of 20/,
    verdict: 'cannot-tell',
  },
  {
    what: 'a sample whose visit was deleted',
    made: days(week.slice(0, 2), [9, 10], { visits: [] }),
    says: /^Two visits/,
    verdict: 'cannot-tell',
  },
  {
    what: 'two therapists who read, and nobody else',
    made: (() => {
      const made = days(week.slice(0, 2), [9, 14]);
      const by = (r: ClientRecord['readings'][number], who: string, right: number) => ({
        ...r,
        id: `${r.id} ${who}`,
        by: who,
        reader: 'therapist' as const,
        readerInitials: who,
        blind: false,
        counted: { right, of: 20 },
      });
      return { ...made, readings: made.readings.flatMap((r) => [by(r, 'AB', 8), by(r, 'CD', 10)]) };
    })(),
    says: /^Two visits: /,
    verdict: 'cannot-tell',
  },
  {
    what: 'a reading without words',
    made: { ...days(week.slice(0, 1), [9]), readings: [reading('s0', 0, { counted: null, lines: [] })] },
    says: /No sample has been read yet/,
    verdict: 'nothing',
  },
];

test.each(odd)('$what: a sentence, a picture or its reason, and no number that is none', ({ made, says, verdict }) => {
  const picture = pictureOf(made, limits);
  const change = changeOf(made, limits);
  const sentence = changeSentences(change, limits.change, {}).join(' ');
  const spanish = changeSentences(change, limits.change, { language: 'es' }).join(' ');
  expect(sentence).toMatch(says);
  expect(change.answer.verdict).toBe(verdict);
  const points = [...picture.legibility, ...picture.fatigue].flatMap((series) => series.points);
  if (points.length === 0) expect(picture.notes.length).toBeGreaterThan(0);
  const numbers = [...points.flatMap((p) => [p.at, p.value, p.low, p.high]), ...picture.marks.map((mark) => mark.at)];
  for (const number of numbers) if (number !== null) expect(Number.isFinite(number)).toBe(true);
  const goal = proposedGoal(
    { id: 'g', clientId: 'c' },
    occasionsOf(made),
    smallestRealChange(change, limits.goalSamples, limits),
    '',
    '2026-02-02',
    limits,
    ladder,
    null,
    null,
    englishTelling,
  );
  expect(goal.percent).toBeGreaterThan(0);
  expect(goal.percent).toBeLessThanOrEqual(100);
  const client = { code: 'C-01' } as ClientRecord['client'];
  const said = [
    sentence,
    spanish,
    ...picture.notes,
    progressCsv(picture.rows),
    ...numbersBehind(change, limits.change, englishTelling).map((row) => `${row.value} ${row.how}`),
    JSON.stringify(smallMultiples(made, englishTelling)),
    JSON.stringify(repeatPairs(made, limits)),
    JSON.stringify(goal),
    measuresCsv([{ ...made, client }], rules),
  ].join('\n');
  expect(said).not.toMatch(/NaN|Infinity|undefined|\[object|significant/i);
});

test('readings of a deleted sample are named, and counted nowhere', () => {
  const made = days(week.slice(0, 2), [9, 14]);
  const picture = pictureOf({ ...made, samples: made.samples.slice(0, 1) }, limits);
  expect(picture.notes.join(' ')).toContain('One reading belongs to a sample that was removed and is not counted.');
  expect(picture.rows.map((row) => row.right)).toEqual([9]);
});

test('two therapists are averaged, and every point says that it was not read blind', () => {
  const made = odd.find((one) => one.what.startsWith('two therapists'))!.made;
  const [series] = pictureOf(made, limits).legibility;
  expect(series).toMatchObject({ id: 'therapist', label: 'Words read, therapist, not blind' });
  expect(series!.points.map((point) => point.value)).toEqual([45, 45]);
  expect(series!.points[0]!.words).toBe('9 of 20 words, 2 therapists, not blind');
});
