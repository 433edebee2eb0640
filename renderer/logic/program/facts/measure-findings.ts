/** Findings that come out of measures: a table decides (db/rules/screen/measure-findings.json), this reads it. */
import type { RuleTable } from '../../../../db/types/rules.ts';
import { meets } from './condition-holds.ts';
import type { Facts, KnownFinding } from './fact-types.ts';

/** Finding code -> grade. Measured and nothing crossed = 3; not measured = absent, which is not the same as fine. */
export function measureFindings(facts: Facts, rules: RuleTable): Map<string, KnownFinding> {
  const found = new Map<string, KnownFinding>();
  for (const row of rules.measureFindings) {
    const measured = row.from.filter((code) => facts.measures.has(code));
    if (measured.length === 0) continue;
    const hit = row.grades.find((each) => meets(each.when, facts) !== null);
    found.set(row.finding, { grade: hit?.grade ?? 3, tested: true, source: `measure/${measured.join('+')}` });
  }
  return found;
}
