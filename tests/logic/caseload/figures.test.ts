/** The caseload asked as a whole: counts by hand, intervals against the published ones, nobody named or ranked. */
import { toldEnglish } from '../../../renderer/logic/texts/screens/told-english.ts';
import { expect, test } from 'vitest';
import { rulesCurrent } from '../../../db/rules/index.ts';
import {
  figureFacts,
  figureRows,
  LEAST,
  rulesChanged,
  type FigureFacts,
} from '../../../renderer/logic/caseload/figures.ts';
import { figuresCsv } from '../../../renderer/logic/caseload/figures-csv.ts';
import { conditions, reading, record, sample, stamp } from '../progress/facts.ts';

const one = (more: Partial<FigureFacts> = {}): FigureFacts => ({
  diagnoses: ['parkinson'],
  occasions: ['list'],
  goalsDue: 0,
  goalsMet: 0,
  verdict: 'nothing',
  change: null,
  practice: null,
  visits: 4,
  authorized: null,
  rules: [],
  ...more,
});
const many = (n: number, more: Partial<FigureFacts> = {}) => Array.from({ length: n }, () => one(more));

// Newcombe 1998, Statistics in Medicine 17:857-872, Table I, method 3: 0 of 20 gives 0 to .1611, 1 of 29 gives .0061 to .1718.
test('shares carry the published intervals; missing is counted, not dropped', () => {
  const [all] = figureRows([...many(20, { verdict: 'steady' }), ...many(3)], 'diagnoses');
  expect(all).toMatchObject({ clients: 23, notCompared: 3, better: { has: 0, of: 20 } });
  expect(all!.better.share!.high).toBeCloseTo(0.1611, 4);
  const [next] = figureRows([...many(28, { goalsDue: 1 }), one({ goalsDue: 2, goalsMet: 1 })], 'diagnoses');
  expect([next!.goals.has, next!.goals.of]).toEqual([1, 29]);
  expect(next!.goals.share!.low).toBeCloseTo(0.0061, 4);
  expect(next!.goals.share!.high).toBeCloseTo(0.1718, 4);
});

test('below ten clients there are counts and no share, no median', () => {
  const few = figureRows(many(LEAST - 1, { verdict: 'up', change: 12, goalsDue: 1, goalsMet: 1 }), 'diagnoses')[0]!;
  expect([few.goals.share, few.better.share, few.change.median, few.visits.median]).toEqual([null, null, null, null]);
  expect([few.goals.has, few.better.has, few.change.of]).toEqual([LEAST - 1, LEAST - 1, LEAST - 1]);
  const enough = figureRows(many(LEAST, { verdict: 'up', change: 12 }), 'diagnoses')[0]!;
  expect([enough.better.share?.mid, enough.change.median]).toEqual([1, 12]);
});

test('groups stand in the order of their code, whatever they did; a client counts in each of hers', () => {
  const facts = [
    ...many(12, { diagnoses: ['tremor'], verdict: 'up' }),
    ...many(12, { diagnoses: ['arthritis'], verdict: 'down' }),
    one({ diagnoses: ['arthritis', 'tremor'] }),
    one({ diagnoses: [] }),
  ];
  const rows = figureRows(facts, 'diagnoses');
  expect(rows.map(({ group, clients }) => [group, clients])).toEqual([
    ['all', 26],
    ['arthritis', 13],
    ['tremor', 13],
    ['none', 1],
  ]);
  expect(figureRows([...facts].reverse(), 'diagnoses')).toEqual(rows);
});

test('visits used of those authorized, half of the practice, rules by how often they were changed', () => {
  const facts = [
    ...many(6, { visits: 5, authorized: 10, practice: { done: 3, asked: 6 } }),
    ...many(6, { visits: 10, authorized: 10, practice: { done: 2.9, asked: 6 } }),
    one({ rules: [{ rule: 'W10', lines: 3, overridden: 0, edited: 2 }] }),
    one({
      rules: [
        { rule: 'R1', lines: 1, overridden: 1, edited: 0 },
        { rule: 'R2', lines: 9, overridden: 0, edited: 0 },
      ],
    }),
  ];
  const [all] = figureRows(facts, 'occasions');
  expect(all!.authorizedUsed).toMatchObject({ of: 12, median: 75 });
  expect(all!.practised).toMatchObject({ has: 6, of: 12 });
  expect(rulesChanged(facts).map(({ rule }) => rule)).toEqual(['R1', 'W10']);
});

test('a record gives no name, code, initials or date; goals revised are not due; the verdict is the model’s', () => {
  const visits = ['2026-01-01', '2026-01-02', '2026-03-01', '2026-03-02'];
  const facts = figureFacts(
    {
      ...record({
        visits: visits.map((date) => ({ ...stamp, id: `v-${date}`, date, kind: 'first' })) as never,
        samples: visits.map((day, i) => sample(`s${i}`, day, { baseline: i < 2, conditions })),
        readings: visits.map((_, i) => reading(`s${i}`, i < 2 ? 3 : 19)),
        goals: [
          { status: 'met', dueOn: null },
          { status: 'revised', dueOn: '2026-01-01' },
          { status: 'active', dueOn: '2026-01-01' },
          { status: 'active', dueOn: '2099-01-01' },
        ] as never,
        writingOccasions: [{ code: 'list', on: true, often: null, at: '' }] as never,
      }),
      client: { name: 'Zebedee', code: 'ZX', diagnoses: [{ kind: null, text: 'own words' }], care: undefined } as never,
    },
    rulesCurrent(),
    '2026-03-04',
  );
  expect(facts).toMatchObject({ goalsDue: 2, goalsMet: 1, verdict: 'up', diagnoses: ['other'], occasions: ['list'] });
  expect(JSON.stringify(facts)).not.toMatch(/Zebedee|ZX|own words|KT|2026/);
});

test('the CSV has a column for each figure, and says what may not be concluded', () => {
  const text = figuresCsv(figureRows(many(12, { verdict: 'up', change: 8 }), 'diagnoses'), (group) => `=${group}`);
  const lines = text.trim().split('\r\n');
  expect(lines[0]!.split(',')).toHaveLength(36);
  expect(lines[1]!.split(',')).toHaveLength(36);
  expect(lines[1]).toMatch(/^'=all,12,/);
  for (const words of Object.values(toldEnglish.trail.mayNotBeConcluded)) expect(text).toContain(words.slice(0, 30));
});
