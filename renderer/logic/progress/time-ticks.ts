/** Days under a time axis: as many as have room, on weeks or on first days of months. */

export interface TimeTick {
  x: number;
  at: number;
  /** 'month': only month and year are said. */
  kind: 'day' | 'month';
}

const DAY_MS = 86_400_000;
/** Room of one date, px. */
const DATE_PX = 66;
const DAY_STEPS = [1, 2, 7, 14];
const MONTH_STEPS = [1, 2, 3, 6, 12, 24];

/** @param from,to milliseconds since 1970; @param width of the axis, px */
export function timeTicks(from: number, to: number, xOf: (at: number) => number, width: number): TimeTick[] {
  const most = Math.max(2, Math.floor(width / DATE_PX));
  const days = (to - from) / DAY_MS;
  const step = DAY_STEPS.find((each) => days / each <= most);
  const at: number[] = [];
  if (step !== undefined) {
    for (let day = Math.ceil(from / DAY_MS); day * DAY_MS <= to; day += step) at.push(day * DAY_MS);
    return placed(at, 'day', xOf, xOf(to));
  }
  const months = days / 30.4;
  const by = MONTH_STEPS.find((each) => months / each <= most) ?? MONTH_STEPS.at(-1)!;
  const start = new Date(from);
  // Whole steps from January, so that the same span always shows the same months.
  for (let month = Math.floor(start.getUTCMonth() / by) * by; ; month += by) {
    const each = Date.UTC(start.getUTCFullYear(), month, 1);
    if (each > to) break;
    if (each >= from) at.push(each);
  }
  return placed(at, 'month', xOf, xOf(to));
}

/** Without a last one whose date would be cut off at the end of the axis. */
const placed = (at: readonly number[], kind: TimeTick['kind'], xOf: (at: number) => number, end: number): TimeTick[] =>
  at.map((each) => ({ x: xOf(each), at: each, kind })).filter((tick) => tick.x <= end - DATE_PX / 3);
