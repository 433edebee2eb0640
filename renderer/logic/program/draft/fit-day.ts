/**
 * What fits a day: the turns of part c shared among the lines of writing, the client's own occasions first; drills as
 * far as the dose allows; the opening of a tight hand before it. Lower tier first, then the worse finding; what has no
 * room is named, never lost.
 */
import type { Dose, ProgramLine } from '../../../../db/types/program.ts';
import type { DayDose } from './day-dose.ts';
import { dayMinutes, withMinutes } from './program-line.ts';
import { toldEnglish } from '../../texts/screens/told-english.ts';

export interface Candidate {
  line: ProgramLine;
  /** The day's main writing. */
  main: boolean;
  /** Belongs to the slow opening of the hand. */
  opening: boolean;
  /** Lowest grade among the findings behind it, 1 for a goal of the client's; 3 where none. */
  worst: number;
  /** Place of its rule in the table. */
  order: number;
}

export interface Limits {
  /** Share of the minutes that writing takes at least. */
  writingShare: number;
  /** Share of the minutes that warm-ups take at most. */
  warmUpShare: number;
}

export interface Fitted {
  kept: Candidate[];
  leftOut: { line: ProgramLine; because: string }[];
}

const byNeed = (a: Candidate, b: Candidate): number =>
  Number(b.main) - Number(a.main) || a.line.tier - b.line.tier || a.worst - b.worst || a.order - b.order;

const noTime = toldEnglish.draft.noTime;
const noPlace = toldEnglish.draft.noPlace;
const tooTired = toldEnglish.draft.tooTired;

const total = (list: readonly Candidate[]): number => list.reduce((sum, each) => sum + dayMinutes(each.line.dose), 0);
const withDose = (candidate: Candidate, dose: Dose): Candidate => ({ ...candidate, line: { ...candidate.line, dose } });

/** The line with no more than `room` minutes a day, or null when that leaves less than `least`. */
function within(candidate: Candidate, room: number, least: number): Candidate | null {
  const { dose } = candidate.line;
  if (dayMinutes(dose) <= room) return candidate;
  const minutes = Math.min(dose.minutes ?? 0, Math.floor(room));
  return minutes < least ? null : withDose(candidate, withMinutes(dose, minutes, 1));
}

/** Turns of each line of writing: one each, then the main ones more, up to what their own dose asks for. */
function shareTurns(list: readonly Candidate[], day: DayDose, room: number): number[] {
  const most = Math.min(day.turns, Math.floor(room / day.turn));
  const turns = list.map(() => 1);
  const wanted = list.map((each) =>
    each.main ? day.turns : Math.max(1, Math.round(dayMinutes(each.line.dose) / day.turn)),
  );
  let left = most - turns.length;
  while (left > 0) {
    const open = turns.map((_, i) => i).filter((i) => (turns[i] ?? 0) < (wanted[i] ?? 0));
    if (open.length === 0) break;
    const next = open.reduce((a, b) => ((turns[b] ?? 0) < (turns[a] ?? 0) ? b : a));
    turns[next] = (turns[next] ?? 0) + 1;
    left -= 1;
  }
  return turns;
}

/** The dose of a line of writing in turns of part c. */
function inTurns(dose: Dose, turns: number, day: DayDose, own: number): Dose {
  const turn = turns === 1 && own > 0 ? Math.min(day.turn, own) : day.turn;
  // One amount for one thing: the lines that belong to the minutes of a turn, and no other count beside them.
  const ownLines = dose.lines && dose.minutes ? Math.max(1, Math.round((dose.lines * turn) / dose.minutes)) : null;
  const counts = dose.lines !== null || (dose.reps !== null && turn * turns < (dose.minutes ?? 0));
  const base = {
    ...dose,
    form: 'bouts' as const,
    reps: null,
    lines: day.lines ?? ownLines,
    restMinutes: day.rest,
    how: day.spread ? 'until-fresh' : counts ? '' : dose.how,
  };
  return day.spread
    ? { ...base, minutes: turn, timesPerDay: turns, sets: 1 }
    : { ...base, minutes: turn * turns, timesPerDay: 1, sets: turns };
}

function takeDrills(list: readonly Candidate[], room: number, day: DayDose, fitted: Fitted): Candidate[] {
  const kept: Candidate[] = [];
  for (const candidate of list) {
    if (kept.length >= day.drills) {
      fitted.leftOut.push({ line: candidate.line, because: tooTired });
      continue;
    }
    const capped = within(candidate, day.drillMinutes, 1);
    const fits = capped && within(capped, room - total(kept), 1);
    if (fits) kept.push(fits);
    else fitted.leftOut.push({ line: candidate.line, because: noTime });
  }
  return kept;
}

/** Lines over a number of places are named as left out. */
function cut(list: readonly Candidate[], most: number, fitted: Fitted): Candidate[] {
  const places = Math.max(0, most);
  list.slice(places).forEach((each) => fitted.leftOut.push({ line: each.line, because: noPlace }));
  return list.slice(0, places);
}

/** The parts of the opening, each with a minute kept for the parts after it. */
function takeOpening(list: readonly Candidate[], room: number, fitted: Fitted): Candidate[] {
  const kept: Candidate[] = [];
  list.forEach((each, i) => {
    const fits = within(each, room - total(kept) - (list.length - i - 1), 1);
    if (fits) kept.push(fits);
    else fitted.leftOut.push({ line: each.line, because: noTime });
  });
  return kept;
}

interface Kinds {
  writing: Candidate[];
  opening: Candidate[];
  warmUps: Candidate[];
  exercises: Candidate[];
}

/** No pen: the opening, then drills as far as the dose allows. */
function withoutPen({ opening, warmUps, exercises }: Kinds, day: DayDose, fitted: Fitted): void {
  const others = [...exercises.slice(0, 1), ...warmUps.slice(0, 1), ...exercises.slice(1), ...warmUps.slice(1)];
  const opened = takeOpening(opening, day.cap, fitted);
  const places = day.items - Math.min(1, opened.length);
  fitted.kept = [...opened, ...takeDrills(cut(others, places, fitted), day.cap - total(opened), day, fitted)];
}

/** Writing first and most; then the opening; one warm-up; drills in what is left. */
function withPen({ writing, opening, warmUps, exercises }: Kinds, day: DayDose, limits: Limits, fitted: Fitted): void {
  // The opening is one item of the day, the lean that belongs to it included.
  const openPlaces = Math.min(1, opening.length);
  const reserved = Math.min(2, openPlaces + Math.min(day.drills, warmUps.length + exercises.length));
  const places = Math.min(day.turns, Math.floor(day.cap / day.turn), day.items - reserved);
  const written = cut(writing, Math.max(1, places), fitted);
  const turns = shareTurns(written, day, day.cap);
  const kept = written.map((each, i) =>
    withDose(each, inTurns(each.line.dose, turns[i] ?? 1, day, each.main ? 0 : (each.line.dose.minutes ?? 0))),
  );
  const share = Math.floor((total(kept) * (1 - limits.writingShare)) / limits.writingShare);
  const rest = Math.min(share, day.cap - total(kept));
  const warmShare = limits.warmUpShare / (1 - limits.warmUpShare);
  const opened = takeOpening(opening, Math.min(rest, Math.floor(warmShare * total(kept))), fitted);
  // A single drill of the day is an exercise where there is one: a warm-up is the first to go.
  const oneOnly = day.drills <= 1 && exercises.length > 0;
  const warm = opened.length > 0 || oneOnly ? [] : warmUps.slice(0, 1);
  warmUps
    .filter((each) => !warm.includes(each))
    .forEach((each) => fitted.leftOut.push({ line: each.line, because: day.drills <= 1 ? tooTired : noPlace }));
  const free = day.items - kept.length - Math.min(1, opened.length) - warm.length;
  const drills = { ...day, drills: Math.max(0, day.drills - warm.length) };
  const moves = takeDrills(cut(exercises, free, fitted), rest - total(opened) - warm.length, drills, fitted);
  const used = total(kept) + total(moves);
  const warmRoom = Math.min(Math.floor(warmShare * used) - total(opened), rest - total(moves) - total(opened));
  fitted.kept = [...opened, ...takeDrills(warm, warmRoom, day, fitted), ...moves, ...kept];
}

/** @param penHeld whether writing has to take its share */
export function fitDay(candidates: readonly Candidate[], penHeld: boolean, day: DayDose, limits: Limits): Fitted {
  const fitted: Fitted = { kept: [], leftOut: [] };
  const sorted = [...candidates].sort(byNeed);
  const kinds: Kinds = {
    writing: sorted.filter((each) => each.line.kind === 'writing'),
    opening: sorted.filter((each) => each.opening),
    warmUps: sorted.filter((each) => each.line.kind === 'warm-up' && !each.opening),
    exercises: sorted.filter((each) => each.line.kind === 'exercise' && !each.opening),
  };
  if (!penHeld) withoutPen(kinds, day, fitted);
  else if (kinds.writing.length > 0) withPen(kinds, day, limits, fitted);
  else {
    const because = toldEnglish.draft.noWriting;
    fitted.leftOut.push(...sorted.map(({ line }) => ({ line, because })));
  }
  return fitted;
}
