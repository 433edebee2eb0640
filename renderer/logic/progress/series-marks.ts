import type { ClientRecord } from '../../../db/types/record.ts';
import { conditionDifferences } from '../record/condition-changes.ts';
import type { Limits } from '../rules/limits.ts';
import type { Told } from '../texts/screens/en/screens-en.ts';
import { type Occasion } from '../record/occasions.ts';

/** Something that happened on a day and may explain a change. */
export interface SeriesMark {
  at: number;
  day: string;
  kind: 'program' | 'conditions' | 'medicine';
  label: string;
}

export type Facts = Pick<ClientRecord, 'visits' | 'samples' | 'readings' | 'programs' | 'practiceLogs' | 'goals'>;

export function programMarks(approved: Facts['programs'], words: Told['course']): SeriesMark[] {
  return approved.map((program, i) => ({
    at: Date.parse(program.approvedAt!),
    day: program.approvedAt!.slice(0, 10),
    kind: 'program',
    label: i === 0 ? words.programStarts(program.tier) : words.programChanged(program.tier),
  }));
}

/** Marks where medicine state or other conditions changed against the sample before. */
export function circumstanceMarks(
  occasions: readonly Occasion[],
  limits: Limits,
  told: Pick<Told, 'course' | 'conditions'>,
): SeriesMark[] {
  const marks: SeriesMark[] = [];
  const samples = occasions.filter((o) => !o.probe);
  samples.forEach((o, i) => {
    const before = samples[i - 1];
    if (!before) return;
    const differences = conditionDifferences(before.sample, o.sample, limits, told.conditions);
    const medicine = differences.filter((d) => d.code === 'medicine' || d.code === 'sinceDose');
    const others = differences.filter((d) => !medicine.includes(d) && d.code !== 'task');
    const mark = (kind: SeriesMark['kind'], label: string) => marks.push({ at: instantOf(o), day: o.day, kind, label });
    if (medicine.length) mark('medicine', medicine.map((d) => d.now).join(', '));
    if (others.length) mark('conditions', told.course.otherConditions(others.map((d) => d.name).join(', ')));
  });
  return marks;
}

export const noon = (day: string): number => Date.parse(`${day}T12:00:00Z`);
export const instantOf = (o: Occasion): number =>
  o.sample.takenAt.slice(0, 10) === o.day ? Date.parse(o.sample.takenAt) : noon(o.day);
