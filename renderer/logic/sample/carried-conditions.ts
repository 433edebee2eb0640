/** Conditions of a sample: carried over, and what is missing. Differences are named by progress/conditions.ts. */
import type { Conditions, Sample } from '../../../db/types/sample.ts';
import type { Told } from '../texts/screens/en/screens-en.ts';

export const noConditions: Conditions = {
  hand: null,
  pen: '',
  paper: '',
  time: null,
  doseState: null,
  cue: null,
  minutesSinceDose: null,
  surfaceAngleDeg: null,
  seatMm: null,
  tableMm: null,
  armSupport: '',
  grip: '',
  glasses: null,
  instruction: null,
  style: null,
};

/** The six that are asked each time; the others are carried over. */
const asked = ['hand', 'pen', 'paper', 'time', 'doseState', 'cue'] as const;

/** Conditions for a new sample: those of the last one, except clock time and minutes since the dose. */
export function carriedOver(samples: readonly Sample[], time: string | null): Conditions {
  const last = [...samples].sort((a, b) => a.takenAt.localeCompare(b.takenAt)).at(-1);
  return { ...(last?.conditions ?? noConditions), time, minutesSinceDose: null };
}

/** Asked conditions that one of two samples does not say: what is not known cannot be compared. */
export function notNoted(a: Sample, b: Sample, { names }: Told['conditions']): string[] {
  const blank = (c: Conditions, name: keyof Conditions) => c[name] === null || c[name] === '';
  return asked
    .filter((name) => blank(a.conditions, name) || blank(b.conditions, name))
    .map((name) => names[name === 'doseState' ? 'medicine' : name]);
}

/** Distance of the printed lines that the paper's name tells ("ruled 8.7 mm", "squares 5 mm"), mm; null when it tells none. */
export function rulingOf(paper: string): number | null {
  const told = /\b(?:ruled|lined|midline|squares?|squared|grid)\b.*?(\d+(?:[.,]\d+)?)\s*mm/i.exec(paper);
  const mm = told ? Number(told[1]!.replace(',', '.')) : NaN;
  return mm >= 3 && mm <= 30 ? mm : null;
}
