/** Turns, lines and rests that a client reads are the same on the program, the family page and the practice pages. */
import { expect, test } from 'vitest';
import { rulesInUse } from '../../../db/rules/in-use.ts';
import type { ProgramLine } from '../../../db/types/program.ts';
import { practiceSection } from '../../../renderer/logic/pages/kinds/family-sections.ts';
import { practiceLogSheet } from '../../../renderer/logic/pages/kinds/practice-log-sheet.ts';
import { minutesADay } from '../../../renderer/logic/program/draft/program-line.ts';
import { practiceRequestOf } from '../../../renderer/logic/pages/practice/practice-request.ts';
import { compose } from '../../../renderer/logic/program/draft/compose.ts';
import { readFindings } from '../../../renderer/logic/program/facts/read-findings.ts';
import { amountWords } from '../../../renderer/logic/texts/dose-words.ts';
import { languages } from '../../../renderer/logic/texts/languages.ts';
import { workedCases } from '../../cases/judge.ts';
import { amountClashes } from '../program/amounts.ts';
import { input, programLine, record } from './record.ts';

const rules = rulesInUse(null);
const t = languages.en.texts;
const cases = ['stroke-and-brain', 'movement', 'hand-and-joint', 'weak-and-tired', 'senses-set-up-wishes'].flatMap(
  (name) => workedCases(`${name}.json`),
);

const programOf = (findings: unknown, onset: number | null): ProgramLine[] => {
  const read = readFindings(findings, rules);
  if (!read.ok) throw new Error(read.reason);
  const measures = read.input.measures.filter((each) => each.code !== 'onset-line');
  if (onset !== null) measures.push({ code: 'onset-line', value: onset, unit: 'line' });
  return compose({ ...read.input, measures }, rules).lines;
};

test.each([3, 4, 6])('words lost from line %i: every page has the same turns, lines and rests', (onset) => {
  let seen = 0;
  for (const each of cases) {
    const lines = programOf(each.findings, onset);
    const writing = lines.filter((line) => line.kind === 'writing' && line.dose.form === 'bouts');
    if (writing.length === 0) continue;
    seen += 1;
    const from = input({ record: record((r) => r.programs.forEach((program) => (program.lines = lines))) });
    const page = practiceRequestOf(from, rules, t);
    const turns = writing.reduce((sum, { dose }) => sum + (dose.sets ?? 1) * (dose.timesPerDay ?? 1), 0);
    expect([each.name, page.linesPerBout, page.bouts]).toEqual([each.name, writing[0]!.dose.lines, turns]);
    const fresh = writing[0]!.dose.how === 'until-fresh';
    expect(page.restText).toContain(fresh ? 'as fresh as' : `Rest ${writing[0]!.dose.restMinutes?.least} minutes`);
    for (const line of writing)
      if ((line.dose.sets ?? 1) > 1)
        expect(amountWords(line.dose, t.dose)).toContain(`rest ${writing[0]!.dose.restMinutes?.least} minutes`);
    expect(practiceLogSheet(from, t).few).toBe(minutesADay(from.record.programs.at(-1)!.lines) <= 10);
    const family = practiceSection(
      from,
      { ...from.record.programs[0]!, lines },
      { pt: 14, pictures: [], when: '' } as never,
      false,
      t,
    );
    const shown = family.blocks.flatMap((block) => (block.kind === 'steps' ? block.items : []));
    for (const step of shown) {
      const line = lines.find((one) => one.id === step.lineId)!;
      // As on the home program: nobody writes in one go what is meant in turns.
      const { sets, minutes, form } = line.dose;
      const turns = form === 'bouts' && sets !== null && sets > 1;
      expect(step.dose).toContain(turns ? t.dose.turns(sets, minutes! / sets) : t.dose.minutes(minutes!));
    }
  }
  expect(seen).toBeGreaterThan(40);
});

test('a second amount is found where there is one', () => {
  const line = programLine({ item: 'list-practice', kind: 'writing', text: 'Write five things of your list.' });
  const dose = {
    ...line.dose,
    form: 'bouts' as const,
    sets: 4,
    minutes: 4,
    lines: 1,
    restMinutes: { least: 2, most: 2 },
  };
  expect(amountClashes([{ ...line, dose }])).toEqual(['list-practice says 5 thing']);
  expect(amountClashes([{ ...line, dose, text: 'Write your list, one line at a time.' }])).toEqual([]);
});
