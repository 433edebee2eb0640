/** What a program asks of one day, beside the limits of its dose. */
import type { ProgramLine } from '../../../../db/types/program.ts';
import type { DayDose } from './day-dose.ts';
import { countedKinds, minutesADay } from './program-line.ts';

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

export function dayOf(lines: readonly ProgramLine[], limits: Pick<DayDose, 'items' | 'cap'>): Day {
  const counted = lines.filter((line) => countedKinds.has(line.kind));
  const minutes = minutesADay(counted);
  return {
    items: counted.length,
    itemsMost: limits.items,
    minutes,
    minutesMost: limits.cap,
    writing: minutesADay(counted.filter((line) => line.kind === 'writing')),
    over: counted.length > limits.items || minutes > limits.cap,
  };
}
