/**
 * A client's whole record as the engine takes it. Drafting, checking and approving a program all pass through here,
 * so that the window and the handler can never judge from different facts.
 */
import type { ClientRecord } from '../../db/types/record.ts';
import type { PageResult, Sample } from '../../db/types/sample.ts';
import type { ProgramInput } from '../../db/types/program-input.ts';
import type { Program } from '../../db/types/program.ts';
import type { RulesInUse } from '../../db/types/rules-in-use.ts';
import { findings } from '../intake/findings.ts';
import { flagInputOf } from '../intake/flag-input.ts';
import { openFlags, type FlagState } from '../intake/flags.ts';
import { setUp } from '../intake/setup.ts';
import { occasionsOf, type Occasion } from '../progress/occasions.ts';
import { compose } from './compose.ts';

/** Red flags of the record by the one function that decides. `visitId`: every question must have been asked at that visit. */
export const flagsOf = (record: ClientRecord, rules: RulesInUse, visitId?: string): FlagState =>
  openFlags(flagInputOf(record, visitId), {
    ...rules.redFlagTable,
    flags: rules.redFlags,
    fromAnswers: rules.flagsFromAnswers,
  });

/** The measured page of a sample: its first page, latest measurement. */
function measuredPage(record: ClientRecord, sampleId: string): PageResult | null {
  const pages = record.samplePages.filter((p) => p.sampleId === sampleId).sort((a, b) => a.order - b.order);
  const measured = record.pageMeasurements
    .filter((m) => m.pageId === pages[0]?.id)
    .sort((a, b) => a.at.localeCompare(b.at));
  return measured.at(-1)?.result ?? null;
}

const lettersIn = (text: string): number => (text.match(/\p{L}/gu) ?? []).length;

type Measure = { code: string; value: number | null; unit: string };

/** What a sample says besides its page: legibility, speed, rise of fatigue and pain. */
function sampleMeasures({ sample, legibility }: Occasion): Measure[] {
  const out: Measure[] = [];
  if (legibility) {
    const percent = legibility.accuracy * 100;
    out.push({ code: 'legibility', value: percent, unit: '%' });
    out.push({
      code: sample.task.kind === 'free' || sample.task.kind === 'goal-output' ? 'legibility-own' : 'legibility-copy',
      value: percent,
      unit: '%',
    });
    if (sample.seconds)
      out.push({ code: 'words-per-minute', value: (legibility.wordsRight * 60) / sample.seconds, unit: '1/min' });
  }
  if (sample.seconds && sample.task.text)
    out.push({ code: 'letters-per-minute', value: (lettersIn(sample.task.text) * 60) / sample.seconds, unit: '1/min' });
  const rise = (before: number | null, after: number | null): number | null =>
    before === null || after === null ? null : after - before;
  out.push({ code: 'fatigue-rise', value: rise(sample.fatigueBefore, sample.fatigueAfter), unit: 'points' });
  out.push({ code: 'pain-rise', value: rise(sample.painBefore, sample.painAfter), unit: 'points' });
  return out;
}

/** Ruler readings typed in for a sample: the median of each; they count before the page's own. */
const typedMeasures = ({ sample }: Occasion, rules: RulesInUse): Measure[] =>
  Object.entries(sample.typed).flatMap(([code, values]) => {
    const unit = rules.vocabulary.measures.find((each) => each.code === code)?.units[0];
    const sorted = [...values].sort((a, b) => a - b);
    const [low, high] = [sorted[(sorted.length - 1) >> 1], sorted[sorted.length >> 1]];
    return unit === undefined || low === undefined || high === undefined
      ? []
      : [{ code, value: (low + high) / 2, unit }];
  });

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

/** Latest of several measures with the same code wins. */
function latestByCode(measures: readonly Measure[]): Measure[] {
  const byCode = new Map<string, Measure>();
  for (const m of measures) if (m.value !== null) byCode.set(m.code, { code: m.code, value: m.value, unit: m.unit });
  return [...byCode.values()];
}

/** Shares of words read, line by line: the worst reader's lines count, because endurance shows there first. */
function lineLegibility(occasion: Occasion | undefined): number[] {
  const lines = occasion?.legibility?.readings.find((r) => r.lineAccuracies.length > 0)?.lineAccuracies;
  return lines ? [...lines] : [];
}

const minutesALine = (sample: Sample | undefined, lines: number): number | undefined =>
  sample?.seconds && lines > 0 ? Math.min(30, Math.max(0.05, sample.seconds / 60 / lines)) : undefined;

/** @param visitId the visit at which the program is drafted: later facts are not looked at */
export function programInput(record: ClientRecord, rules: RulesInUse, visitId?: string): ProgramInput {
  const { client } = record;
  const has = (code: string): boolean => client.precautions.some((p) => p.code === code);
  const measures = record.setups.at(-1);
  const outcome = measures
    ? setUp(
        {
          ...measures,
          hand: measures.hand ?? client.handNow,
          cautions: [
            ...(has('hip-precautions') ? (['hip'] as const) : []),
            ...(has('wheelchair') ? (['wheelchair'] as const) : []),
          ],
        },
        rules.setup,
      )
    : null;
  const found = findings(
    record.intakeAnswers,
    rules.intake,
    outcome?.ok && measures ? { result: outcome.result, factId: measures.id } : null,
  );
  const flags = flagsOf(record, rules, visitId);
  // The uncued line on plain paper is charted apart and drives no rule.
  const occasions = occasionsOf(record).filter((each) => !each.probe);
  const last = occasions.at(-1);
  const read = occasions.filter((o) => o.legibility).at(-1);
  const pages = occasions.map((o) => measuredPage(record, o.sample.id)).filter((p): p is PageResult => p !== null);
  const lastPage = pages.at(-1);
  const sizes = (lastPage?.lines ?? []).flatMap((l) => (l.xHeightMm ? [l.xHeightMm] : []));
  const legible = lineLegibility(read);
  const previous = record.programs.filter((p) => p.status === 'approved').at(-1);
  const interests = client.interests.toLowerCase();
  const words = interests.split(/[^\p{L}]+/u).filter((word) => word.length >= 3);
  const topics = [...new Set(rules.contents.flatMap((c) => c.interests))].filter((topic) =>
    words.some((word) => word.startsWith(topic.slice(0, 4)) || topic.startsWith(word)),
  );
  const pace = minutesALine(last?.sample, lastPage?.lines.length ?? 0);
  return {
    version: 1,
    hand: client.handNow,
    findings: found
      .filter((f) => f.severity !== 'not-indicated')
      .map((f) => ({ code: f.code, grade: f.grade, side: f.side, source: f.source, detail: f.detail })),
    redFlags: [...flags.open.map((f) => f.code), ...flags.reviewed.map((f) => ({ code: f.code, reviewed: true }))],
    cautions: cautionsOf(record, last?.sample, rules),
    diagnoses: diagnosesOf(record, rules),
    measures: latestByCode([
      ...pages.flatMap((p) => p.measures),
      ...occasions.flatMap(sampleMeasures),
      ...occasions.flatMap((each) => typedMeasures(each, rules)),
    ]),
    confusions: (read?.legibility?.confusions ?? []).map(({ intended, read: r, count }) => ({
      intended,
      read: r,
      count,
    })),
    ...(legible.length ? { lineLegibility: legible } : {}),
    ...(sizes.length ? { lineSizesMm: sizes } : {}),
    ...(pace === undefined ? {} : { minutesALine: pace }),
    ...(topics.length ? { interests: topics } : {}),
    language: client.language,
    current: previous
      ? { tier: previous.tier, paper: codeAfter(previous, 'paper-'), content: codeAfter(previous, 'text-') }
      : null,
  };
}

/** Code of the paper or text that a program uses. */
const codeAfter = (program: Program, prefix: string): string | null =>
  program.lines.find((l) => l.item?.startsWith(prefix))?.item?.slice(prefix.length) ?? null;

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
