/** Conditions of a sample: carried over, and compared. Unequal conditions are named beside every comparison. */
import type { Conditions, Sample } from '../../db/types/sample.ts';

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
export const asked = ['hand', 'pen', 'paper', 'time', 'doseState', 'cue'] as const;

export const conditionNames: Record<keyof Conditions, string> = {
  hand: 'hand',
  pen: 'pen',
  paper: 'paper',
  time: 'time of day',
  doseState: 'medicine state',
  cue: 'cue',
  minutesSinceDose: 'minutes since the dose',
  surfaceAngleDeg: 'slope of the surface',
  seatMm: 'seat height',
  tableMm: 'table height',
  armSupport: 'arm support',
  grip: 'pen grip',
  glasses: 'glasses',
  instruction: 'instruction',
  style: 'style',
};

/** Conditions for a new sample: those of the last one, except clock time and minutes since the dose. */
export function carriedOver(samples: readonly Sample[], time: string | null): Conditions {
  const last = [...samples].sort((a, b) => a.takenAt.localeCompare(b.takenAt)).at(-1);
  return { ...(last?.conditions ?? noConditions), time, minutesSinceDose: null };
}

/** Retest within an hour of the same clock time counts as equal (common practice, no source). */
const sameTimeMinutes = 60;
/** Heights within 10 mm and slopes within 3 degrees count as equal (common practice, no source). */
const sameHeightMm = 10;
const sameSlopeDeg = 3;

const minutes = (time: string) => Number(time.slice(0, 2)) * 60 + Number(time.slice(3));

function differs(name: keyof Conditions, a: Conditions, b: Conditions): boolean {
  const x = a[name];
  const y = b[name];
  if (x === null || y === null || x === '' || y === '') return false;
  if (name === 'time') {
    const apart = Math.abs(minutes(x as string) - minutes(y as string));
    return Math.min(apart, 1440 - apart) > sameTimeMinutes;
  }
  if (name === 'seatMm' || name === 'tableMm') return Math.abs((x as number) - (y as number)) > sameHeightMm;
  if (name === 'surfaceAngleDeg') return Math.abs((x as number) - (y as number)) > sameSlopeDeg;
  if (name === 'minutesSinceDose') return Math.abs((x as number) - (y as number)) > sameTimeMinutes;
  return String(x).trim().toLowerCase() !== String(y).trim().toLowerCase();
}

export interface Comparability {
  /** Names of the conditions that differ. */
  different: string[];
  /** Names of asked conditions that one of the two does not say. */
  unknown: string[];
  sentence: string;
}

/** What makes two samples unequal, in words. */
export function compareConditions(a: Sample, b: Sample): Comparability {
  const names = Object.keys(conditionNames) as (keyof Conditions)[];
  const different = names.filter((n) => differs(n, a.conditions, b.conditions)).map((n) => conditionNames[n]);
  if (a.task.kind !== b.task.kind) different.unshift('task');
  const blank = (c: Conditions, n: keyof Conditions) => c[n] === null || c[n] === '';
  const unknown = asked.filter((n) => blank(a.conditions, n) || blank(b.conditions, n)).map((n) => conditionNames[n]);
  const sentence =
    different.length > 0
      ? `Not the same conditions: ${different.join(', ')}.`
      : unknown.length > 0
        ? `Conditions not fully noted: ${unknown.join(', ')}. Compare with care.`
        : 'Same conditions.';
  return { different, unknown, sentence };
}

/** Distance of the printed lines that the paper's name tells ("ruled 8.7 mm", "squares 5 mm"), mm; null when it tells none. */
export function rulingOf(paper: string): number | null {
  const told = /\b(?:ruled|lined|midline|squares?|squared|grid)\b.*?(\d+(?:[.,]\d+)?)\s*mm/i.exec(paper);
  const mm = told ? Number(told[1]!.replace(',', '.')) : NaN;
  return mm >= 3 && mm <= 30 ? mm : null;
}
