import type { Conditions, Task } from '../../../db/types/sample.ts';
import type { Limits } from '../rules/limits.ts';
import type { Told } from '../texts/screens/en/screens-en.ts';

type ConditionCode = keyof Told['conditions']['names'];

/** What was not the same between two samples. */
export interface ConditionDifference {
  code: ConditionCode;
  /** Plain name of the condition: "pen", "time of day". */
  name: string;
  before: string;
  now: string;
}

/** What a comparison needs of a sample. */
export interface Circumstances {
  conditions: Conditions;
  task: Task;
  /** Initials of the therapist who took it. */
  by?: string;
}

/**
 * Names every condition that differs between two samples. A condition noted for one of them only is no difference:
 * it is not known.
 * @param sameTimeMinutes clock time and time since the dose may differ by this much (`limitsOf`)
 */
export function conditionDifferences(
  before: Circumstances,
  now: Circumstances,
  { sameTimeMinutes }: Pick<Limits, 'sameTimeMinutes'>,
  words: Told['conditions'],
): ConditionDifference[] {
  const a = before.conditions;
  const b = now.conditions;
  const found: ConditionDifference[] = [];
  const { names } = words;
  const add = (code: ConditionCode, was: string, is: string) =>
    found.push({ code, name: names[code], before: was, now: is });
  const compare = (code: ConditionCode, was: string | null, is: string | null) => {
    if (was && is && was.trim().toLowerCase() !== is.trim().toLowerCase()) add(code, was, is);
  };
  /** Values of a list, each by its word. */
  const choose = <T extends string>(code: ConditionCode, said: Record<T, string>, was: T | null, is: T | null) =>
    compare(code, was && said[was], is && said[is]);
  const measure = (code: ConditionCode, was: number | null, is: number | null, by: number, unit: string) => {
    if (was !== null && is !== null && Math.abs(was - is) > by) add(code, `${was}${unit}`, `${is}${unit}`);
  };
  choose('hand', words.hand, a.hand, b.hand);
  compare('pen', a.pen, b.pen);
  compare('paper', a.paper, b.paper);
  if (clockMinutesApart(a.time, b.time) > sameTimeMinutes) add('time', a.time!, b.time!);
  choose('medicine', words.dose, a.doseState, b.doseState);
  measure('sinceDose', a.minutesSinceDose, b.minutesSinceDose, sameTimeMinutes, ' min');
  choose('cue', words.cue, a.cue, b.cue);
  choose('instruction', words.instruction, a.instruction, b.instruction);
  compare('armSupport', a.armSupport, b.armSupport);
  compare('grip', a.grip, b.grip);
  choose('glasses', words.glasses, a.glasses, b.glasses);
  choose('style', words.style, a.style, b.style);
  measure('slope', a.surfaceAngleDeg, b.surfaceAngleDeg, 2, '°');
  measure('seat', a.seatMm, b.seatMm, 20, ' mm');
  measure('table', a.tableMm, b.tableMm, 20, ' mm');
  choose('task', words.task, before.task.kind, now.task.kind);
  compare('therapist', before.by ?? null, now.by ?? null);
  return found;
}

/** "Not the same: pen (gel, then pencil), time of day (09:00, then 15:30)." or '' when nothing differs. */
export const differencesSentence = (differences: readonly ConditionDifference[], words: Told['conditions']): string =>
  differences.length === 0
    ? ''
    : words.notSame(differences.map((d) => words.differs(d.name, d.before, d.now)).join(', '));

const minutesOfDay = (time: string): number => Number(time.slice(0, 2)) * 60 + Number(time.slice(3, 5));

/** Minutes between two clock times, the shorter way around midnight; 0 when one is not known. */
function clockMinutesApart(a: string | null, b: string | null): number {
  if (!a || !b) return 0;
  const apart = Math.abs(minutesOfDay(a) - minutesOfDay(b));
  return Math.min(apart, 1440 - apart);
}
