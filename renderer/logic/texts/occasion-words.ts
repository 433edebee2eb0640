import { wilson } from '../../statistics/wilson.ts';
import type { Told } from './screens/en/screens-en.ts';

type ReaderWords = Pick<Told['course'], 'readers' | 'manyReaders' | 'notBlind'>;
type ReaderKind = keyof Told['course']['readers'];

/** "unfamiliar reader", "2 therapists, not blind". */
export const readersOf = (reader: ReaderKind, count: number, words: ReaderWords): string =>
  count === 1 ? words.readers[reader] : words.manyReaders[reader](count);

/** Who read a sample: "2 unfamiliar readers". */
export function readersText(
  legibility: { readers: number; reader: ReaderKind; blind: boolean },
  words: ReaderWords,
): string {
  const { readers, reader, blind } = legibility;
  const who = readersOf(reader, readers, words);
  return blind || reader === 'therapist' ? who : words.notBlind(who);
}

/** Wilson interval of words read, in percent. */
export function percentInterval(right: number, words: number): { low: number; high: number } {
  const interval = wilson(right, words);
  return { low: interval.low * 100, high: interval.high * 100 };
}
