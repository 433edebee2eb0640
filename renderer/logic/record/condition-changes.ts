import type { Conditions, Task } from '../../../db/types/sample.ts';
import type { Limits } from '../rules/limits.ts';

/** What was not the same between two samples. */
export interface ConditionDifference {
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

const doseWords = { on: 'medicine on', off: 'medicine off', unsure: 'unsure', none: 'no medicine' } as const;
const taskWords: Record<Task['kind'], string> = {
  pangram: 'all-letter sentence',
  sentences: 'sentences',
  'date-line': 'date line',
  personal: 'personal line',
  signature: 'signature',
  digits: 'digits',
  free: 'free writing',
  'goal-output': 'goal writing',
  'transfer-probe': 'line on plain paper without cues',
  'repeated-letter': 'one letter again and again',
};

/**
 * Names every condition that differs between two samples. A condition noted for one of them only is no difference:
 * it is not known.
 * @param sameTimeMinutes clock time and time since the dose may differ by this much (`limitsOf`)
 */
export function conditionDifferences(
  before: Circumstances,
  now: Circumstances,
  { sameTimeMinutes }: Pick<Limits, 'sameTimeMinutes'>,
): ConditionDifference[] {
  const a = before.conditions;
  const b = now.conditions;
  const found: ConditionDifference[] = [];
  const compare = (name: string, was: string | null, is: string | null) => {
    if (was && is && was.trim().toLowerCase() !== is.trim().toLowerCase()) found.push({ name, before: was, now: is });
  };
  const far = (was: number | null, is: number | null, by: number) =>
    was !== null && is !== null && Math.abs(was - is) > by;
  compare('hand', a.hand, b.hand);
  compare('pen', a.pen, b.pen);
  compare('paper', a.paper, b.paper);
  if (clockMinutesApart(a.time, b.time) > sameTimeMinutes) {
    found.push({ name: 'time of day', before: a.time!, now: b.time! });
  }
  compare('medicine', a.doseState && doseWords[a.doseState], b.doseState && doseWords[b.doseState]);
  if (far(a.minutesSinceDose, b.minutesSinceDose, sameTimeMinutes)) {
    found.push({ name: 'time since the dose', before: `${a.minutesSinceDose} min`, now: `${b.minutesSinceDose} min` });
  }
  compare('cue', a.cue, b.cue);
  compare('instruction', a.instruction, b.instruction);
  compare('arm support', a.armSupport, b.armSupport);
  compare('grip', a.grip, b.grip);
  compare('glasses', a.glasses, b.glasses);
  compare('kind of letters', a.style, b.style);
  if (far(a.surfaceAngleDeg, b.surfaceAngleDeg, 2)) {
    found.push({ name: 'slope of the surface', before: `${a.surfaceAngleDeg}°`, now: `${b.surfaceAngleDeg}°` });
  }
  if (far(a.seatMm, b.seatMm, 20)) found.push({ name: 'seat height', before: `${a.seatMm} mm`, now: `${b.seatMm} mm` });
  if (far(a.tableMm, b.tableMm, 20)) {
    found.push({ name: 'table height', before: `${a.tableMm} mm`, now: `${b.tableMm} mm` });
  }
  compare('task', taskWords[before.task.kind], taskWords[now.task.kind]);
  compare('therapist', before.by ?? null, now.by ?? null);
  return found;
}

/** "Not the same: pen (gel, then pencil), time of day (09:00, then 15:30)." or '' when nothing differs. */
export function differencesSentence(differences: readonly ConditionDifference[]): string {
  if (differences.length === 0) return '';
  return `Not the same: ${differences.map((d) => `${d.name} (${d.before}, then ${d.now})`).join(', ')}.`;
}

const minutesOfDay = (time: string): number => Number(time.slice(0, 2)) * 60 + Number(time.slice(3, 5));

/** Minutes between two clock times, the shorter way around midnight; 0 when one is not known. */
function clockMinutesApart(a: string | null, b: string | null): number {
  if (!a || !b) return 0;
  const apart = Math.abs(minutesOfDay(a) - minutesOfDay(b));
  return Math.min(apart, 1440 - apart);
}
