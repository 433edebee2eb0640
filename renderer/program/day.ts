/** What a program asks of one day, beside the limits of the table. */
import type { ProgramLine } from '../../db/types/program.ts';
import type { RuleTable } from '../../db/types/rules.ts';
import { countedKinds, dayMinutes } from './line.ts';

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

export function dayOf(lines: readonly ProgramLine[], rules: RuleTable): Day {
  const limit = (code: string, other: number): number =>
    rules.thresholds.find((each) => each.code === code)?.value ?? other;
  const counted = lines.filter((line) => countedKinds.has(line.kind));
  const sum = (list: readonly ProgramLine[]): number =>
    Math.round(list.reduce((total, line) => total + dayMinutes(line.dose), 0));
  const [itemsMost, minutesMost] = [limit('items-most', 5), limit('minutes-most', 30)];
  const minutes = sum(counted);
  return {
    items: counted.length,
    itemsMost,
    minutes,
    minutesMost,
    writing: sum(counted.filter((line) => line.kind === 'writing')),
    over: counted.length > itemsMost || minutes > minutesMost,
  };
}
