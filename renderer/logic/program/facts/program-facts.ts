/**
 * The client's facts as rules see them: one grade a finding for the hand that writes, details, measures in the unit
 * of the thresholds, cautions and diagnoses. Built once, then only read.
 */
import type { Grade } from '../../../../db/types/common.ts';
import type { InputFinding, ProgramInput } from '../../../../db/types/program-input.ts';
import type { RuleTable } from '../../../../db/types/rules.ts';
import { byCode, onceFor } from '../../../../db/types/rule-table/once-for.ts';
import { threshold, thresholdsOf } from '../../../../db/types/rule-table/threshold.ts';
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
  if (byCode(rules.vocabulary.findings).has(finding.code)) return finding;
  const parts = codesWithDetail(rules.vocabulary.findings).get(finding.code);
  return parts ? { ...finding, ...parts } : finding;
}

/** `tremor-end-point` -> the finding and its detail. */
const codesWithDetail = onceFor(
  (findings: RuleTable['vocabulary']['findings']) =>
    new Map<string, { code: string; detail: string }>(
      findings.flatMap(({ code, details }) =>
        details.map((detail) => [`${code}-${detail.code}`, { code, detail: detail.code }] as const),
      ),
    ),
);

/** Findings that count for the hand that writes: the other hand's are left out where the item has a side. */
function forWritingHand(findings: readonly InputFinding[], { hand }: ProgramInput, rules: RuleTable): InputFinding[] {
  const known = byCode(rules.vocabulary.findings);
  return findings.filter(
    ({ code, side }) => hand === null || side === hand || side === 'both' || side === 'none' || !known.get(code)?.sided,
  );
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
function otherHandOf(findings: readonly InputFinding[], input: ProgramInput, rules: RuleTable): Facts['otherHand'] {
  const other = input.hand === null ? null : input.hand === 'right' ? 'left' : 'right';
  const known = byCode(rules.vocabulary.findings);
  const grades = new Map<string, Grade>();
  for (const { code, grade, side } of findings) {
    if (side !== other || grade === null || !known.get(code)?.sided) continue;
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
  const known = byCode(rules.vocabulary.findings);
  const sides = findings.flatMap(({ code, grade, side }) =>
    (side === 'left' || side === 'right') && grade !== null && grade < 3 && known.get(code)?.pageSide ? [side] : [],
  );
  return new Set(sides).size === 1 ? (sides[0] ?? 'none') : 'none';
}

/** Letters that readers took for others most often, most frequent first. */
function lettersMisread(input: ProgramInput, most: number): string[] {
  const counts = new Map<string, number>();
  for (const { intended, read, count } of input.confusions) {
    if (/^\p{L}$/u.test(intended) && intended !== read) counts.set(intended, (counts.get(intended) ?? 0) + count);
  }
  return [...counts]
    .sort(([a, n], [b, m]) => m - n || (a < b ? -1 : 1))
    .slice(0, most)
    .map(([letter]) => letter);
}

/** Everything that the rules may ask about. Pure: the same input and table give the same facts. */
export function factsOf(input: ProgramInput, rules: RuleTable): Facts {
  const said = input.findings.map((finding) => splitDetail(finding, rules));
  const own = forWritingHand(said, input, rules);
  const findings = collect(own);
  const details = new Map<string, Set<string>>();
  for (const { code, detail } of own) {
    if (detail) details.set(code, (details.get(code) ?? new Set()).add(detail));
  }
  const diagnoses = new Set(input.diagnoses);
  const kinds = byCode(rules.vocabulary.diagnoses);
  for (const code of input.diagnoses) kinds.get(code)?.groups.forEach((group) => diagnoses.add(group));
  const cautions = ownCautions(input);
  const cautionWords = new Map(input.chosenPen === undefined ? [] : [[penChosen, [input.chosenPen]]]);
  const thresholds = thresholdsOf(rules.thresholds);
  const facts: Facts = {
    hand: input.hand,
    findings,
    details,
    measures: normalMeasures(input, rules),
    cautions,
    flags: new Set(input.redFlags.map((each) => (typeof each === 'string' ? each : each.code))),
    cautionWords,
    otherHand: otherHandOf(said, input, rules),
    diagnoses,
    occasions: new Map(input.occasions.map((each) => [each.code, each.words])),
    pageSide: pageSideOf(own, rules),
    penHeld: null,
    tier: 0,
    thresholds,
    lettersMisread: lettersMisread(input, threshold(thresholds, 'letters-taught')),
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
