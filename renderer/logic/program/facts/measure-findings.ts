/** Findings that come out of measures: a table decides (db/rules/screen/measure-findings.json), this reads it. */
import type { RuleTable } from '../../../../db/types/rules.ts';
import { meets } from './condition-holds.ts';
import type { Facts, KnownFinding } from './fact-types.ts';

type Graded = Extract<KnownFinding, { state: 'graded' }>;

/** Finding code -> grade. Measured and nothing crossed = 3; not measured = absent, which is not the same as fine. */
export function measureFindings(facts: Facts, rules: RuleTable): Map<string, Graded> {
  const found = new Map<string, Graded>();
  for (const row of rules.measureFindings) {
    if (!row.from.some((code) => facts.measures.has(code))) continue;
    const hit = row.grades.find((each) => meets(each.when, facts) !== null);
    const source = `measure/${row.from.filter((code) => facts.measures.has(code)).join('+')}`;
    found.set(row.finding, { state: 'graded', grade: hit ? hit.grade : 3, whole: true, source });
  }
  return found;
}
