import type { ClientRecord } from '../../../db/types/record.ts';
import { CHANGE_VERSION, familyOf, type ChangeExamination, type ChangeLimits, type Visit } from '../../change/index.ts';
import { toldEnglish } from '../texts/screens/told-english.ts';
import { readersText } from '../texts/occasion-words.ts';
import { type Occasion } from '../record/occasions.ts';
import { verdictValue } from './verdict-value.ts';
import { wilson } from '../../statistics/wilson.ts';
import { blank } from './exchange-value.ts';
import type { ExchangeValue } from './exchange-value.ts';

/** The verdict of today over all visits, at the day of the latest one; named after the client, whose it is. */
export function fromVerdict(
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

export function fromOccasion(occasion: Occasion, change: ChangeExamination): ExchangeValue[] {
  const { sample, day, legibility } = occasion;
  const at = { ...blank, factId: sample.id, visitId: sample.visitId, day, at: sample.takenAt, sample };
  const values: ExchangeValue[] = [];
  const add = (code: string, value: number | null, unit: string, more: Partial<ExchangeValue> = {}) => {
    if (value !== null && Number.isFinite(value)) values.push({ ...at, code, value, unit, ...more });
  };
  if (legibility) {
    const { low, high } = wilson(legibility.wordsRight, legibility.words);
    const who = readersText(legibility, toldEnglish.course);
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
