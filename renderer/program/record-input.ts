/** What a program is composed from, gathered from a client's record. Every draft, check and approval passes here. */
import type { ProgramInput } from '../../db/types/program-input.ts';
import type { ClientRecord } from '../../db/types/record.ts';
import type { RulesInUse } from '../../db/types/rules-in-use.ts';
import type { Sample } from '../../db/types/sample.ts';
import { findings } from '../intake/findings.ts';
import { flagInputOf } from '../intake/flag-input.ts';
import { openFlags } from '../intake/flags.ts';
import { setUp } from '../intake/setup.ts';
import { type Occasion, occasionsOf } from '../progress/occasions.ts';

type InputMeasure = ProgramInput['measures'][number];

const median = (values: readonly number[]): number => {
  const sorted = [...values].sort((a, b) => a - b);
  const half = sorted.length >> 1;
  return sorted.length % 2 === 1 ? (sorted[half] ?? 0) : ((sorted[half - 1] ?? 0) + (sorted[half] ?? 0)) / 2;
};

const byTime = <T extends { at: string }>(list: readonly T[]): T[] =>
  [...list].sort((a, b) => Date.parse(a.at) - Date.parse(b.at));

function intakeFindings(record: ClientRecord, rules: RulesInUse): ProgramInput['findings'] {
  const setup = byTime(record.setups).at(-1);
  const outcome = setup ? setUp(setup, rules.setup) : null;
  const fromSetup = setup && outcome?.ok ? { result: outcome.result, factId: setup.id } : null;
  return findings(record.intakeAnswers, rules.intake, fromSetup).map(({ code, grade, side, source, detail }) => ({
    code,
    grade,
    side,
    source,
    detail,
  }));
}

/** Ruler readings and measured values of one sample; where both exist, the therapist's own readings count. */
function sampleMeasures(record: ClientRecord, sample: Sample, rules: RulesInUse): InputMeasure[] {
  const units = new Map(rules.vocabulary.measures.map((each) => [each.code, each.units[0] ?? '']));
  const measures = new Map<string, InputMeasure>();
  for (const page of byTime(record.pageMeasurements).filter((each) => each.sampleId === sample.id)) {
    for (const { code, value, unit } of page.result.measures) {
      if (value !== null && units.has(code)) measures.set(code, { code, value, unit });
    }
  }
  for (const [code, values] of Object.entries(sample.typed)) {
    const unit = units.get(code);
    if (unit !== undefined && values.length > 0) measures.set(code, { code, value: median(values), unit });
  }
  const rise = (code: string, before: number | null, after: number | null): void => {
    if (before !== null && after !== null) measures.set(code, { code, value: after - before, unit: 'points' });
  };
  rise('fatigue-rise', sample.fatigueBefore, sample.fatigueAfter);
  rise('pain-rise', sample.painBefore, sample.painAfter);
  return [...measures.values()];
}

/** Words read, own and copied apart, and readable words a minute. */
function readMeasures(read: readonly Occasion[]): InputMeasure[] {
  const out: InputMeasure[] = [];
  const percent = (code: string, occasion: Occasion | undefined): void => {
    if (occasion?.legibility) out.push({ code, value: occasion.legibility.accuracy * 100, unit: '%' });
  };
  const isOwn = (occasion: Occasion): boolean => occasion.sample.task.kind === 'free';
  percent('legibility', read.at(-1));
  percent(
    'legibility-copy',
    read.findLast((each) => !isOwn(each)),
  );
  percent('legibility-own', read.findLast(isOwn));
  const last = read.at(-1);
  if (last?.legibility && last.sample.seconds) {
    const value = last.legibility.wordsRight / (last.sample.seconds / 60);
    out.push({ code: 'words-per-minute', value, unit: 'per minute' });
  }
  return out;
}

/** Topics of the content table that the client's own words name. */
export function topicsIn(words: string, rules: Pick<RulesInUse, 'contents'>): string[] {
  const said = words
    .toLowerCase()
    .split(/[^\p{L}]+/u)
    .filter((word) => word.length >= 3);
  const topics = [...new Set(rules.contents.flatMap((each) => each.interests))];
  return topics.filter((topic) => said.some((word) => word.startsWith(topic.slice(0, 4)) || topic.startsWith(word)));
}

/** Where the client stands on the ladder: the last approved program's tier, paper and text. */
function standing(record: ClientRecord): ProgramInput['current'] {
  const last = record.programs
    .filter((each) => each.status === 'approved')
    .sort((a, b) => Date.parse(a.approvedAt ?? a.at) - Date.parse(b.approvedAt ?? b.at))
    .at(-1);
  if (!last) return null;
  const after = (prefix: string): string | null =>
    last.lines.find((line) => line.item?.startsWith(prefix))?.item?.slice(prefix.length) ?? null;
  return { tier: last.tier, paper: after('paper-'), content: after('text-') };
}

/** @param rules the rules in use, with the intake screen */
export function programInputOf(record: ClientRecord, rules: RulesInUse): ProgramInput {
  const { client } = record;
  const flags = openFlags(flagInputOf(record), rules.redFlagTable);
  const occasions = occasionsOf(record).filter((each) => !each.probe);
  const read = occasions.filter((each) => each.legibility !== null);
  const last = occasions.at(-1)?.sample;
  const lastRead = read.at(-1);
  const lines = lastRead?.legibility?.readings[0]?.lineAccuracies;
  const knownCautions = new Set(rules.vocabulary.cautions.map((each) => each.code));
  const knownKinds = new Set(rules.vocabulary.diagnoses.map((each) => each.code));
  const cautions = client.precautions.flatMap(({ code }) => (code !== null && knownCautions.has(code) ? [code] : []));
  if (last?.conditions.style === 'joined') cautions.push('writes-joined');
  if ((last?.conditions.grip.trim() ?? '') !== '') cautions.push('grip-aid');
  return {
    version: 1,
    hand: client.handNow,
    findings: intakeFindings(record, rules),
    redFlags: [...flags.open.map(({ code }) => code), ...flags.reviewed.map(({ code }) => ({ code, reviewed: true }))],
    cautions: [...new Set(cautions)],
    // A diagnosis in the therapist's own words is a diagnosis too.
    diagnoses: [
      ...new Set(
        client.diagnoses.flatMap(({ kind, text }) =>
          kind !== null && knownKinds.has(kind) ? [kind] : kind !== null || text.trim() !== '' ? ['other'] : [],
        ),
      ),
    ],
    measures: [...(last ? sampleMeasures(record, last, rules) : []), ...readMeasures(read)],
    confusions:
      lastRead?.legibility?.confusions.map(({ intended, read: as, count }) => ({ intended, read: as, count })) ?? [],
    ...(lines && lines.length > 0 ? { lineLegibility: lines } : {}),
    ...(lines && lines.length > 0 && lastRead?.sample.seconds
      ? { minutesALine: Math.min(30, Math.max(0.05, lastRead.sample.seconds / 60 / lines.length)) }
      : {}),
    interests: topicsIn(`${client.interests} ${client.wants}`, rules),
    language: client.language,
    current: standing(record),
  };
}
