/** Everything that happened to one client on one axis: samples, program, pen, medicine, injections, flags, goals. */
import type { ClientRecord } from '../../../db/types/record.ts';

export type TimelineKind = 'visit' | 'sample' | 'program' | 'pen' | 'medicine' | 'flag' | 'goal' | 'trial' | 'missed';

export interface TimelineEvent {
  day: string;
  kind: TimelineKind;
  /** The therapist's own words, or a code: of the visit's kind, the flag, the dose, the task (and `baseline`), the tier. */
  text: string;
  /** The visit to open. */
  visitId: string | null;
}

const changes = <T>(list: readonly T[], value: (one: T) => string): T[] =>
  list.filter((one, i) => value(one) !== '' && (i === 0 || value(one) !== value(list[i - 1]!)));

/** Oldest first; of one day in the order of the kinds as they stand above. */
export function timeline(record: ClientRecord): TimelineEvent[] {
  const days = new Map(record.visits.map((visit) => [visit.id, visit.date]));
  const at = (fact: { visitId: string; at: string }): { day: string; visitId: string } => ({
    day: days.get(fact.visitId) ?? fact.at.slice(0, 10),
    visitId: fact.visitId,
  });
  const samples = [...record.samples].sort((a, b) => a.takenAt.localeCompare(b.takenAt));
  const visits = [...record.visits].sort((a, b) => a.date.localeCompare(b.date));
  const events: TimelineEvent[] = [
    ...visits.map((visit) => ({ day: visit.date, kind: 'visit' as const, text: visit.kind, visitId: visit.id })),
    ...samples.map((sample) => ({
      ...at(sample),
      kind: 'sample' as const,
      text: [sample.task.kind, sample.baseline ? 'baseline' : ''].filter(Boolean).join(', '),
    })),
    ...record.programs
      .filter((program) => program.status === 'approved')
      .map((program) => ({ ...at(program), kind: 'program' as const, text: String(program.tier) })),
    ...changes(samples, (sample) => sample.conditions.pen.trim()).map((sample) => ({
      ...at(sample),
      kind: 'pen' as const,
      text: sample.conditions.pen.trim(),
    })),
    ...changes(samples, (sample) => (sample.conditions.doseState ?? 'none').replace('none', '')).map((sample) => ({
      ...at(sample),
      kind: 'medicine' as const,
      text: sample.conditions.doseState ?? '',
    })),
    ...record.redFlags
      .filter((flag) => flag.present)
      .map((flag) => ({ ...at(flag), kind: 'flag' as const, text: flag.flag })),
    ...record.goals.map((goal) => ({ day: goal.setOn, kind: 'goal' as const, text: goal.output, visitId: null })),
    ...record.trials.map((trial) => ({
      ...at(trial),
      kind: 'trial' as const,
      text: trial.options.map((option) => option.name).join(' / '),
    })),
    ...(record.client.care?.missedVisits ?? []).map((one) => ({
      day: one.on,
      kind: 'missed' as const,
      text: one.reason,
      visitId: null,
    })),
  ];
  const order: readonly TimelineKind[] = [
    'visit',
    'flag',
    'medicine',
    'sample',
    'pen',
    'trial',
    'program',
    'goal',
    'missed',
  ];
  return events.sort((a, b) => a.day.localeCompare(b.day) || order.indexOf(a.kind) - order.indexOf(b.kind));
}
