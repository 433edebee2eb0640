/**
 * Every statement b1 to b23 of the clinical notes 2 (part b) and the row that keeps it: a rule, veto, caution, flag or
 * group that exists and carries a source tag, and a client by whom it is seen. b14 and b15 are kept by questions.
 */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { z } from 'zod';
import flagRules from '../../../../db/rules/screen/flag-rules.json' with { type: 'json' };
import { compose } from '../../../../renderer/logic/program/draft/compose.ts';
import { dayMinutes } from '../../../../renderer/logic/program/draft/program-line.ts';
import { rules } from '../support.ts';
import { CaseFacts, inputOf } from '../worked/rule-case.ts';

const Statement = z.strictObject({
  statement: z.string(),
  says: z.string(),
  /** Rows of the rule table that keep it. */
  where: z.array(z.string()),
  facts: CaseFacts,
  gives: z.array(z.string()),
  absent: z.array(z.string()),
  /** Item and words that its text or cautions hold. */
  words: z.array(z.tuple([z.string(), z.string()])),
  page: z.array(z.string()),
  stopped: z.boolean(),
  minutesMost: z.number().optional(),
  tierMost: z.number().optional(),
  /** Words that no line says. */
  never: z.array(z.string()).optional(),
  writes: z.boolean().optional(),
});
const statements = z
  .array(Statement)
  .parse(JSON.parse(readFileSync(new URL('statements.json', import.meta.url), 'utf8')));

const rows = new Map([
  ...rules.rules.map(({ id, source }) => [id, source] as const),
  ...rules.vetoes.map(({ id, source }) => [id, source] as const),
  ...rules.cautionTexts.map(({ code, source }) => [code, source] as const),
  ...rules.redFlags.map(({ code, source }) => [code, source] as const),
  ...flagRules.map(({ id, source }) => [id, source] as const),
  ...rules.derivedCautions.map(({ caution, source }) => [caution, source] as const),
  ...rules.clashes.map(({ name }) => [name, 'common-practice'] as const),
]);

test.each(statements.map((each) => [each.statement, each.says, each] as const))('%s: %s', (_b, _says, each) => {
  for (const code of each.where) expect(rows.get(code), code).toMatch(/./);
  const draft = compose(inputOf(each.facts, rules), rules);
  const there = [...draft.lines.map((line) => line.item), ...draft.leftOut.map((out) => out.item)];
  expect(draft.stopped).toBe(each.stopped);
  for (const code of each.gives) expect(there).toContain(code);
  for (const code of each.absent) expect(draft.lines.map((line) => line.item)).not.toContain(code);
  for (const [item, words] of each.words) {
    const line = draft.lines.find((one) => one.item === item);
    expect([line?.text, ...(line?.cautions ?? [])].join(' ')).toContain(words);
  }
  for (const words of each.page) expect(draft.page.join(' ')).toContain(words);
  const minutes = draft.lines.reduce((sum, line) => sum + dayMinutes(line.dose), 0);
  if (each.minutesMost !== undefined) expect(minutes).toBeLessThanOrEqual(each.minutesMost);
  const timed = draft.lines.filter((line) => dayMinutes(line.dose) > 0);
  if (each.tierMost !== undefined) for (const line of timed) expect(line.tier).toBeLessThanOrEqual(each.tierMost);
  for (const words of each.never ?? []) for (const line of draft.lines) expect(line.text).not.toContain(words);
  if (each.writes) expect(timed.some((line) => line.kind === 'writing')).toBe(true);
});

test('every statement has a case; b14 and b15 are questions', () => {
  const seen = new Set(statements.map((each) => each.statement));
  const all = Array.from({ length: 23 }, (_, i) => `b${i + 1}`);
  expect(all.filter((b) => !seen.has(b))).toEqual(['b14', 'b15']);
  // b14: questions about change ask since when the client was last seen by a doctor.
  const change = ['sudden-change', 'spreading-weakness', 'neck-arm', 'injury', 'tone-rise', 'mind-change'];
  for (const code of change)
    expect(rules.redFlags.find((flag) => flag.code === code)?.question).toMatch(
      /^Since you were last seen by a doctor/,
    );
  // b15: emergencies and self-harm stand in groups of their own, where no key answers several (the window test of the screen).
  const alone = rules.redFlags.filter(
    (flag) => flag.asked && (flag.grade === 'emergency' || flag.path === 'self-harm'),
  );
  const groups = new Set(alone.map((flag) => flag.group));
  expect(rules.redFlags.filter((flag) => flag.asked && groups.has(flag.group) && !alone.includes(flag))).toEqual([]);
});
