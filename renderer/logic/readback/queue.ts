import { millisecondsInDay } from 'date-fns/constants';
import type { Reading } from '../../../db/types/reading.ts';
import type { Limits } from '../rules/limits.ts';
import { meetings, type TextMet } from './exposure.ts';
import { openLines, readingBy } from './reading-lines.ts';

/** A sample that could be read, as the queue needs it. */
export interface QueueSample {
  sampleId: string;
  clientId: string;
  visitId: string;
  /** ISO 8601. */
  takenAt: string;
  /** Shipped text codes; a reader who met the same text lately is not asked again. */
  textCodes: readonly string[];
  /** What was written, a sentence a line. */
  text: string;
  /** Intended words of each written line; '' where the text stays in the picture. */
  lines: readonly string[];
}

/** One line to be read: nothing in it tells the reader whose it is or when it was written. */
export interface QueueLine {
  sampleId: string;
  line: number;
}

export interface ReaderOf {
  reader: Reading['reader'];
  initials: string;
  /** Now, ISO 8601. */
  now: string;
}

/** Who is known by initials. */
const sameReader = (a: string, b: string): boolean => a.trim().toLowerCase() === b.trim().toLowerCase();

/**
 * Lines that this reader may read now, shuffled over clients and dates.
 * Left out: lines this reader has read, lines without intended text, and for strangers and the therapist a text
 * met during the last days. The therapist waits as long after the sample and is labelled not blind.
 * @param met texts that this reader has met in the whole caseload
 * @param random numbers from 0 up to 1, one after the other; the caller keeps them
 */
export function readingQueue(
  samples: readonly QueueSample[],
  readings: readonly Reading[],
  who: ReaderOf,
  met: readonly TextMet[],
  random: () => number,
  { textForgottenDays }: Pick<Limits, 'textForgottenDays'>,
): QueueLine[] {
  const mine = readings.filter((r) => r.reader === who.reader && sameReader(r.readerInitials, who.initials));
  const lately = met.filter(({ at }) => daysBetween(at, who.now) < textForgottenDays);
  const open = samples.filter((sample) => {
    if (who.reader === 'therapist' && daysBetween(sample.takenAt, who.now) < textForgottenDays) return false;
    const begun = mine.some((r) => r.sampleId === sample.sampleId);
    return begun || who.reader === 'family' || meetings(sample, lately).length === 0;
  });
  const lines = open.flatMap((sample) =>
    openLines(sample.lines, readingBy(readings, sample.sampleId, who.reader, who.initials)).map((line) => ({
      sampleId: sample.sampleId,
      line,
    })),
  );
  return shuffled(lines, random);
}

function shuffled<T>(list: readonly T[], random: () => number): T[] {
  const result = [...list];
  for (let i = result.length - 1; i > 0; i--) {
    const j = Math.min(i, Math.floor(random() * (i + 1)));
    [result[i], result[j]] = [result[j]!, result[i]!];
  }
  return result;
}

const daysBetween = (from: string, to: string): number => (Date.parse(to) - Date.parse(from)) / millisecondsInDay;
