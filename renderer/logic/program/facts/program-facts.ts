/**
 * The client's facts as rules see them: one grade a finding for the hand that writes, details, measures in the unit
 * of the thresholds, cautions and diagnoses. Built once, then only read.
 */
import type { InputFinding, ProgramInput } from '../../../../db/types/program-input.ts';
import type { RuleTable } from '../../../../db/types/rules.ts';
import type { Facts, KnownFinding } from './fact-types.ts';
import { measureFindings } from './measure-findings.ts';
import { normalMeasures } from './measures-in-units.ts';

/**
 * A detail may come in its own field, or as part of the code: `tremor-end-point` is the finding `tremor` with the
 * detail `end-point`. Returns the plain form.
 */
export function splitDetail(finding: InputFinding, rules: RuleTable): InputFinding {
  if (rules.vocabulary.findings.some((each) => each.code === finding.code)) return finding;
  for (const each of rules.vocabulary.findings) {
    const detail = each.details.find((one) => `${each.code}-${one.code}` === finding.code);
    if (detail) return { ...finding, code: each.code, detail: detail.code };
  }
  return finding;
}

/** Findings that count for the hand that writes: the other hand's are left out where the item has a side. */
export function forWritingHand(input: ProgramInput, rules: RuleTable): InputFinding[] {
  const sided = new Set(rules.vocabulary.findings.filter((each) => each.sided).map((each) => each.code));
  return input.findings
    .map((finding) => splitDetail(finding, rules))
    .filter((finding) => {
      if (!sided.has(finding.code) || input.hand === null) return true;
      return finding.side === input.hand || finding.side === 'both' || finding.side === 'none';
    });
}

function collect(findings: readonly InputFinding[]): Map<string, KnownFinding> {
  const known = new Map<string, KnownFinding>();
  for (const { code, grade, source } of findings) {
    const before = known.get(code);
    if (!before) {
      known.set(code, { grade, tested: grade !== null, source });
      continue;
    }
    const lower = before.grade === null || (grade !== null && grade < before.grade) ? grade : before.grade;
    known.set(code, { grade: lower ?? before.grade, tested: before.tested && grade !== null, source: before.source });
  }
  return known;
}

/** Everything that the rules may ask about. Pure: the same input and table give the same facts. */
export function factsOf(input: ProgramInput, rules: RuleTable): Facts {
  const own = forWritingHand(input, rules);
  const findings = collect(own);
  const details = new Map<string, Set<string>>();
  for (const { code, detail } of own) {
    if (detail) details.set(code, (details.get(code) ?? new Set()).add(detail));
  }
  const thresholds = new Map(rules.thresholds.map((each) => [each.code, each.value]));
  const diagnoses = new Set(input.diagnoses);
  for (const kind of rules.vocabulary.diagnoses) {
    if (diagnoses.has(kind.code)) kind.groups.forEach((group) => diagnoses.add(group));
  }
  const grasp = findings.get('grasp')?.grade ?? null;
  const handChoice = findings.get('hand-choice')?.grade ?? null;
  const facts: Facts = {
    hand: input.hand,
    findings,
    details,
    measures: normalMeasures(input, rules),
    cautions: new Set(input.cautions),
    diagnoses,
    penHeld: handChoice === 0 ? false : grasp === null ? null : grasp >= 1,
    tier: 0,
    thresholds,
  };
  for (const [code, found] of measureFindings(facts, rules)) {
    const seen = findings.get(code);
    // What the therapist saw stays; a measure may only make it worse, never milder.
    if (!seen || seen.grade === null || (found.grade !== null && found.grade < seen.grade)) findings.set(code, found);
  }
  return facts;
}
