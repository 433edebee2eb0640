import type { Reading } from '../../../db/types/reading.ts';
import type { OwnSpelling } from '../../../db/types/sample.ts';
import { readerAgreement, readersApart, type ReaderAgreement } from '../readback/agreement.ts';
import { mergeConfusions, type Confusion } from '../readback/confusions.ts';
import { addCounts, countReadback, type ReadbackCounts } from '../readback/score.ts';

/** One reading, scored. */
interface ScoredReading {
  reading: Reading;
  wordsRight: number;
  wordsIntended: number;
  /** Null for a reading counted on paper: there is no text to compare. */
  counts: ReadbackCounts | null;
  /** Words right of words intended in each line; lines without words left out. */
  lines: { right: number; words: number }[];
}

/** What all readings of one sample say together. */
export interface SampleLegibility {
  /** Which readers it rests on: strangers where there are any, else family, else the therapist. */
  reader: Reading['reader'];
  readers: number;
  blind: boolean;
  /** Mean of the readers' word accuracies, 0 to 1. */
  accuracy: number;
  /** Words right (mean over readers, rounded) of words intended. */
  wordsRight: number;
  words: number;
  agreement: ReaderAgreement | null;
  /** Largest difference of the two readers on one line, percentage points; null unless exactly two have read. */
  readersApart: number | null;
  confusions: Confusion[];
  readings: ScoredReading[];
}

/** Words right as the percent beside them is made of: 29, or 28.5 where two readers differ. */
export const rightOf = ({ accuracy, words }: Pick<SampleLegibility, 'accuracy' | 'words'>): number => accuracy * words;

/** Scores a stored reading line by line. Null when it holds no words (every intended line was personal or empty). */
function scoreReading(reading: Reading, spellings: readonly OwnSpelling[] = []): ScoredReading | null {
  if (reading.counted) {
    const { right, of } = reading.counted;
    return { reading, wordsRight: Math.min(right, of), wordsIntended: of, counts: null, lines: [] };
  }
  const lines = reading.lines.map((line) => countReadback(line.intended, line.read, spellings));
  const counts = addCounts(lines);
  if (counts.wordsIntended === 0) return null;
  return {
    reading,
    wordsRight: counts.wordsRight,
    wordsIntended: counts.wordsIntended,
    counts,
    lines: lines
      .filter(({ wordsIntended }) => wordsIntended > 0)
      .map(({ wordsRight, wordsIntended }) => ({ right: wordsRight, words: wordsIntended })),
  };
}

/**
 * Legibility of a sample from its readings. Unfamiliar readers come first: family decodes better, and whoever knows
 * the text better still, so kinds of readers are never mixed. Each reader counts once, with the latest reading.
 * @returns null while nobody has read it
 */
export function sampleLegibility(
  readings: readonly Reading[],
  spellings: readonly OwnSpelling[] = [],
): SampleLegibility | null {
  const scored = latestPerReader(readings).flatMap((reading) => scoreReading(reading, spellings) ?? []);
  for (const reader of ['unfamiliar', 'family', 'therapist'] as const) {
    const own = scored.filter((one) => one.reading.reader === reader);
    if (own.length > 0) return combine(reader, own);
  }
  return null;
}

function latestPerReader(readings: readonly Reading[]): Reading[] {
  const latest = new Map<string, Reading>();
  for (const reading of readings) {
    const key = `${reading.reader} ${reading.readerInitials.toLowerCase()}`;
    const known = latest.get(key);
    if (!known || known.readAt < reading.readAt) latest.set(key, reading);
  }
  return [...latest.values()].sort((a, b) => (a.readAt < b.readAt ? -1 : a.readAt > b.readAt ? 1 : 0));
}

function combine(reader: Reading['reader'], own: ScoredReading[]): SampleLegibility {
  const accuracy = own.reduce((sum, one) => sum + one.wordsRight / one.wordsIntended, 0) / own.length;
  const words = own[0]!.wordsIntended;
  const [first, second] = own.filter((one) => one.counts !== null);
  const shares = (one: ScoredReading) => one.lines.map(({ right, words: of }) => right / of);
  const marks = (one: ScoredReading) => one.counts!.marks.map((mark) => mark.right);
  return {
    reader,
    readers: own.length,
    blind: own.every((one) => one.reading.blind),
    accuracy,
    wordsRight: Math.round(accuracy * words),
    words,
    agreement: first && second ? readerAgreement(marks(first), marks(second)) : null,
    readersApart: own.length === 2 && first && second ? readersApart(shares(first), shares(second)) : null,
    confusions: mergeConfusions(own.map((one) => one.counts?.confusions ?? [])),
    readings: own,
  };
}
