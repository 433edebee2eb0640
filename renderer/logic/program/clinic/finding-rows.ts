/** The client's findings beside the draft: what, how bad, from where, and which lines each one causes. */
import type { ProgramInput } from '../../../../db/types/program-input.ts';
import type { ProgramLine } from '../../../../db/types/program.ts';
import type { RuleTable } from '../../../../db/types/rules.ts';
import { type Composition } from '../draft/stopped-draft.ts';
import { firedRules } from '../draft/asked-by-rules.ts';
import { factsOf, isTested } from '../facts/program-facts.ts';
import { setsTier, tierOf } from '../draft/tier.ts';
import type { Told } from '../../texts/screens/en/screens-en.ts';
import type { Telling } from '../../texts/screens/telling.ts';

export interface FindingRow {
  code: string;
  name: string;
  /** "1 of 3, marked", "not tested", "2.3 mm", "noted". */
  state: string;
  /** It was not tested. */
  untested: boolean;
  /** Lines that name it. */
  lineIds: string[];
  /** Why no line names it: "kept out for safety", "no room today" …; '' where one does. */
  without: string;
  kind: 'finding' | 'measure' | 'caution' | 'diagnosis';
}

/** Plain name of a code of any kind. */
export function nameOf(code: string, rules: RuleTable, words: Told['ladder']): string {
  const { findings, measures, cautions, diagnoses, diagnosisGroups, occasions } = rules.vocabulary;
  const known = [...findings, ...measures, ...cautions, ...diagnoses, ...occasions].find((each) => each.code === code);
  if (known) return known.name;
  if (code === 'left-hand') return words.writesLeft;
  if (code === 'right-hand') return words.writesRight;
  return diagnosisGroups[code] ?? rules.redFlags.find((each) => each.code === code)?.title ?? code;
}

/** Why a finding causes no line: what its rules ask for was forbidden, had no room or was taken out, or none acts on it. */
function withoutLine(
  code: string,
  input: ProgramInput,
  rules: RuleTable,
  draft: Composition,
  words: Told['ladder'],
): string {
  const fired = firedRules(input, rules).filter(({ uses }) => uses.includes(code));
  const asked = new Set(fired.flatMap(({ rule }) => rule.gives));
  const gone = (list: Composition['vetoed']): boolean => list.some(({ item }) => asked.has(item));
  if (gone(draft.vetoed)) return words.keptOut;
  if (gone(draft.leftOut)) return words.noRoom;
  if (asked.size > 0) return words.notInDraft;
  const found = factsOf(input, rules).findings.get(code);
  return found?.state === 'graded' && setsTier(code, found.grade) ? words.setsTier : words.noLineForGrade;
}

/**
 * Findings of 0 to 2 worst first, then what is not tested, then measures, diagnoses and cautions that lines name.
 * @param draft what today's findings would draft: says why a finding has no line
 */
export function findingRows(
  input: ProgramInput,
  lines: readonly ProgramLine[],
  rules: RuleTable,
  draft: Composition | null,
  { told, decimals }: Telling,
): FindingRow[] {
  const words = told.ladder;
  const facts = factsOf(input, rules);
  facts.tier = tierOf(input, facts);
  const lineIds = (code: string): string[] =>
    lines.filter((line) => line.findings.includes(code)).map((line) => line.id);
  const row = (code: string, kind: FindingRow['kind'], state: string, untested = false): FindingRow => ({
    code,
    name: nameOf(code, rules, words),
    state,
    untested,
    lineIds: lineIds(code),
    without:
      lineIds(code).length > 0
        ? ''
        : draft === null || draft.stopped || kind !== 'finding' || untested
          ? words.noLine
          : withoutLine(code, input, rules, draft, words),
    kind,
  });
  const graded = [...facts.findings]
    .flatMap(([code, found]) => (found.state === 'graded' && found.grade < 3 ? [{ code, grade: found.grade }] : []))
    .sort((a, b) => a.grade - b.grade)
    .map(({ code, grade }) => row(code, 'finding', words.graded(grade, words.grades[grade]!)));
  const fine = [...facts.findings]
    .filter(([code, found]) => found.state === 'graded' && found.grade === 3 && lineIds(code).length > 0)
    .map(([code]) => row(code, 'finding', words.graded(3, words.grades[3]!)));
  const untested = [...facts.findings]
    .filter(([code]) => !isTested(facts, code))
    .map(([code]) => row(code, 'finding', words.notTested, true));
  const units = new Map(
    rules.vocabulary.measures.map(({ code, units: [unit = ''] }) => [code, told.ruleWords.units[unit] ?? unit]),
  );
  const measures = [...facts.measures]
    .filter(([code]) => lineIds(code).length > 0)
    .map(([code, value]) => row(code, 'measure', `${decimals(value, 2, 0)} ${units.get(code) ?? ''}`.trim()));
  const noted = [
    ...input.diagnoses.map((code) => row(code, 'diagnosis', words.diagnosis)),
    ...input.cautions.map((each) => row(typeof each === 'string' ? each : each.code, 'caution', words.noted)),
    ...(input.hand === 'left' && lineIds('left-hand').length > 0 ? [row('left-hand', 'caution', words.noted)] : []),
  ];
  const seen = new Set<string>();
  return [...graded, ...untested, ...fine, ...measures, ...noted].filter(({ code }) => {
    const known = seen.has(code);
    seen.add(code);
    return !known;
  });
}
