/**
 * Red flags as a program sees them: those named in the input, and those that findings and measures raise by the same
 * table that the intake screen uses.
 */
import type { ProgramInput } from '../../../../db/types/program-input.ts';
import type { RuleTable } from '../../../../db/types/rules.ts';
import { onceFor } from '../../../../db/types/rule-table/once-for.ts';
import { meets } from '../facts/condition-holds.ts';
import { splitDetail } from '../facts/program-facts.ts';
import type { Facts } from '../facts/fact-types.ts';
import { toldEnglish } from '../../texts/screens/told-english.ts';

export interface OpenFlag {
  code: string;
  title: string;
  grade: 'emergency' | 'same-day';
  because: string;
  doNow: string[];
}

const flagsOfItem = onceFor((rows: RuleTable['flagsFromAnswers']) => Map.groupBy(rows, (row) => row.item));

/** Flags that are open now, emergencies first. A flag that was reviewed is not open; its cautions stay active. */
export function openFlagsOf(input: ProgramInput, facts: Facts, rules: RuleTable): OpenFlag[] {
  const reviewed = new Set<string>();
  const raised = new Map<string, string>();
  for (const flag of input.redFlags) {
    if (typeof flag !== 'string' && flag.reviewed) reviewed.add(flag.code);
    else raised.set(typeof flag === 'string' ? flag : flag.code, toldEnglish.draft.answeredYes);
  }
  // Every side counts: a flag of the other hand stops the work too.
  for (const finding of input.findings.map((each) => splitDetail(each, rules))) {
    for (const row of flagsOfItem(rules.flagsFromAnswers).get(finding.code) ?? []) {
      const low = row.gradeAtMost !== null && finding.grade !== null && finding.grade <= row.gradeAtMost;
      const named = finding.detail != null && row.details.includes(finding.detail);
      if ((low || named) && !raised.has(row.flag)) raised.set(row.flag, row.because);
    }
  }
  for (const row of rules.flagRules) {
    if (meets(row.when, facts) !== null && !raised.has(row.flag)) raised.set(row.flag, row.because);
  }
  const open = rules.redFlags.flatMap((flag): OpenFlag[] => {
    const because = raised.get(flag.code);
    if (because === undefined) return [];
    // An open answer outweighs an older review of the same flag.
    const answered = input.redFlags.some(
      (each) => each === flag.code || (typeof each !== 'string' && each.code === flag.code && !each.reviewed),
    );
    if (reviewed.has(flag.code) && !answered) return [];
    return [{ code: flag.code, title: flag.title, grade: flag.grade, because, doNow: flag.doNow }];
  });
  return open.sort((a, b) => Number(b.grade === 'emergency') - Number(a.grade === 'emergency'));
}
