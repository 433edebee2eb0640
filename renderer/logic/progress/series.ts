import { wordsReadOf } from '../record/sample-legibility.ts';
import type { Limits } from '../rules/limits.ts';
import { occasionsOf, orphanReadings, type Occasion } from '../record/occasions.ts';
import { percentInterval, readersText, readerWords } from '../texts/occasion-words.ts';
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
  span: { from?: string; to?: string } = {},
): ProgressPicture {
  const inSpan = (day: string) => (!span.from || day >= span.from) && (!span.to || day <= span.to);
  const all = occasionsOf(record);
  const occasions = all.filter((o) => inSpan(o.day));
  const approved = record.programs
    .filter((p) => p.status === 'approved' && p.approvedAt !== null)
    .sort((a, b) => (a.approvedAt! < b.approvedAt! ? -1 : 1));
  return {
    legibility: legibilitySeries(occasions),
    fatigue: fatigueSeries(
      occasions,
      record.practiceLogs.filter((log) => inSpan(log.date)),
    ),
    marks: [...programMarks(approved), ...circumstanceMarks(occasions, limits)]
      .filter((mark) => inSpan(mark.day))
      .sort((a, b) => a.at - b.at),
    goals: record.goals
      .filter((goal) => goal.status === 'active' && goal.percent !== null)
      .map((goal) => ({ percent: goal.percent!, label: `Goal: ${goal.percent} % of words, ${goal.output}` })),
    rows: rowsOf(
      occasions,
      record.practiceLogs.filter((log) => inSpan(log.date)),
      limits,
    ),
    breakDays: limits.change.breakDays,
    notes: notesOf(record, occasions, all),
  };
}

function legibilitySeries(occasions: readonly Occasion[]): Series[] {
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
      words: `${wordsReadOf(read)} words, ${readersText(read)}`,
    };
    if (o.probe) add('probe', 'Words read, plain paper without cues', 'star', point);
    else add(read.reader, `Words read, ${readerWords[read.reader]}`, readerShapes[read.reader], point);
  }
  return [...series.values()];
}

function fatigueSeries(occasions: readonly Occasion[], logs: Facts['practiceLogs']): Series[] {
  const point = (at: number, day: string, value: number | null, words: string): SeriesPoint[] =>
    value === null ? [] : [{ at, day, value, low: null, high: null, words: `${words} ${value} of 10` }];
  const series: Series[] = [
    {
      id: 'fatigue-before',
      label: 'Fatigue before writing, visit',
      unit: '0 to 10',
      shape: 'triangle',
      points: occasions.flatMap((o) => point(instantOf(o), o.day, o.sample.fatigueBefore, 'fatigue before')),
    },
    {
      id: 'fatigue-after',
      label: 'Fatigue after writing, visit',
      unit: '0 to 10',
      shape: 'rect',
      points: occasions.flatMap((o) => point(instantOf(o), o.day, o.sample.fatigueAfter, 'fatigue after')),
    },
    {
      id: 'log-before',
      from: 'log',
      label: 'Fatigue before practice, home log',
      unit: '0 to 10',
      shape: 'cross',
      points: logs.flatMap((log) => point(noon(log.date), log.date, log.fatigueBefore, 'at home, fatigue before')),
    },
    {
      id: 'log-after',
      from: 'log',
      label: 'Fatigue after practice, home log',
      unit: '0 to 10',
      shape: 'crossRot',
      points: logs.flatMap((log) => point(noon(log.date), log.date, log.fatigueAfter, 'at home, fatigue after')),
    },
  ];
  for (const one of series) one.points.sort((a, b) => a.at - b.at);
  return series.filter((one) => one.points.length > 0);
}

function notesOf(record: Facts, occasions: readonly Occasion[], all: readonly Occasion[]): string[] {
  const notes: string[] = [];
  const unread = occasions.filter((o) => !o.legibility).length;
  if (all.length === 0) notes.push('There is no writing sample yet. Take one at a visit, then it shows here.');
  else if (occasions.length === 0) notes.push('There is no sample in this span. Choose a longer one.');
  if (unread === 1) notes.push('One sample has not been read yet; it has fatigue but no legibility.');
  if (unread > 1) notes.push(`${unread} samples have not been read yet; they have fatigue but no legibility.`);
  const orphans = orphanReadings(record);
  if (orphans)
    notes.push(
      `${orphans === 1 ? 'One reading belongs' : `${orphans} readings belong`} to a sample that was removed and is not counted.`,
    );
  const readers = new Set(occasions.flatMap((o) => (o.legibility && !o.probe ? [o.legibility.reader] : [])));
  if (readers.size > 1) notes.push('Different kinds of readers have read; only the least familiar kind is compared.');
  return notes;
}
