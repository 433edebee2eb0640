/**
 * What fits a day: at most so many items and minutes; at least half of the minutes writing whenever a pen can be held;
 * a short warm-up. Lower tier first, then the worse finding; what has no room is named, never lost.
 */
import type { ProgramLine } from '../../../../db/types/program.ts';
import { dayMinutes, withMinutes } from './program-line.ts';

export interface Candidate {
  line: ProgramLine;
  /** The day's main writing. */
  main: boolean;
  /** Lowest grade among the findings behind it, 1 for a goal of the client's; 3 where none. */
  worst: number;
  /** Place of its rule in the table. */
  order: number;
}

export interface Limits {
  items: number;
  minutes: number;
  /** Share of the minutes that writing takes at least. */
  writingShare: number;
  /** Share of the minutes that a warm-up takes at most. */
  warmUpShare: number;
}

export interface Fitted {
  kept: Candidate[];
  leftOut: { line: ProgramLine; because: string }[];
}

const byNeed = (a: Candidate, b: Candidate): number =>
  Number(b.main) - Number(a.main) || a.line.tier - b.line.tier || a.worst - b.worst || a.order - b.order;

/** The line with no more than `room` minutes a day, or null when that leaves too little. */
function within(candidate: Candidate, room: number, least: number): Candidate | null {
  const { dose } = candidate.line;
  if (dayMinutes(dose) <= room) return candidate;
  const times = dose.timesPerDay > 1 && Math.floor(room / dose.timesPerDay) >= least ? dose.timesPerDay : 1;
  const minutes = Math.min(dose.minutes, Math.floor(room / times));
  if (minutes < least) return null;
  return { ...candidate, line: { ...candidate.line, dose: withMinutes(dose, minutes, times) } };
}

const total = (list: readonly Candidate[]): number => list.reduce((sum, each) => sum + dayMinutes(each.line.dose), 0);

const noTime = 'No room: the minutes of the day are used.';
const noPlace = 'No room: the day has its items.';

function take(list: readonly Candidate[], room: number, least: number, fitted: Fitted): Candidate[] {
  const kept: Candidate[] = [];
  for (const candidate of list) {
    const fits = within(candidate, room - total(kept), least);
    if (fits) kept.push(fits);
    else fitted.leftOut.push({ line: candidate.line, because: noTime });
  }
  return kept;
}

/** @param penHeld whether writing has to take its share */
export function fitDay(candidates: readonly Candidate[], penHeld: boolean, limits: Limits): Fitted {
  const fitted: Fitted = { kept: [], leftOut: [] };
  const sorted = [...candidates].sort(byNeed);
  const cut = (list: Candidate[], most: number): Candidate[] => {
    list.slice(most).forEach((each) => fitted.leftOut.push({ line: each.line, because: noPlace }));
    return list.slice(0, most);
  };
  const writing = sorted.filter((each) => each.line.kind === 'writing');
  const warmUps = sorted.filter((each) => each.line.kind === 'warm-up');
  const exercises = sorted.filter((each) => each.line.kind === 'exercise');
  if (!penHeld) {
    const others = cut([...warmUps.slice(0, 2), ...exercises, ...warmUps.slice(2)], limits.items);
    fitted.kept = take(others, limits.minutes, 1, fitted);
    return fitted;
  }
  if (writing.length === 0) {
    [...warmUps, ...exercises].forEach((each) =>
      fitted.leftOut.push({ line: each.line, because: 'A pen can be held, but no writing may be given now.' }),
    );
    return fitted;
  }
  // Writing first and most: three lines of it, where there are as many, before the rest takes its places.
  const others = Math.min(warmUps.length > 0 ? 2 : 1, warmUps.length + exercises.length);
  const places = Math.min(writing.length, limits.items - others);
  const free = limits.items - places;
  const warmUp = cut(warmUps, Math.min(1, free));
  const exercise = cut(exercises, free - warmUp.length);
  const room = exercise.length + warmUp.length > 0 ? Math.floor(limits.minutes * 0.8) : limits.minutes;
  const kept = take(cut(writing, places), room, 2, fitted);
  const share = Math.floor((total(kept) * (1 - limits.writingShare)) / limits.writingShare);
  const rest = Math.min(share, limits.minutes - total(kept));
  const moves = take(exercise, rest - warmUp.length, 2, fitted);
  const warmRoom = Math.floor((limits.warmUpShare / (1 - limits.warmUpShare)) * (total(kept) + total(moves)));
  const warm = take(warmUp, Math.min(warmRoom, rest - total(moves)), 1, fitted);
  fitted.kept = [...warm, ...moves, ...kept];
  return fitted;
}
