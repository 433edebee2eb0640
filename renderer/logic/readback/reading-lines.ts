import type { Reading } from '../../../db/types/reading.ts';

type ReadLine = Reading['lines'][number];

/**
 * Lines of a sample that a reading does not hold yet, as indices. Equal lines are counted, so that a sentence written
 * twice is read twice. A reading counted on paper leaves nothing open.
 * @param intended intended words of each written line; '' where nothing is to be read
 */
export function openLines(intended: readonly string[], reading: Pick<Reading, 'lines' | 'counted'> | null): number[] {
  if (reading?.counted) return [];
  const read = new Map<string, number>();
  for (const line of reading?.lines ?? []) read.set(line.intended, (read.get(line.intended) ?? 0) + 1);
  return intended.flatMap((text, index) => {
    const left = read.get(text) ?? 0;
    if (left > 0) read.set(text, left - 1);
    return left > 0 || !text.trim() ? [] : [index];
  });
}

/** The lines of a reading with one more, in the order in which they stand on the page. */
export function withLine(
  intended: readonly string[],
  lines: readonly ReadLine[],
  index: number,
  read: string,
  seconds: number | null,
): ReadLine[] {
  const all = [...lines, { intended: intended[index] ?? '', read: read.trim(), seconds }];
  const place = (line: ReadLine) => {
    const at = intended.indexOf(line.intended);
    return at < 0 ? intended.length : at;
  };
  return all.sort((a, b) => place(a) - place(b));
}

/** This reader's latest reading of a sample, finished or not; null before the first line. */
export function readingBy(
  readings: readonly Reading[],
  sampleId: string,
  reader: Reading['reader'],
  initials: string,
): Reading | null {
  const same = (other: string) => other.trim().toLowerCase() === initials.trim().toLowerCase();
  return (
    readings
      .filter((r) => r.sampleId === sampleId && r.reader === reader && same(r.readerInitials))
      .sort((a, b) => (a.readAt < b.readAt ? -1 : 1))
      .at(-1) ?? null
  );
}
