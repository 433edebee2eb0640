import type { ClientRecord } from '../../../db/types/record.ts';
import { conditionDifferences } from '../record/condition-changes.ts';
import type { Limits } from '../rules/limits.ts';
import { type Occasion } from '../record/occasions.ts';

/** Something that happened on a day and may explain a change. */
export interface SeriesMark {
  at: number;
  day: string;
  kind: 'program' | 'conditions' | 'medicine';
  label: string;
}

export type Facts = Pick<ClientRecord, 'visits' | 'samples' | 'readings' | 'programs' | 'practiceLogs' | 'goals'>;

export function programMarks(approved: Facts['programs']): SeriesMark[] {
  return approved.map((program, i) => ({
    at: Date.parse(program.approvedAt!),
    day: program.approvedAt!.slice(0, 10),
    kind: 'program',
    label: i === 0 ? `Program starts, tier ${program.tier}` : `Program changed, tier ${program.tier}`,
  }));
}

/** Marks where medicine state or other conditions changed against the sample before. */
export function circumstanceMarks(occasions: readonly Occasion[], limits: Limits): SeriesMark[] {
  const marks: SeriesMark[] = [];
  const samples = occasions.filter((o) => !o.probe);
  samples.forEach((o, i) => {
    const before = samples[i - 1];
    if (!before) return;
    const differences = conditionDifferences(before.sample, o.sample, limits);
    const medicine = differences.filter((d) => d.name === 'medicine' || d.name === 'time since the dose');
    const others = differences.filter((d) => !medicine.includes(d) && d.name !== 'task');
    const mark = (kind: SeriesMark['kind'], label: string) => marks.push({ at: instantOf(o), day: o.day, kind, label });
    if (medicine.length) mark('medicine', medicine.map((d) => d.now).join(', '));
    if (others.length) mark('conditions', `Other ${others.map((d) => d.name).join(', ')}`);
  });
  return marks;
}

export const noon = (day: string): number => Date.parse(`${day}T12:00:00Z`);
export const instantOf = (o: Occasion): number =>
  o.sample.takenAt.slice(0, 10) === o.day ? Date.parse(o.sample.takenAt) : noon(o.day);
