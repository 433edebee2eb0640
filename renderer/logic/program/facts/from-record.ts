/**
 * A client's whole record as the engine takes it. Drafting, checking and approving a program all pass through here,
 * so that the window and the handler can never judge from different facts.
 */
import type { ClientRecord } from '../../../../db/types/record.ts';
import type { PageResult, Sample } from '../../../../db/types/sample.ts';
import type { ProgramInput } from '../../../../db/types/program-input.ts';
import type { Program } from '../../../../db/types/program.ts';
import type { RulesInUse } from '../../../../db/types/rules-in-use.ts';
import { latestAnswers } from '../../record/latest-answers.ts';
import { findings } from '../../intake/findings.ts';
import { flagInputOf, painReviewedOn } from '../../intake/flag-input.ts';
import { logPainRise } from '../../record/log-pain.ts';
import { openFlags, type FlagState } from '../../intake/flags.ts';
import { setUp } from '../../setup/set-up.ts';
import { isOfTask } from '../../record/measure-values.ts';
import { latestSetUp, setUpInput } from '../../record/latest-set-up.ts';
import { occasionInput } from '../../record/writing-occasions.ts';
import { occasionsOf } from '../../record/occasions.ts';
import { limitsOf } from '../../rules/limits.ts';
import { recordAsOf } from '../../record/record-as-of.ts';
import { refOf } from '../../rules/item-ref.ts';
import { threshold } from '../../../../db/types/rule-table/threshold.ts';
import { compose } from '../draft/compose.ts';
import { inkMeasures } from './ink-facts.ts';
import {
  latestByCode,
  boutsOf,
  measuredPage,
  minutesALine,
  pageMeasures,
  rowsOfOneLetter,
  sampleMeasures,
  typedMeasures,
} from './record-measures.ts';
import { toldEnglish } from '../../texts/screens/told-english.ts';
import { englishTelling } from '../../texts/screens/telling.ts';

/** Red flags of the record by the one function that decides. `visitId`: every question must have been asked at that visit. */
export const flagsOf = (record: ClientRecord, rules: RulesInUse, visitId?: string): FlagState =>
  openFlags(
    flagInputOf(record, limitsOf(rules), visitId, toldEnglish.flags, englishTelling.decimals),
    {
      ...rules.redFlagTable,
      flags: rules.redFlags,
      fromAnswers: rules.flagsFromAnswers,
    },
    toldEnglish.flags,
  );

/** Cautions of the client, and circumstances that the last sample shows. */
function cautionsOf(record: ClientRecord, last: Sample | undefined, rules: RulesInUse): string[] {
  const known = new Set(rules.vocabulary.cautions.map((each) => each.code));
  const codes = record.client.precautions.flatMap((p) => (p.code !== null && known.has(p.code) ? [p.code] : []));
  if (last?.conditions.style === 'joined') codes.push('writes-joined');
  if (last && last.conditions.grip.trim() !== '') codes.push('grip-aid');
  return [...new Set(codes)];
}

/** Kinds of diagnoses; one in the therapist's own words counts as "other", because it may explain a change too. */
function diagnosesOf(record: ClientRecord, rules: RulesInUse): string[] {
  const known = new Set(rules.vocabulary.diagnoses.map((each) => each.code));
  return [
    ...new Set(
      record.client.diagnoses.flatMap(({ kind, text }) =>
        kind !== null && known.has(kind) ? [kind] : kind !== null || text.trim() !== '' ? ['other'] : [],
      ),
    ),
  ];
}

/** The pen of the latest trial of pens that was decided for one. */
function chosenPen(record: ClientRecord): string | undefined {
  const decided = record.trials.filter(({ kind, status }) => kind === 'pen' && status === 'decided');
  const last = decided.sort((a, b) => (a.decision?.on ?? '').localeCompare(b.decision?.on ?? '')).at(-1);
  return last?.options[last.decision?.option ?? -1]?.name;
}

/**
 * What the therapist saw while the client wrote: findings that no intake item asks for, kept as answers under their
 * own code. The latest counts.
 */
function seenFindings(record: ClientRecord, rules: RulesInUse): ProgramInput['findings'] {
  const own = new Set(
    rules.vocabulary.findings.flatMap((each) =>
      each.from === 'observed' || each.from === 'measure' ? [each.code] : [],
    ),
  );
  return latestAnswers(record.intakeAnswers)
    .filter((answer) => own.has(answer.item) && answer.state === 'graded' && answer.grade !== null)
    .map((answer) => ({
      code: answer.item,
      grade: answer.grade,
      side: 'none' as const,
      source: `intakeAnswer/${answer.id}`,
      detail: null,
    }));
}

/** @param visitId the visit at which the program is drafted: later facts are not looked at; left out: all facts count */
export function programInput(whole: ClientRecord, rules: RulesInUse, visitId?: string): ProgramInput {
  const record = visitId === undefined ? whole : recordAsOf(whole, visitId);
  const { client } = record;
  const measures = latestSetUp(record);
  const outcome = measures
    ? setUp(setUpInput(record, measures), rules.setup, toldEnglish.seat, englishTelling.decimals)
    : null;
  const found = findings(
    record.intakeAnswers,
    rules.intake,
    outcome?.ok && measures ? { result: outcome.result, factId: measures.id } : null,
    toldEnglish.findings,
  );
  const flags = flagsOf(record, rules, visitId);
  // The uncued line on plain paper is charted apart and drives no rule.
  const occasions = occasionsOf(record).filter((each) => !each.probe);
  const last = occasions.at(-1);
  const read = occasions.filter((o) => o.legibility).at(-1);
  // Paper goes before pages drawn from pen recordings: on glass people write larger. Without any paper they count.
  const onPaper = occasions.filter(({ surface }) => surface === null);
  const pagesOf = (of: typeof occasions): PageResult[] =>
    of.map((o) => measuredPage(record, o.sample.id)).filter((p): p is PageResult => p !== null);
  const paper = pagesOf(onPaper);
  const pages = paper.length > 0 ? paper : pagesOf(occasions);
  const lastPage = pages.at(-1);
  const previous = record.programs.filter((p) => p.status === 'approved').at(-1);
  const interests = client.interests.toLowerCase();
  const words = interests.split(/[^\p{L}]+/u).filter((word) => word.length >= 3);
  const topics = [...new Set(rules.contents.flatMap((c) => c.interests))].filter((topic) =>
    words.some((word) => word.startsWith(topic.slice(0, 4)) || topic.startsWith(word)),
  );
  const painRise = logPainRise(record.practiceLogs, painReviewedOn(record.redFlags));
  const pen = chosenPen(record);
  const pace = minutesALine(last?.sample, lastPage?.lines.length ?? 0);
  return {
    version: 1,
    hand: client.handNow,
    findings: [
      ...found
        .filter((f) => f.severity !== 'not-indicated')
        .map(({ code, grade, side, source, detail, reason }) => ({
          ...{ code, grade, side, source, detail },
          ...(reason === '' ? {} : { reason }),
        })),
      ...seenFindings(record, rules),
    ],
    redFlags: [...flags.open.map((f) => f.code), ...flags.reviewed.map((f) => ({ code: f.code, reviewed: true }))],
    cautions: cautionsOf(record, last?.sample, rules),
    occasions: occasionInput(record),
    diagnoses: diagnosesOf(record, rules),
    measures: latestByCode([
      ...pages.flatMap((p) => pageMeasures(p, rules)).filter(({ code }) => isOfTask('sentences', code)),
      ...rowsOfOneLetter(record),
      ...occasions.flatMap(sampleMeasures),
      ...occasions.flatMap((each) => typedMeasures(each, rules)),
      ...inkMeasures(record),
      { code: 'log-pain-rise', value: painRise, unit: 'points' },
    ]),
    confusions: (read?.legibility?.confusions ?? []).map(({ intended, read: r, count }) => ({
      intended,
      read: r,
      count,
    })),
    bouts: boutsOf(occasions, threshold(rules.thresholds, 'onset-bouts')),
    ...(pace === undefined ? {} : { minutesALine: pace }),
    ...(topics.length ? { interests: topics } : {}),
    ...(pen === undefined ? {} : { chosenPen: pen }),
    language: client.language,
    current: previous
      ? { tier: previous.tier, paper: codeOf(previous, 'paper', rules), content: codeOf(previous, 'content', rules) }
      : null,
  };
}

/** Code of the paper or text that a program uses. */
const codeOf = (program: Program, kind: 'paper' | 'content', rules: RulesInUse): string | null =>
  program.lines.map((line) => refOf(line.item, rules)).find((ref) => ref?.kind === kind)?.code ?? null;

/** A new draft for a visit, not yet stored. */
export function draftProgram(
  record: ClientRecord,
  visitId: string,
  rules: RulesInUse,
  newId: () => string,
): Omit<Program, 'at' | 'by'> {
  const { ruleVersion, tier, lines, vetoed } = compose(programInput(record, rules, visitId), rules);
  return {
    id: newId(),
    clientId: record.client.id,
    visitId,
    status: 'draft',
    ruleVersion,
    tier,
    lines,
    vetoed,
    note: '',
    approvedAt: null,
    approvedBy: null,
  };
}
