/** The facts of a client's record that can raise a red flag, gathered for `openFlags`. */
import type { ClientRecord } from '../../../db/types/record.ts';
import { occasionsOf } from '../record/occasions.ts';
import type { FlagInput, Retest } from './flags.ts';

type Facts = Pick<ClientRecord, 'redFlags' | 'intakeAnswers' | 'visits' | 'samples' | 'readings'>;

/**
 * Smallest change in percentage points between two shares of `words` words that chance in the words alone would seldom
 * make: 1.96 standard errors of a difference of proportions. Words of one page hang together, so it is a little small.
 */
const smallestChange = (share: number, words: number): number => 196 * Math.sqrt((2 * share * (1 - share)) / words);

/** Legibility of the samples by the hand that wrote last, uncued, each read by the same kind of reader; oldest first. */
function retestsOf(record: Facts): Retest[] {
  const read = occasionsOf(record).filter(
    ({ sample, legibility, probe }) =>
      legibility !== null && !probe && sample.conditions.cue !== 'visual' && sample.conditions.cue !== 'verbal',
  );
  const last = read.at(-1);
  if (!last) return [];
  return read
    .filter(
      ({ sample, legibility }) =>
        sample.conditions.hand === last.sample.conditions.hand && legibility?.reader === last.legibility?.reader,
    )
    .map(({ sample, legibility }) => ({
      at: sample.takenAt,
      value: Math.round((legibility?.accuracy ?? 0) * 1000) / 10,
      smallestChange: legibility ? smallestChange(legibility.accuracy, legibility.words) : null,
      explained: false,
    }));
}

/**
 * What `openFlags` needs from a whole record: approving a program, drafting one and the screen all pass through here.
 * @param visitId where given, every question must have been asked at that visit
 */
export const flagInputOf = (record: Facts, visitId?: string): FlagInput => ({
  redFlags: record.redFlags,
  intakeAnswers: record.intakeAnswers,
  retests: retestsOf(record),
  ...(visitId === undefined ? {} : { visitId }),
});
