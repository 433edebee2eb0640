/** The facts of a client's record that can raise a red flag, gathered for `openFlags`. */
import type { ClientRecord } from '../../../db/types/record.ts';
import { changeOf, type ChangeFacts } from '../record/change-samples.ts';
import { occasionsOf } from '../record/occasions.ts';
import type { Decimals } from '../texts/decimals.ts';
import type { Told } from '../texts/screens/en/screens-en.ts';
import type { Limits } from '../rules/limits.ts';
import { logPainRise } from '../record/log-pain.ts';
import type { FlagInput, Sign, SteadyLoss } from './flags.ts';

type Facts = ChangeFacts & Pick<ClientRecord, 'redFlags' | 'intakeAnswers' | 'practiceLogs'>;

/** Steady loss where the model flags it; a loss that only asks for a repeat raises nothing here. */
function steadyLossOf(record: ChangeFacts, limits: Limits, words: Told['flags']): SteadyLoss | null {
  const { answer, now } = changeOf(record, limits);
  const last = now.at(-1);
  if (answer.loss !== 'flag' || !last || answer.perWords === null) return null;
  const inWords = (level: number): number => Math.round((level * answer.perWords!) / 100);
  const taken = occasionsOf(record).findLast(({ day, legibility }) => legibility !== null && day === last.day);
  return {
    at: taken?.sample.takenAt ?? last.day,
    because: words.fewerWords(inWords(answer.before!), answer.perWords, inWords(answer.now!)),
  };
}

/** Day of the latest review of a pain that rose: the log is looked at anew from there. '' = never reviewed. */
export const painReviewedOn = (redFlags: ClientRecord['redFlags']): string =>
  redFlags.reduce((day, { flag, review }) => (flag === 'pain-high' && review && review.on > day ? review.on : day), '');

/** Pain that rose in the last sample, or in the practice log. */
function painSigns(record: Facts, limits: Limits, words: Told['flags'], decimals: Decimals): Sign[] {
  const last = occasionsOf(record).at(-1)?.sample;
  const { painBefore: before = null, painAfter: after = null } = last ?? {};
  const inSample = last && before !== null && after !== null && after - before >= limits.painRiseFlag;
  const rise = logPainRise(record.practiceLogs, painReviewedOn(record.redFlags));
  const latest = [...record.practiceLogs].sort((a, b) => a.date.localeCompare(b.date)).at(-1);
  return [
    ...(inSample
      ? [
          {
            flag: 'pain-high',
            at: last.takenAt,
            source: `sample/${last.id}`,
            because: words.painRoseInSample(before, after),
          },
        ]
      : []),
    ...(rise !== null && latest && rise >= limits.painRiseFlag
      ? [
          {
            flag: 'pain-high',
            at: latest.at,
            source: `practiceLog/${latest.id}`,
            because: words.painRoseInLog(decimals(rise, 1, 0)),
          },
        ]
      : []),
  ];
}

/**
 * What `openFlags` needs from a whole record: approving a program, drafting one and the screen all pass through here.
 * @param visitId where given, every question must have been asked at that visit
 */
export const flagInputOf = (
  record: Facts,
  limits: Limits,
  visitId: string | undefined,
  words: Told['flags'],
  decimals: Decimals,
): FlagInput => ({
  redFlags: record.redFlags,
  intakeAnswers: record.intakeAnswers,
  loss: steadyLossOf(record, limits, words),
  signs: painSigns(record, limits, words, decimals),
  ...(visitId === undefined ? {} : { visitId }),
});
