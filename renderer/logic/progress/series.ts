import { rightOf } from '../record/sample-legibility.ts';
import type { Limits } from '../rules/limits.ts';
import { occasionsOf, orphanReadings, type Occasion } from '../record/occasions.ts';
import { percentInterval, readersText } from '../texts/occasion-words.ts';
import type { Told } from '../texts/screens/en/screens-en.ts';
import type { Telling } from '../texts/screens/telling.ts';
import { rowsOf, type SeriesRow } from './series-rows.ts';
import { programMarks, circumstanceMarks, noon, instantOf } from './series-marks.ts';
import type { SeriesMark, Facts } from './series-marks.ts';

/** Point shapes, so that no series is told apart by color alone. Names are those of chart.js. */
type Shape = 'circle' | 'triangle' | 'rect' | 'rectRot' | 'star' | 'cross' | 'crossRot';

/** A point of a chart. `at` is milliseconds since 1970; days without a clock time stand at noon UTC. */
export interface SeriesPoint {
  at: number;
  /** YYYY-MM-DD. */
  day: string;
  value: number;
  low: number | null;
  high: number | null;
  /** What is said for this point, without the date. */
  words: string;
}

export interface Series {
  /** Written down at a visit, or at home in the practice log. */
  from?: 'log';
  id: string;
  label: string;
  unit: string;
  shape: Shape;
  points: SeriesPoint[];
}

/** Everything the progress page draws: derived from facts, nothing kept. */
export interface ProgressPicture {
  legibility: Series[];
  fatigue: Series[];
  marks: SeriesMark[];
  /** Percent of words of the goals in force. */
  goals: { percent: number; label: string }[];
  rows: SeriesRow[];
  /** A longer break starts a new series, days. */
  breakDays: number;
  /** Why something that could be expected is not there. */
  notes: string[];
}

const readerShapes = { unfamiliar: 'circle', family: 'triangle', therapist: 'rectRot' } as const;

/**
 * Turns a client's facts into the series of the progress page.
 * @param from,to optional span of days (YYYY-MM-DD, both included)
 */
export function progressPicture(
  record: Facts,
  limits: Limits,
  span: { from?: string; to?: string },
  telling: Telling,
): ProgressPicture {
  const { told } = telling;
  const inSpan = (day: string) => (!span.from || day >= span.from) && (!span.to || day <= span.to);
  const all = occasionsOf(record);
  const occasions = all.filter((o) => inSpan(o.day));
  const approved = record.programs
    .filter((p) => p.status === 'approved' && p.approvedAt !== null)
    .sort((a, b) => (a.approvedAt! < b.approvedAt! ? -1 : 1));
  return {
    legibility: legibilitySeries(occasions, telling),
    fatigue: fatigueSeries(
      occasions,
      record.practiceLogs.filter((log) => inSpan(log.date)),
      told.course.fatigue,
    ),
    marks: [...programMarks(approved, told.course), ...circumstanceMarks(occasions, limits, told)]
      .filter((mark) => inSpan(mark.day))
      .sort((a, b) => a.at - b.at),
    goals: record.goals
      .filter((goal) => goal.status === 'active' && goal.percent !== null)
      .map((goal) => ({ percent: goal.percent!, label: told.course.goal(goal.percent!, goal.output) })),
    rows: rowsOf(
      occasions,
      record.practiceLogs.filter((log) => inSpan(log.date)),
      limits,
      told,
    ),
    breakDays: limits.change.breakDays,
    notes: notesOf(record, occasions, all, told.course),
  };
}

function legibilitySeries(occasions: readonly Occasion[], { told, decimals }: Telling): Series[] {
  const words = told.course;
  const series = new Map<string, Series>();
  const add = (id: string, label: string, shape: Shape, point: SeriesPoint) => {
    const known = series.get(id) ?? { id, label, unit: '%', shape, points: [] };
    known.points.push(point);
    series.set(id, known);
  };
  for (const o of occasions) {
    const read = o.legibility;
    if (!read) continue;
    const point: SeriesPoint = {
      at: instantOf(o),
      day: o.day,
      value: read.accuracy * 100,
      ...percentInterval(read.wordsRight, read.words),
      words: words.wordsAndReaders(decimals(rightOf(read), 1, 0), read.words, readersText(read, words)),
    };
    if (o.probe) add('probe', words.wordsReadBy.probe, 'star', point);
    else add(read.reader, words.wordsReadBy[read.reader], readerShapes[read.reader], point);
  }
  return [...series.values()];
}

function fatigueSeries(
  occasions: readonly Occasion[],
  logs: Facts['practiceLogs'],
  said: Told['course']['fatigue'],
): Series[] {
  const point = (at: number, day: string, value: number | null, words: (value: number) => string): SeriesPoint[] =>
    value === null ? [] : [{ at, day, value, low: null, high: null, words: words(value) }];
  const series: Series[] = [
    {
      id: 'fatigue-before',
      label: said.before[0],
      unit: '0 to 10',
      shape: 'triangle',
      points: occasions.flatMap((o) => point(instantOf(o), o.day, o.sample.fatigueBefore, said.before[1])),
    },
    {
      id: 'fatigue-after',
      label: said.after[0],
      unit: '0 to 10',
      shape: 'rect',
      points: occasions.flatMap((o) => point(instantOf(o), o.day, o.sample.fatigueAfter, said.after[1])),
    },
    {
      id: 'log-before',
      from: 'log',
      label: said.homeBefore[0],
      unit: '0 to 10',
      shape: 'cross',
      points: logs.flatMap((log) => point(noon(log.date), log.date, log.fatigueBefore, said.homeBefore[1])),
    },
    {
      id: 'log-after',
      from: 'log',
      label: said.homeAfter[0],
      unit: '0 to 10',
      shape: 'crossRot',
      points: logs.flatMap((log) => point(noon(log.date), log.date, log.fatigueAfter, said.homeAfter[1])),
    },
  ];
  for (const one of series) one.points.sort((a, b) => a.at - b.at);
  return series.filter((one) => one.points.length > 0);
}

function notesOf(
  record: Facts,
  occasions: readonly Occasion[],
  all: readonly Occasion[],
  words: Told['course'],
): string[] {
  const notes: string[] = [];
  const unread = occasions.filter((o) => !o.legibility).length;
  if (all.length === 0) notes.push(words.noSample);
  else if (occasions.length === 0) notes.push(words.noneInSpan);
  if (unread > 0) notes.push(words.unread(unread));
  const orphans = orphanReadings(record);
  if (orphans) notes.push(words.orphans(orphans));
  const readers = new Set(occasions.flatMap((o) => (o.legibility && !o.probe ? [o.legibility.reader] : [])));
  if (readers.size > 1) notes.push(words.kindsOfReaders);
  return notes;
}
