import { wilson } from '../../statistics/wilson.ts';

/** Kinds of readers in words. */
export const readerWords = {
  unfamiliar: 'unfamiliar reader',
  family: 'family reader',
  therapist: 'therapist, not blind',
};

const manyReaders = {
  unfamiliar: 'unfamiliar readers',
  family: 'family readers',
  therapist: 'therapists, not blind',
};

/** "unfamiliar reader", "2 therapists, not blind". */
export const readersOf = (reader: keyof typeof readerWords, count: number): string =>
  count === 1 ? readerWords[reader] : `${count} ${manyReaders[reader]}`;

/** Who read a sample: "2 unfamiliar readers". */
export function readersText(legibility: { readers: number; reader: keyof typeof readerWords; blind: boolean }): string {
  const { readers, reader, blind } = legibility;
  const who = readersOf(reader, readers);
  return blind || reader === 'therapist' ? who : `${who}, not blind`;
}

/** Wilson interval of words read, in percent. */
export function percentInterval(right: number, words: number): { low: number; high: number } {
  const interval = wilson(right, words);
  return { low: interval.low * 100, high: interval.high * 100 };
}
