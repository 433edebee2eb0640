import type { ClientRecord } from '../../../db/types/record.ts';
import type { Reading } from '../../../db/types/reading.ts';
import type { Task } from '../../../db/types/sample.ts';
import type { Limits } from '../rules/limits.ts';
import { minimalChange, type MinimalChange } from './minimal-change.ts';
import { occasionsOf, type Occasion } from '../record/occasions.ts';

/** Tasks whose legibility may be compared: copying, own words, digits. */
export type TaskFamily = 'copy' | 'own' | 'digits';

/** Two samples of one unchanged hand, percent of words read. Nothing in it says whose. */
export interface RepeatPair {
  task: TaskFamily;
  reader: Reading['reader'];
  first: number;
  second: number;
}

/** Null for tasks that are never scored or are charted apart. */
export function taskFamily(kind: Task['kind']): TaskFamily | null {
  if (kind === 'pangram' || kind === 'sentences' || kind === 'date-line') return 'copy';
  if (kind === 'free' || kind === 'goal-output') return 'own';
  return kind === 'digits' ? 'digits' : null;
}

type Facts = Pick<ClientRecord, 'visits' | 'samples' | 'readings' | 'programs'>;

/**
 * Repeat pairs of one client: neighbouring baseline samples within some days, of the same family of tasks, read by
 * the same kind of reader, with the same hand and medicine state, before any program was approved. Each sample
 * belongs to one pair at most.
 */
export function repeatPairs(record: Facts, { repeatDays }: Pick<Limits, 'repeatDays'>): RepeatPair[] {
  const started = record.programs.flatMap((p) => p.approvedAt?.slice(0, 10) ?? []).sort()[0];
  const groups = new Map<string, Occasion[]>();
  for (const o of occasionsOf(record)) {
    const task = taskFamily(o.sample.task.kind);
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
      if ((Date.parse(second.day) - Date.parse(first.day)) / 86_400_000 > repeatDays) continue;
      pairs.push({
        task: taskFamily(first.sample.task.kind)!,
        reader: first.legibility!.reader,
        first: first.legibility!.accuracy * 100,
        second: second.legibility!.accuracy * 100,
      });
      i++;
    }
  }
  return pairs;
}

/**
 * Minimal detectable change for what this client's latest read sample is: pairs of the same family of tasks and the
 * same kind of reader only. Percentage points.
 * @returns null when nothing was read, or with fewer than two such pairs
 */
export function mdcFor(
  occasions: readonly Occasion[],
  pairs: readonly RepeatPair[],
  limits: Pick<Limits, 'pairsSettled'>,
): MinimalChange | null {
  const last = occasions.findLast((o) => o.legibility && taskFamily(o.sample.task.kind) !== null);
  if (!last) return null;
  const task = taskFamily(last.sample.task.kind);
  const alike = pairs.filter((pair) => pair.task === task && pair.reader === last.legibility!.reader);
  return minimalChange(
    alike.map((pair) => [pair.first, pair.second] as const),
    limits,
  );
}
