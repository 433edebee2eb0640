/**
 * The client's facts as rules see them: one grade a finding for the hand that writes, details, measures in the unit
 * of the thresholds, cautions and diagnoses. Built once, then only read.
 */
import type { Grade } from '../../../../db/types/common.ts';
import type { InputFinding, ProgramInput } from '../../../../db/types/program-input.ts';
import type { RuleTable } from '../../../../db/types/rules.ts';
import { thresholdsOf } from '../../../../db/types/rule-table/threshold.ts';
import { meets } from './condition-holds.ts';
import type { Facts, KnownFinding } from './fact-types.ts';
import { measureFindings } from './measure-findings.ts';
import { normalMeasures } from './measures-in-units.ts';

/** Caution that the pen chosen at a trial brings along, with the pen's words. */
const penChosen = 'pen-chosen';
/** Caution of table/derived-cautions.json: the writing hand heals and is not cleared, so no pen is used. */
const handNotCleared = 'hand-not-cleared';

/** Whether a finding is known to be this low or lower. Not tested or not asked: false, which is not "fine". */
export function isLow(facts: Pick<Facts, 'findings'>, code: string, most: number): boolean {
  const found = facts.findings.get(code);
  return found?.state === 'graded' && found.grade <= most;
}

/** Whether a finding is known to be this good or better, in all its parts. */
export function isGood(facts: Pick<Facts, 'findings'>, code: string, least: number): boolean {
  const found = facts.findings.get(code);
  return found?.state === 'graded' && found.whole && found.grade >= least;
}

/** Whether a finding was graded in all its parts. */
export function isTested(facts: Pick<Facts, 'findings'>, code: string): boolean {
  const found = facts.findings.get(code);
  return found?.state === 'graded' && found.whole;
}

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
function forWritingHand(input: ProgramInput, rules: RuleTable): InputFinding[] {
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
  for (const { code, grade, source, reason = '' } of findings) {
    const before = known.get(code);
    if (!before)
      known.set(code, grade === null ? { state: 'not-tested', reason, source } : graded(grade, true, source));
    else if (before.state === 'not-tested') {
      if (grade !== null) known.set(code, graded(grade, false, before.source));
    } else if (grade === null) known.set(code, { ...before, whole: false });
    else if (grade < before.grade) known.set(code, { ...before, grade });
  }
  return known;
}

const graded = (grade: Grade, whole: boolean, source: string): KnownFinding => ({
  state: 'graded',
  grade,
  whole,
  source,
});

/** The other hand: what holds the paper and helps. */
function otherHandOf(input: ProgramInput, rules: RuleTable): Facts['otherHand'] {
  const other = input.hand === null ? null : input.hand === 'right' ? 'left' : 'right';
  const sided = new Set(rules.vocabulary.findings.filter((each) => each.sided).map((each) => each.code));
  const grades = new Map<string, Grade>();
  for (const { code, grade, side } of input.findings.map((each) => splitDetail(each, rules))) {
    if (side !== other || !sided.has(code) || grade === null) continue;
    const before = grades.get(code);
    if (before === undefined || grade < before) grades.set(code, grade);
  }
  const cautions = input.cautions.flatMap((each) =>
    typeof each !== 'string' && each.side === other ? [each.code] : [],
  );
  return { cautions: new Set(cautions), grades };
}

/** Cautions of the hand that writes, of both and of the whole body. */
function ownCautions(input: ProgramInput): Set<string> {
  const own = input.cautions.filter(
    (each) =>
      typeof each === 'string' ||
      input.hand === null ||
      each.side === 'none' ||
      each.side === 'both' ||
      each.side === input.hand,
  );
  return new Set(own.map((each) => (typeof each === 'string' ? each : each.code)));
}

function pageSideOf(findings: readonly InputFinding[], rules: RuleTable): Facts['pageSide'] {
  const ofPage = new Set(rules.vocabulary.findings.filter((each) => each.pageSide).map((each) => each.code));
  const sides = findings.flatMap(({ code, grade, side }) =>
    ofPage.has(code) && grade !== null && grade < 3 && (side === 'left' || side === 'right') ? [side] : [],
  );
  return new Set(sides).size === 1 ? (sides[0] ?? 'none') : 'none';
}

/** Everything that the rules may ask about. Pure: the same input and table give the same facts. */
export function factsOf(input: ProgramInput, rules: RuleTable): Facts {
  const own = forWritingHand(input, rules);
  const findings = collect(own);
  const details = new Map<string, Set<string>>();
  for (const { code, detail } of own) {
    if (detail) details.set(code, (details.get(code) ?? new Set()).add(detail));
  }
  const diagnoses = new Set(input.diagnoses);
  for (const kind of rules.vocabulary.diagnoses) {
    if (diagnoses.has(kind.code)) kind.groups.forEach((group) => diagnoses.add(group));
  }
  const cautions = ownCautions(input);
  const cautionWords = new Map(input.chosenPen === undefined ? [] : [[penChosen, [input.chosenPen]]]);
  const facts: Facts = {
    hand: input.hand,
    findings,
    details,
    measures: normalMeasures(input, rules),
    cautions,
    cautionWords,
    otherHand: otherHandOf(input, rules),
    diagnoses,
    occasions: new Map(input.occasions.map((each) => [each.code, each.words])),
    pageSide: pageSideOf(own, rules),
    penHeld: null,
    tier: 0,
    thresholds: thresholdsOf(rules.thresholds),
  };
  for (const [code, found] of measureFindings(facts, rules)) {
    const seen = findings.get(code);
    // What the therapist saw stays; a measure may only make it worse, never milder.
    if (seen?.state !== 'graded' || found.grade < seen.grade) findings.set(code, found);
  }
  for (const row of rules.derivedCautions) {
    if (meets(row.when, facts) !== null) cautions.add(row.caution);
  }
  for (const caution of cautionWords.keys()) cautions.add(caution);
  const grasp = findings.get('grasp');
  const cannot = isLow(facts, 'hand-choice', 0) || cautions.has(handNotCleared);
  facts.penHeld = cannot ? false : grasp?.state !== 'graded' ? null : grasp.grade >= 1;
  return facts;
}
