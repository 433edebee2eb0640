/**
 * Meaning is typed: rule ids, titles and texts are citations and wording, and what is not known is never fine. Drafts and
 * gates stay as they are when every name changes; a missing threshold throws; an untested finding never adds a line
 * that rests on it.
 */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { RuleTableError } from '../../../db/types/rule-table/rule-table-error.ts';
import type { RuleTable } from '../../../db/types/rules.ts';
import { compose } from '../../../renderer/logic/program/draft/compose.ts';
import { type Composition } from '../../../renderer/logic/program/draft/stopped-draft.ts';
import { checkProgram } from '../../../renderer/logic/program/draft/vetoes.ts';
import { threshold } from '../../../db/types/rule-table/threshold.ts';
import { anyCase } from './inputs.ts';
import { client, rules } from './support.ts';

const clients = fc.sample(anyCase(rules), { numRuns: 150, seed: 11 }).map(({ input }) => input);

/** What a draft means, without names and words. */
const meaning = (draft: Composition) => ({
  stopped: draft.stopped,
  tier: draft.tier,
  lines: draft.lines.map(({ id, item, kind, tier, dose, findings }) => ({ id, item, kind, tier, dose, findings })),
  vetoed: draft.vetoed.map(({ item }) => item),
  leftOut: draft.leftOut.map(({ item }) => item),
});

const same = (renamed: RuleTable): void => {
  for (const input of clients) {
    const [before, after] = [compose(input, rules), compose(input, renamed)];
    expect(meaning(after)).toEqual(meaning(before));
    const allowed = (table: RuleTable): boolean => checkProgram(before.lines, input, table).mayApprove;
    expect(allowed(renamed)).toBe(allowed(rules));
  }
};

test('rule and veto ids replaced by random ones change no draft and no gate', () => {
  const random = (at: number): string => `Q${String(((at * 7919) % 900) + 100)}`;
  same({
    ...rules,
    rules: rules.rules.map((rule, at) => ({ ...rule, id: random(at) })),
    vetoes: rules.vetoes.map((veto, at) => ({ ...veto, id: `V${(at * 31) % 900}` })),
  });
}, 60_000);

test('every title and English text reworded changes no draft and no gate', () => {
  const worded = (words: string): string => `Anders: ${words.length}`;
  same({
    ...rules,
    items: rules.items.map((item) => ({
      ...item,
      title: worded(item.title),
      text: worded(item.text),
      versions: item.versions.map((each) => ({ ...each, text: worded(each.text) })),
      additions: item.additions.map((each) => ({ ...each, text: worded(each.text) })),
    })),
    rules: rules.rules.map((rule) => ({ ...rule, because: worded(rule.because) })),
    vetoes: rules.vetoes.map((veto) => ({ ...veto, because: worded(veto.because) })),
    cautionTexts: rules.cautionTexts.map((row) => ({ ...row, text: worded(row.text) })),
    papers: rules.papers.map((paper) => ({ ...paper, title: worded(paper.title), text: worded(paper.text) })),
  });
}, 60_000);

test('a thresholds row that is missing throws and is named; no number stands beside the table', () => {
  for (const { code } of rules.thresholds) {
    const rest = rules.thresholds.filter((each) => each.code !== code);
    expect(() => threshold(rest, code)).toThrow(RuleTableError);
    expect(() => threshold(rest, code)).toThrow(code);
  }
  // Every row of every table, over drafts of all sorts: without it a draft throws and names it, or is the same.
  const some = [
    ...clients.slice(0, 10),
    client({}, { measures: [{ code: 'fatigue-rise', value: 1, unit: 'points' }] }),
  ];
  const drafts = (table: RuleTable) => some.map((input) => meaning(compose(input, table)));
  const before = drafts(rules);
  const read = rules.thresholds.filter(({ code }) => {
    try {
      const after = drafts({ ...rules, thresholds: rules.thresholds.filter((each) => each.code !== code) });
      expect(after, code).toEqual(before);
      return false;
    } catch (error) {
      if (!(error instanceof RuleTableError)) throw error;
      expect(error.message).toContain(code);
      return true;
    }
  });
  expect(read.length, 'rows that these drafts read').toBeGreaterThan(20);
}, 120_000);

test('each finding set to not tested: nothing that depends on it is given, and no line comes that was not there', () => {
  for (const input of clients.slice(0, 20)) {
    if (compose(input, rules).stopped) continue;
    for (const { code, from } of rules.vocabulary.findings) {
      if (from !== 'item') continue;
      const untested = {
        ...input,
        findings: input.findings.map((each) => (each.code === code ? { ...each, grade: null, detail: null } : each)),
      };
      const { lines } = compose(untested, rules);
      const resting = lines.filter((line) =>
        rules.items.some((item) => item.code === line.item && item.dependsOn.includes(code)),
      );
      expect(resting.map((line) => `${line.item} rests on ${code}`)).toEqual([]);
    }
  }
}, 120_000);
