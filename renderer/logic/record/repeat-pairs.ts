import { daysBetween } from '../texts/days.ts';
import type { ClientRecord } from '../../../db/types/record.ts';
import type { Limits } from '../rules/limits.ts';
import { familyOf, type RepeatPair } from '../../change/index.ts';
import { occasionsOf, type Occasion } from './occasions.ts';

type Facts = Pick<ClientRecord, 'visits' | 'samples' | 'readings' | 'programs'>;

/**
 * Repeat pairs of one client: neighbouring baseline samples within some days, of the same family of tasks, read by
 * the same kind of reader, with the same hand and medicine state, before any program was approved. Each sample
 * belongs to one pair at most, and nothing in a pair says whose it is.
 */
export function repeatPairs(record: Facts, { repeatDays }: Pick<Limits, 'repeatDays'>): RepeatPair[] {
  const started = record.programs.flatMap((p) => p.approvedAt?.slice(0, 10) ?? []).sort()[0];
  const groups = new Map<string, Occasion[]>();
  for (const o of occasionsOf(record)) {
    const task = familyOf(o.sample.task.kind);
    if (!o.sample.baseline || o.probe || !o.legibility || task === null) continue;
    if (started !== undefined && o.day > started) continue;
    const { hand, doseState } = o.sample.conditions;
    const key = [task, o.legibility.reader, hand ?? '', doseState ?? ''].join(' ');
    groups.set(key, [...(groups.get(key) ?? []), o]);
  }
  const pairs: RepeatPair[] = [];
  for (const list of groups.values()) {
    for (let i = 0; i + 1 < list.length; i++) {
      const [first, second] = [list[i]!, list[i + 1]!];
      if (daysBetween(first.day, second.day) > repeatDays) continue;
      pairs.push({
        task: familyOf(first.sample.task.kind)!,
        kind: first.legibility!.reader,
        first: countOf(first),
        second: countOf(second),
      });
      i++;
    }
  }
  return pairs;
}

/** Mean of the readers where several have read: a fraction then. */
const countOf = ({ legibility }: Occasion): { right: number; words: number } => ({
  right: legibility!.accuracy * legibility!.words,
  words: legibility!.words,
});
