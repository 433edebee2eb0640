/** The start level of a goal: written in the language of its day, and told in that of whoever reads it. */
import { rightOf, type SampleLegibility } from '../record/sample-legibility.ts';
import type { Telling } from '../texts/screens/telling.ts';

/** "18 of 24 words read (75 %)". */
export const startLevel = (read: Pick<SampleLegibility, 'accuracy' | 'words'>, { told, decimals }: Telling): string =>
  told.reading.wordsRead(decimals(rightOf(read), 1, 0), read.words, `${Math.round(read.accuracy * 100)} %`);

/** As `startLevel` writes it in each language of the screens. */
const WRITTEN = /^(\d+(?:[.,]\d)?) (?:of|de|von) (\d+) (?:words read|palabras leídas|Wörtern gelesen) \((\d+ %)\)$/;

/** A start level in another language; the therapist's own words stay. */
export function toldStartLevel(text: string, { told, decimals }: Telling): string {
  const [, right = '', words = '', percent = ''] = WRITTEN.exec(text) ?? [];
  return right === ''
    ? text
    : told.reading.wordsRead(decimals(Number(right.replace(',', '.')), 1, 0), Number(words), percent);
}
