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

const letter = (character: string | null): string => (character === null || character === ' ' ? '' : character);
