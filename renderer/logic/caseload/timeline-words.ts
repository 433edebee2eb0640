/** The timeline in words, the newest day first. */
import type { VisitKind } from '../../../db/types/visit.ts';
import type { Told } from '../texts/screens/en/screens-en.ts';
import type { TableWords } from '../texts/table-words.ts';
import type { TimelineEvent, TimelineKind } from './timeline.ts';

export interface TimelineDay {
  day: string;
  /** The visit of that day to open; null = none. */
  visitId: string | null;
  events: { kind: TimelineKind; words: string }[];
}

interface Names {
  visits: Readonly<Record<VisitKind, string>>;
  /** Titles of red flags by code. */
  flags: ReadonlyMap<string, string>;
  client: Told['client'];
  /** A text of the rule table in the shown language. */
  inTable: TableWords;
}

function wordsOf({ kind, text }: TimelineEvent, names: Names): string {
  if (kind === 'visit') return names.visits[text as VisitKind] ?? text;
  if (kind === 'flag') return names.flags.get(text) ?? text;
  if (kind === 'medicine') return names.client.dose[text as keyof typeof names.client.dose] ?? text;
  if (kind === 'program') return names.client.approvedTier(text);
  if (kind === 'goal') return names.inTable(text);
  if (kind !== 'sample') return text;
  const [task = '', ...more] = text.split(', ');
  const { tasks, baseline } = names.client;
  return [tasks[task as keyof typeof tasks] ?? task, ...more.map(() => baseline)].join(', ');
}

/** @param events oldest first, as `timeline` gives them */
export function timelineDays(events: readonly TimelineEvent[], names: Names): TimelineDay[] {
  const days = new Map<string, TimelineDay>();
  for (const event of events) {
    const known = days.get(event.day) ?? { day: event.day, visitId: null, events: [] };
    known.visitId ??= event.visitId;
    known.events.push({ kind: event.kind, words: wordsOf(event, names) });
    days.set(event.day, known);
  }
  return [...days.values()].reverse();
}
