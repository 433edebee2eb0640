/** Several readers of the same samples: whose counts are compared, and whether they point the same way. */
import type { ChangeLimits } from './change-limits.ts';
import { phaseLikelihood, phaseOf, type PhaseVisit } from './phase.ts';
import { chanceOfMore, scaleRows } from './posterior/posterior.ts';
import type { Comparison } from './strata.ts';
import type { Visit } from './visits.ts';

/** Readers who read every compared visit, in order of their names. */
export function commonReaders({ before, now }: Comparison): string[] {
  const [first, ...others] = [...before, ...now];
  return [...first!.readers.keys()].filter((reader) => others.every(({ readers }) => readers.has(reader))).sort();
}

/** Whether some visits were read by others, and nobody read all. */
export function readersChange({ before, now }: Comparison, common: readonly string[]): boolean {
  const sets = new Set([...before, ...now].map(({ readers }) => JSON.stringify([...readers.keys()].sort())));
  return sets.size > 1 && common.length === 0;
}

/**
 * A visit as the model counts it: the mean share of its readers, of the words of the longest reading.
 * @param common whose counts alone are taken; empty: all, as a group of their own leniency
 */
export function asCounted(visit: Visit, common: readonly string[]): PhaseVisit {
  const names = common.length > 0 ? common : [...visit.readers.keys()].sort();
  const read = names.map((name) => visit.readers.get(name)!);
  const words = Math.max(...read.map((count) => count.words));
  const share = read.reduce((sum, count) => sum + count.right / count.words, 0) / read.length;
  return {
    right: Math.min(words, share * words),
    words,
    group: common.length > 0 ? null : names.join('+'),
    readers: names.length,
  };
}

/** Whether two who read everything see changes that point opposite ways. */
export function readersDiffer(
  { before, now }: Comparison,
  common: readonly string[],
  prior: readonly number[],
  limits: ChangeLimits,
): boolean {
  if (common.length < 2) return false;
  const more = common.map((reader) => {
    const rows = (visits: readonly Visit[]): PhaseVisit[] => visits.map((visit) => asCounted(visit, [reader]));
    const atFirst = scaleRows(phaseLikelihood(phaseOf(rows(before), 1), limits.readerSpread));
    const later = scaleRows(phaseLikelihood(phaseOf(rows(now), limits.decay), limits.readerSpread));
    // A reader who sees no change at all counts as one who sees no gain.
    return chanceOfMore(atFirst, later, prior) > 0.5 + 1e-9;
  });
  return new Set(more).size > 1;
}
