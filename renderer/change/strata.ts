/** Comparable or not: which visits are compared, and which are left out. */
import { CONDITIONS, type ConditionName } from './change-types.ts';
import { keyOf, type Visit } from './visits.ts';

/** Visits under one set of conditions, before and now. */
export interface Comparison {
  /** At least one visit each, oldest first. */
  before: Visit[];
  now: Visit[];
}

export interface StrataResult {
  /** All sets of conditions, oldest first visit first. */
  strata: Visit[][];
  /** What is compared; null when no set of conditions has a before and a now. */
  compared: Comparison | null;
  /** Conditions that are not the same throughout. */
  differs: ConditionName[];
}

/**
 * Before: the first unbroken run of baseline visits and what lies before it; where no visit is marked, or all are,
 * the first one.
 * @param marked whether baseline marks tell anything in this series
 * @returns null when nothing is left for now, or no baseline visit lies under these conditions
 */
function beforeAndNow(visits: readonly Visit[], marked: boolean): Comparison | null {
  let end = 1;
  if (marked) {
    const first = visits.findIndex(({ baseline }) => baseline);
    if (first < 0) return null;
    end = first;
    while (visits[end]?.baseline) end += 1;
  }
  return end < visits.length ? { before: visits.slice(0, end), now: visits.slice(end) } : null;
}

function compareKeys(a: readonly string[], b: readonly string[]): number {
  const at = a.findIndex((value, i) => value !== b[i]);
  return at < 0 ? 0 : a[at]! < b[at]! ? -1 : 1;
}

/** Of what can be compared the one with the latest visit decides; then the one with more visits. */
function decides(a: Comparison, b: Comparison): number {
  const [lastA, lastB] = [a.now.at(-1)!, b.now.at(-1)!];
  if (lastA.day !== lastB.day) return lastA.day < lastB.day ? 1 : -1;
  const size = ({ before, now }: Comparison): number => before.length + now.length;
  return size(b) - size(a) || compareKeys(keyOf(lastB.conditions), keyOf(lastA.conditions));
}

/** @param visits of one series, oldest first */
export function sortStrata(visits: readonly Visit[]): StrataResult {
  const byKey = new Map<string, Visit[]>();
  for (const visit of visits) {
    const key = JSON.stringify(keyOf(visit.conditions));
    byKey.set(key, [...(byKey.get(key) ?? []), visit]);
  }
  const strata = [...byKey.values()];
  const marked = visits.some(({ baseline }) => baseline) && visits.some(({ baseline }) => !baseline);
  const candidates = strata.flatMap((each) => beforeAndNow(each, marked) ?? []);
  return {
    strata,
    compared: candidates.sort(decides)[0] ?? null,
    differs: CONDITIONS.filter((name) => new Set(visits.map(({ conditions }) => conditions[name])).size > 1),
  };
}
