/**
 * The day's dose from what was seen (clinical notes 2, part c): turns, rests, drills and the most minutes of a day.
 * Every number is a row of the threshold table.
 */
import type { ProgramInput } from '../../../../db/types/program-input.ts';
import type { Rest } from '../../../../db/types/program.ts';
import { threshold } from '../../../../db/types/rule-table/threshold.ts';
import { boutLines } from './dose.ts';
import type { Facts } from '../facts/fact-types.ts';
import { isLow } from '../facts/program-facts.ts';

export interface DayDose {
  /** Row of the table, 1 to 5. */
  row: number;
  /** Minutes of one turn. */
  turn: number;
  /** Turns a day. */
  turns: number;
  /** Lines of one turn; null = no fall along the lines was seen. */
  lines: number | null;
  /** Minutes between turns; `most` null = until the client is as fresh as at the start. */
  rest: Rest;
  /** Turns are spread over the day. */
  spread: boolean;
  /** Exercises and warm-ups, the slow opening excepted. */
  drills: number;
  /** Minutes of one drill. */
  drillMinutes: number;
  /** Minutes a day. */
  cap: number;
  items: number;
}

const rows = [1, 2, 3, 4, 5] as const;

/**
 * Row by the rise of fatigue: the measure, or what the screen saw where that is worse. Not back after ten minutes is
 * the last row; no rise known is the row that the table names.
 */
function rowOf(facts: Facts): number {
  const limit = (code: string): number => threshold(facts.thresholds, code);
  if (facts.details.get('fatigue')?.has('not-recovered')) return rows.length;
  const rise = facts.measures.get('fatigue-rise');
  const byMeasure =
    rise === undefined ? limit('dose-row-unknown') : (rows.find((n) => rise <= limit(`dose-${n}-rise`)) ?? rows.length);
  // The screen's grades are steps of the same rise: 2 = 2 points, 1 = 3, 0 = 4 or more.
  const byScreen = isLow(facts, 'fatigue', 0) ? 4 : isLow(facts, 'fatigue', 1) ? 3 : isLow(facts, 'fatigue', 2) ? 2 : 1;
  return Math.max(byMeasure, byScreen);
}

/** Most minutes of the day beside the row: the lowest of what holds for the client. */
function capsOf(facts: Facts): number[] {
  const limit = (code: string): number => threshold(facts.thresholds, code);
  const caps: [boolean, string][] = [
    [isLow(facts, 'attention', 1), 'dose-cap-attention'],
    [facts.diagnoses.has('weakens-with-use'), 'dose-cap-weakens'],
    [facts.cautions.has('writers-cramp'), 'dose-cap-cramp'],
    [facts.cautions.has('nerve-compressed') || facts.diagnoses.has('nerve-injury'), 'dose-cap-nerve'],
    [facts.cautions.has('flare'), 'dose-cap-flare'],
  ];
  return caps.flatMap(([holds, code]) => (holds ? [limit(code)] : []));
}

export function dayDose(input: Pick<ProgramInput, 'minutesALine'>, facts: Facts): DayDose {
  const limit = (code: string): number => threshold(facts.thresholds, code);
  const row = rowOf(facts);
  const of = (what: string): number => limit(`dose-${row}-${what}`);
  const onset = facts.measures.get('onset-line') ?? null;
  const lines =
    onset === null ? null : boutLines(onset, onset, { share: limit('bout-share'), most: limit('bout-most') });
  const minutesALine = input.minutesALine ?? limit('minutes-a-line');
  const byLines = lines === null ? Infinity : lines * minutesALine;
  const attention = isLow(facts, 'attention', 1) ? limit('dose-turn-attention') : Infinity;
  const turn = Math.max(limit('dose-line-least'), Math.floor(Math.min(of('turn'), byLines, attention)));
  const spread = row === rows.length;
  const least = Math.max(limit('rest-least'), of('rest') * turn);
  return {
    row,
    turn,
    turns: of('turns'),
    // No more lines than the minutes of a turn hold.
    lines: lines === null ? null : Math.min(lines, Math.max(1, Math.floor(turn / minutesALine))),
    rest: { least, most: spread ? null : least },
    spread,
    drills: of('drills'),
    drillMinutes: of('drill-minutes'),
    cap: Math.min(of('cap'), ...capsOf(facts)),
    items: limit('items-most'),
  };
}
