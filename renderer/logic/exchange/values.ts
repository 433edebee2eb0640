/** Everything of a client that is a number, as one list: what the CSV writes row by row and FHIR as observations. */
import type { RulesInUse } from '../../../db/types/rules-in-use.ts';
import type { ClientRecord } from '../../../db/types/record.ts';
import type { Sample } from '../../../db/types/sample.ts';
import { CHANGE_VERSION, familyOf, type ChangeExamination, type ChangeLimits, type Visit } from '../../change/index.ts';
import { changeOf } from '../record/change-samples.ts';
import { limitsOf } from '../rules/limits.ts';
import { inkValues } from '../record/ink-values.ts';
import { sampleValues } from '../record/measure-values.ts';
import { inkTaskNames, surfaceNames } from '../sample/ink-sentence.ts';
import { readersText } from '../texts/occasion-words.ts';
import { occasionsOf, type Occasion } from '../record/occasions.ts';
import { verdictValue } from './verdict-value.ts';
import { wilson } from '../../statistics/wilson.ts';

/** One value, with what stands behind it. */
export interface ExchangeValue {
  /** Id of the fact it was read or computed from; with `code` it names the value. */
  factId: string;
  visitId: string | null;
  /** Calendar day, YYYY-MM-DD. */
  day: string;
  /** Instant, ISO 8601; null where only the day is known. */
  at: string | null;
  sample: Sample | null;
  code: string;
  /** Null for a verdict that compares nothing: its words stand in `about`. */
  value: number | null;
  unit: string;
  n: number | null;
  /** 95 % interval, in the unit. */
  low: number | null;
  high: number | null;
  /** Who read or rated. */
  who: string;
  method: string;
  version: string;
  corrected: boolean;
  /** Item, side or goal that a grade or level belongs to; the sentences of a verdict; of pen recordings task and surface. */
  about: string;
  /** What a pen recording was made with; '' for everything else. */
  device: string;
}

type Facts = Pick<
  ClientRecord,
  | 'visits'
  | 'samples'
  | 'readings'
  | 'pageMeasurements'
  | 'inkRecordings'
  | 'samplePages'
  | 'intakeAnswers'
  | 'practiceLogs'
  | 'programs'
  | 'goals'
  | 'goalRatings'
>;

const blank = {
  n: null,
  low: null,
  high: null,
  who: '',
  method: '',
  version: '',
  corrected: false,
  about: '',
  device: '',
};

/** All values of a record, oldest first. Signatures and personal lines are left out, as on every page. */
export function exchangeValues(
  record: Facts,
  rules: Pick<RulesInUse, 'intake' | 'thresholds' | 'repeatPairs'>,
): ExchangeValue[] {
  const dayOf = new Map(record.visits.map((visit) => [visit.id, visit.date]));
  const limits = limitsOf(rules);
  const change = changeOf(record, limits);
  const values = [
    ...occasionsOf(record).flatMap((occasion) => fromOccasion(occasion, change)),
    ...sampleValues(record)
      .filter(({ sample }) => sample.task.kind !== 'personal')
      .map((m): ExchangeValue => ({
        ...blank,
        factId: m.sample.id,
        visitId: m.sample.visitId,
        day: m.day,
        at: m.sample.takenAt,
        sample: m.sample,
        code: m.code,
        value: m.value,
        unit: m.unit,
        n: m.n,
        low: m.low,
        high: m.high,
        method: m.method,
        version: m.version,
        corrected: m.corrected,
        who: m.source === 'ruler' ? 'ruler' : 'page',
      })),
    ...fromInk(record),
    ...fromVerdict(record, change, limits.change),
    ...fromScreen(record, rules, dayOf),
    ...fromPractice(record),
    ...fromGoals(record, dayOf),
  ];
  return values.sort((a, b) => (a.day < b.day ? -1 : a.day > b.day ? 1 : 0));
}

/** Of pen recordings: codes of their own, so that nobody lays them beside those of paper. */
const fromInk = (record: Facts): ExchangeValue[] =>
  inkValues(record)
    .filter(({ sample }) => sample.task.kind !== 'personal')
    .map(({ recording, sample, day, code, value, unit, n, low, high, method, reliable, ofPage }) => ({
      ...blank,
      factId: recording.id,
      visitId: recording.visitId,
      day,
      at: recording.startedAt,
      sample,
      code: `ink-${code}`,
      value,
      unit,
      n,
      low,
      high,
      method: ofPage ? 'page drawn from pen motion' : 'pen motion',
      version: method,
      who: 'pen',
      about: [
        inkTaskNames[recording.task],
        `${recording.hand} hand`,
        surfaceNames[recording.surface],
        recording.cues ? 'with help: practice, not a retest' : '',
        reliable ? '' : 'not reliable on this device',
      ]
        .filter((each) => each !== '')
        .join('; '),
      device: [recording.device.trim(), surfaceNames[recording.surface]].filter((each) => each !== '').join(', '),
    }));

/** The verdict of today over all visits, at the day of the latest one; named after the client, whose it is. */
function fromVerdict(
  { samples }: Pick<ClientRecord, 'samples'>,
  change: ChangeExamination,
  limits: ChangeLimits,
): ExchangeValue[] {
  const verdict = verdictValue(change, limits);
  const clientId = samples[0]?.clientId;
  if (!verdict || clientId === undefined) return [];
  const { words, ...value } = verdict;
  return [
    {
      ...blank,
      ...value,
      factId: clientId,
      visitId: null,
      at: null,
      sample: null,
      code: 'change',
      unit: 'points',
      about: words,
    },
  ];
}

/** Whether a sample counts in the verdict about change, as a clause; '' where nothing is compared with it. */
function comparedWords({ sample, day }: Occasion, { before, now, leftOut }: ChangeExamination): string {
  const { cue, doseState: dose, hand } = sample.conditions;
  const isOf = (visit: Visit): boolean =>
    visit.day === day &&
    visit.conditions.task === familyOf(sample.task.kind) &&
    Object.entries({ cue, dose, hand }).every(
      ([name, noted]) => !noted || visit.conditions[name as 'cue' | 'dose' | 'hand'] === noted,
    );
  if ([...before, ...now].some(isOf)) return `; compared in the verdict about change (${CHANGE_VERSION})`;
  return leftOut.flat().some(isOf) ? `; left out of the verdict about change: not comparable (${CHANGE_VERSION})` : '';
}

function fromOccasion(occasion: Occasion, change: ChangeExamination): ExchangeValue[] {
  const { sample, day, legibility } = occasion;
  const at = { ...blank, factId: sample.id, visitId: sample.visitId, day, at: sample.takenAt, sample };
  const values: ExchangeValue[] = [];
  const add = (code: string, value: number | null, unit: string, more: Partial<ExchangeValue> = {}) => {
    if (value !== null && Number.isFinite(value)) values.push({ ...at, code, value, unit, ...more });
  };
  if (legibility) {
    const { low, high } = wilson(legibility.wordsRight, legibility.words);
    const who = readersText(legibility);
    const method =
      'words read right of words intended, mean over readers; Wilson interval' + comparedWords(occasion, change);
    add('legibility', legibility.accuracy * 100, '%', {
      n: legibility.words,
      low: low * 100,
      high: high * 100,
      who,
      method,
    });
    add('words-read', legibility.wordsRight, 'count', { n: legibility.words, who });
    if (sample.seconds) add('words-per-minute', (legibility.wordsRight * 60) / sample.seconds, '1/min', { who });
  }
  add('writing-time', sample.seconds, 's');
  add('fatigue-before', sample.fatigueBefore, '0 to 10', { who: 'client' });
  add('fatigue-after', sample.fatigueAfter, '0 to 10', { who: 'client' });
  add('pain-before', sample.painBefore, '0 to 10', { who: 'client' });
  add('pain-after', sample.painAfter, '0 to 10', { who: 'client' });
  return values;
}

function fromScreen(record: Facts, rules: Pick<RulesInUse, 'intake'>, dayOf: Map<string, string>): ExchangeValue[] {
  const title = new Map(rules.intake.items.map((item) => [item.code, item.title]));
  return record.intakeAnswers.flatMap((answer): ExchangeValue[] => {
    if (answer.grade === null) return [];
    const side = answer.side === 'none' ? '' : `, ${answer.side}`;
    return [
      {
        ...blank,
        factId: answer.id,
        visitId: answer.visitId,
        day: dayOf.get(answer.visitId) ?? answer.at.slice(0, 10),
        at: null,
        sample: null,
        code: 'screen-grade',
        value: answer.grade,
        unit: '0 to 3',
        who: answer.by,
        about: `${title.get(answer.item) ?? answer.item}${side}`,
      },
    ];
  });
}

const fromPractice = (record: Facts): ExchangeValue[] =>
  record.practiceLogs.flatMap((log) => {
    const parts: [code: string, value: number | null, unit: string][] = [
      ['practice-minutes', log.minutes, 'min'],
      ['practice-lines', log.lines, 'count'],
      ['practice-fatigue-before', log.fatigueBefore, '0 to 10'],
      ['practice-fatigue-after', log.fatigueAfter, '0 to 10'],
      ['practice-pain', log.pain, '0 to 10'],
      ['practice-breaks', log.breaks, 'count'],
    ];
    return parts.flatMap(([code, value, unit]): ExchangeValue[] =>
      value === null
        ? []
        : [
            {
              ...blank,
              factId: log.id,
              visitId: null,
              day: log.date,
              at: null,
              sample: null,
              code,
              value,
              unit,
              who: 'client, home log',
            },
          ],
    );
  });

function fromGoals(record: Facts, dayOf: Map<string, string>): ExchangeValue[] {
  const output = new Map(record.goals.map((goal) => [goal.id, goal.output]));
  return record.goalRatings.map((rating): ExchangeValue => ({
    ...blank,
    factId: rating.id,
    visitId: rating.visitId,
    day: dayOf.get(rating.visitId) ?? rating.at.slice(0, 10),
    at: null,
    sample: null,
    code: 'goal-level',
    value: rating.level,
    unit: 'level',
    who: rating.by,
    about: output.get(rating.goalId) ?? '',
  }));
}
