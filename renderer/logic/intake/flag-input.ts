/** The facts of a client's record that can raise a red flag, gathered for `openFlags`. */
import type { ClientRecord } from '../../../db/types/record.ts';
import { changeOf, type ChangeFacts } from '../record/change-samples.ts';
import { occasionsOf } from '../record/occasions.ts';
import type { Limits } from '../rules/limits.ts';
import type { FlagInput, SteadyLoss } from './flags.ts';

type Facts = ChangeFacts & Pick<ClientRecord, 'redFlags' | 'intakeAnswers'>;

/** Steady loss where the model flags it; a loss that only asks for a repeat raises nothing here. */
function steadyLossOf(record: ChangeFacts, limits: Limits): SteadyLoss | null {
  const { answer, now } = changeOf(record, limits);
  const last = now.at(-1);
  if (answer.loss !== 'flag' || !last || answer.perWords === null) return null;
  const inWords = (level: number): number => Math.round((level * answer.perWords!) / 100);
  const taken = occasionsOf(record).findLast(({ day, legibility }) => legibility !== null && day === last.day);
  return {
    at: taken?.sample.takenAt ?? last.day,
    because:
      `Fewer words than before: about ${inWords(answer.before!)} of ${answer.perWords} at the start, ` +
      `about ${inWords(answer.now!)} now, with no explanation noted.`,
  };
}

/**
 * What `openFlags` needs from a whole record: approving a program, drafting one and the screen all pass through here.
 * @param visitId where given, every question must have been asked at that visit
 */
export const flagInputOf = (record: Facts, limits: Limits, visitId?: string): FlagInput => ({
  redFlags: record.redFlags,
  intakeAnswers: record.intakeAnswers,
  loss: steadyLossOf(record, limits),
  ...(visitId === undefined ? {} : { visitId }),
});
