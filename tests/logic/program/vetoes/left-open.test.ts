import { expect, test } from 'vitest';
import type { InputFinding, ProgramInput } from '../../../../db/types/program-input.ts';
import { compose } from '../../../../renderer/logic/program/draft/compose.ts';
import { leftOpen } from '../../../../renderer/logic/program/draft/vetoes.ts';
import { lineOf } from '../../../../renderer/logic/program/draft/program-line.ts';
import { factsOf } from '../../../../renderer/logic/program/facts/program-facts.ts';
import { client, itemCodes, rules } from '../support.ts';

const tired = 'too tired today';
const without = (input: ProgramInput, code: string): ProgramInput => ({
  ...input,
  findings: input.findings.map((each) => (each.code === code ? { ...each, grade: null, reason: tired } : each)),
});
const withGrade = (input: ProgramInput, code: string, grade: InputFinding['grade']): ProgramInput => ({
  ...input,
  findings: input.findings.map((each) => (each.code === code ? { ...each, grade } : each)),
});

test('what a line leaves open is settled by testing it, and says why it is not known', () => {
  const whole = client();
  const found: string[] = [];
  for (const code of itemCodes) {
    const untested = without(whole, code);
    for (const item of rules.items) {
      const line = lineOf(item, [], factsOf(untested, rules), rules);
      const open = leftOpen(line, untested, rules);
      if (!open.some((sentence) => sentence.includes(tired))) continue;
      found.push(`${code} ${item.code}`);
      const settled = ([0, 1, 2, 3] as const).filter(
        (grade) => leftOpen(line, withGrade(whole, code, grade), rules).length < open.length,
      );
      expect(settled, `${item.code} with ${code}`).not.toEqual([]);
    }
  }
  expect(found.length, 'a screen with a gap leaves something open').toBeGreaterThan(10);
});

test('a screen without gaps leaves nothing open that was asked', () => {
  const whole = client();
  const open = compose(whole, rules).lines.flatMap((line) => leftOpen(line, whole, rules));
  expect(open.filter((sentence) => sentence.includes(tired))).toEqual([]);
});

test('why something was not tested stands in the reason for what is not given', () => {
  const { vetoed } = compose(without(client({ wrist: 1 }), 'pain'), rules);
  const because = vetoed.filter(({ rule }) => rule === 'V00').map((each) => each.because);
  expect(because.length).toBeGreaterThan(0);
  for (const sentence of because) expect(sentence).toContain(`(${tired})`);
});
