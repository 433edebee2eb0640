import type { Limits } from '../rules/limits.ts';
import { wilson } from '../../statistics/wilson.ts';
import type { Step } from './align.ts';

/** How often one letter was read as another. '' as `read`: left out; '' as `intended`: added; '?' : unreadable. */
export interface Confusion {
  intended: string;
  read: string;
  count: number;
}

/** Letter steps that went wrong, counted, most frequent first, then by letter. Spaces are not letters. */
export function confusionsOf(steps: readonly Step<string>[]): Confusion[] {
  const single = steps
    .filter((step) => step.kind !== 'match')
    .map((step) => ({ intended: letter(step.intended), read: letter(step.read), count: 1 }))
    .filter((confusion) => confusion.intended !== confusion.read);
  return mergeConfusions([single]);
}

/** Adds up confusion tables of several lines or readers. */
export function mergeConfusions(tables: readonly (readonly Confusion[])[]): Confusion[] {
  const counts = new Map<string, Confusion>();
  for (const { intended, read, count } of tables.flat()) {
    const key = `${intended}\u0000${read}`;
    const known = counts.get(key);
    if (known) known.count += count;
    else counts.set(key, { intended, read, count });
  }
  const order = (a: string, b: string) => (a < b ? -1 : a > b ? 1 : 0);
  return [...counts.values()].sort(
    (a, b) => b.count - a.count || order(a.intended, b.intended) || order(a.read, b.read),
  );
}

/** One row of the table of confused letters. Shares are 0 to 1. */
interface ConfusionRow extends Confusion {
  /** How often the letter was written, over all readers; null for letters that were added. */
  of: number | null;
  low: number | null;
  high: number | null;
}

export interface ConfusionTable {
  rows: ConfusionRow[];
  /** Confusions of letters written too seldom to be listed. */
  tooSeldom: number;
}

/**
 * Confused letters with how often each was written, and the Wilson interval of the share.
 * @param intended the intended words of every reading, as they were compared
 * @param least letters written less often are counted, not listed (`limitsOf`): one slip of two says nothing
 */
export function confusionTable(
  confusions: readonly Confusion[],
  intended: readonly string[],
  { exposuresLeast }: Pick<Limits, 'exposuresLeast'>,
): ConfusionTable {
  const written = new Map<string, number>();
  for (const character of intended.join('')) written.set(character, (written.get(character) ?? 0) + 1);
  const rows = confusions.map((confusion): ConfusionRow => {
    const of = confusion.intended === '' ? null : Math.max(confusion.count, written.get(confusion.intended) ?? 0);
    const interval = of === null ? { low: null, high: null } : wilson(confusion.count, of);
    return { ...confusion, of, ...interval };
  });
  const listed = rows.filter((row) => row.of === null || row.of >= exposuresLeast);
  return { rows: listed, tooSeldom: rows.length - listed.length };
}

const letter = (character: string | null): string => (character === null || character === ' ' ? '' : character);
