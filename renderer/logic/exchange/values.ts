/** Everything of a client that is a number, as one list: what the CSV writes row by row and FHIR as observations. */
import type { RulesInUse } from '../../../db/types/rules-in-use.ts';
import type { ClientRecord } from '../../../db/types/record.ts';
import { changeOf } from '../record/change-samples.ts';
import { limitsOf } from '../rules/limits.ts';
import { inkValues } from '../record/ink-values.ts';
import { sampleValues } from '../record/measure-values.ts';
import { toldEnglish } from '../texts/screens/told-english.ts';
import { occasionsOf } from '../record/occasions.ts';
import { blank } from './exchange-value.ts';
import type { ExchangeValue } from './exchange-value.ts';
import { fromVerdict, fromOccasion } from './examination-values.ts';

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
        toldEnglish.pen.tasks[recording.task],
        `${recording.hand} hand`,
        toldEnglish.pen.surfaces[recording.surface],
        recording.cues ? 'with help: practice, not a retest' : '',
        reliable ? '' : 'not reliable on this device',
      ]
        .filter((each) => each !== '')
        .join('; '),
      device: [recording.device.trim(), toldEnglish.pen.surfaces[recording.surface]]
        .filter((each) => each !== '')
        .join(', '),
    }));

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
