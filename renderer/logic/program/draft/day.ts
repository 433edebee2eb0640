/** What a program asks of one day, beside the limits of the table. */
import type { ProgramLine } from '../../../../db/types/program.ts';
import type { Facts } from '../facts/fact-types.ts';
import { countedKinds, dayMinutes } from './program-line.ts';

export interface Day {
  /** Warm-ups, exercises and writing; equipment and advice do not count. */
  items: number;
  itemsMost: number;
  minutes: number;
  minutesMost: number;
  /** Minutes that are writing. */
  writing: number;
  /** More than the table allows: the therapist may say so, and sees it. */
  over: boolean;
}

/** Items and minutes of one day, at most: fewer minutes where writing tires markedly or the condition weakens with use. */
export function dayLimits(facts: Pick<Facts, 'findings' | 'diagnoses' | 'thresholds'>): {
  items: number;
  minutes: number;
} {
  const limit = (code: string, other: number): number => facts.thresholds.get(code) ?? other;
  const tires =
    facts.diagnoses.has('weakens-with-use') ||
    ['fatigue', 'endurance'].some((code) => (facts.findings.get(code)?.grade ?? 3) <= 1);
  const most = limit('minutes-most', 30);
  return {
    items: limit('items-most', 5),
    minutes: tires ? Math.min(most, limit('minutes-most-tired', 20)) : most,
  };
}

export function dayOf(lines: readonly ProgramLine[], limits: { items: number; minutes: number }): Day {
  const counted = lines.filter((line) => countedKinds.has(line.kind));
  const sum = (list: readonly ProgramLine[]): number =>
    Math.round(list.reduce((total, line) => total + dayMinutes(line.dose), 0));
  const minutes = sum(counted);
  return {
    items: counted.length,
    itemsMost: limits.items,
    minutes,
    minutesMost: limits.minutes,
    writing: sum(counted.filter((line) => line.kind === 'writing')),
    over: counted.length > limits.items || minutes > limits.minutes,
  };
}
