import { ac1 } from '../progress/ac1.ts';
import { kappa } from '../progress/kappa.ts';

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
export function agreementSentence(agreement: ReaderAgreement): string {
  const same = agreement.both + agreement.neither;
  const verdict =
    agreement.agree >= READERS_AGREE_SHARE
      ? 'The two readers agree'
      : 'The two readers differ; a third reading would help';
  return `${verdict}: the same answer for ${same} of ${agreement.words} words.`;
}

/** Common practice, no source: from this share of words on, two readers are said to agree. */
export const READERS_AGREE_SHARE = 0.8;
/** Common practice, no source: line scores further apart than this (percentage points) ask for a third reader. */
export const THIRD_READER_POINTS = 20;

/** Whether any line was read so differently by two readers that a third should read it. Accuracies are 0 to 1. */
export function needsThirdReader(first: readonly number[], second: readonly number[]): boolean {
  const lines = Math.min(first.length, second.length);
  for (let i = 0; i < lines; i++) {
    if (Math.abs(first[i]! - second[i]!) * 100 > THIRD_READER_POINTS + 1e-9) return true;
  }
  return false;
}
