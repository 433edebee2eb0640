import type { Told } from '../texts/screens/en/screens-en.ts';
import { ac1 } from '../../statistics/ac1.ts';
import { kappa } from '../../statistics/kappa.ts';
import type { Limits } from '../rules/limits.ts';

/** How far two readers agree about which words can be read. Shares are 0 to 1. */
export interface ReaderAgreement {
  words: number;
  /** Words that both read, only the first, only the second, neither. */
  both: number;
  onlyFirst: number;
  onlySecond: number;
  neither: number;
  agree: number;
  /** Agreement on the readable and on the unreadable words; null where neither reader named one. */
  agreeReadable: number | null;
  agreeUnreadable: number | null;
  /** Null when both readers put every word in one class. */
  kappa: number | null;
  ac1: number;
}

/**
 * Compares two readers word by word.
 * Kappa collapses when nearly every word can be read, so AC1 and percent agreement stand beside it.
 * @param first,second for each intended word whether the reader read it
 * @returns null without words, or when the two did not read the same words
 * Source: Cohen 1960 (kappa), Gwet 2008 (AC1).
 */
export function readerAgreement(first: readonly boolean[], second: readonly boolean[]): ReaderAgreement | null {
  if (first.length === 0 || first.length !== second.length) return null;
  const count = (a: boolean, b: boolean) => first.filter((right, i) => right === a && second[i] === b).length;
  const both = count(true, true);
  const onlyFirst = count(true, false);
  const onlySecond = count(false, true);
  const neither = count(false, false);
  const table = [
    [both, onlyFirst],
    [onlySecond, neither],
  ];
  const apart = onlyFirst + onlySecond;
  const positive = (same: number) => (same + apart > 0 ? (2 * same) / (2 * same + apart) : null);
  return {
    words: first.length,
    both,
    onlyFirst,
    onlySecond,
    neither,
    agree: (both + neither) / first.length,
    agreeReadable: positive(both),
    agreeUnreadable: positive(neither),
    kappa: kappa(table).kappa,
    ac1: ac1(table).ac1,
  };
}

/** Agreement in a sentence that needs no statistics. */
export function agreementSentence(
  agreement: ReaderAgreement,
  { readersAgreePercent }: Pick<Limits, 'readersAgreePercent'>,
  words: Told['reading'],
): string {
  const same = agreement.both + agreement.neither;
  const said = agreement.agree * 100 >= readersAgreePercent ? words.readersAgree : words.readersDiffer;
  return said(same, agreement.words);
}

/** Largest difference of two readers on one line, percentage points; null without common lines. Accuracies are 0 to 1. */
export function readersApart(first: readonly number[], second: readonly number[]): number | null {
  const lines = Math.min(first.length, second.length);
  if (lines === 0) return null;
  // One decimal: what floating point adds to 0.8 - 0.6 is no difference.
  const apart = first.slice(0, lines).map((value, i) => Math.round(Math.abs(value - second[i]!) * 1000) / 10);
  return Math.max(...apart);
}
