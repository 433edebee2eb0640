import { expect, test } from 'vitest';
import { chartShapes, valueAt } from '../../../renderer/logic/progress/chart-shapes.ts';
import type { ProgressPicture } from '../../../renderer/logic/progress/series.ts';
import { timeTicks } from '../../../renderer/logic/progress/time-ticks.ts';

const DAY = 86_400_000;
const WEEK = 7 * DAY;
const start = Date.UTC(2023, 10, 1, 12);

/** `count` weekly visits with a reading each, and a program changed each quarter. */
function picture(count: number, goals: number[] = [75]): ProgressPicture {
  const points = Array.from({ length: count }, (_, i) => ({
    at: start + i * WEEK,
    day: new Date(start + i * WEEK).toISOString().slice(0, 10),
    value: 50 + (i % 40),
    low: 40 + (i % 40),
    high: 60 + (i % 40),
    words: `${i}`,
  }));
  return {
    legibility: [{ id: 'unfamiliar', label: 'Words read', unit: '%', shape: 'circle', points }],
    fatigue: [
      {
        id: 'fatigue-after',
        label: 'Fatigue',
        unit: '',
        shape: 'rect',
        points: points.map((p) => ({ ...p, value: 4 })),
      },
    ],
    marks: points
      .filter((_, i) => i % 13 === 0)
      .map((p) => ({ at: p.at, day: p.day, kind: 'program' as const, label: 'Program changed, tier 3' })),
    goals: goals.map((percent) => ({ percent, label: '' })),
    rows: [],
    breakDays: 60,
    notes: [],
  };
}

test.each([1, 6, 60, 156])(
  '%i visits: inside the chart, no two names over each other, each value read back',
  (count) => {
    const shapes = chartShapes(picture(count, [74, 75, 90]), 760, 320);
    for (const one of shapes.points) {
      expect(one.x).toBeGreaterThanOrEqual(shapes.left);
      expect(one.x).toBeLessThanOrEqual(shapes.right);
      const panel = one.series.shape === 'circle' ? shapes.percent : shapes.fatigue;
      expect(valueAt(panel, one.y)).toBeCloseTo(one.point.value, 6);
    }
    // Letters of 13 px are 6.8 px wide on average: names in one row of the lane stand apart.
    for (const row of [0, 1]) {
      const boxes = shapes.lane
        .filter((one) => one.row === row)
        .map(({ x, label }) => ({ from: x - (label.length * 6.8) / 2, to: x + (label.length * 6.8) / 2 }));
      boxes.slice(1).forEach((box, i) => expect(box.from).toBeGreaterThan(boxes[i]!.to - 80));
    }
    const names = shapes.goals.map((goal) => goal.labelY).sort((a, b) => a - b);
    names.slice(1).forEach((y, i) => expect(y - names[i]!).toBeGreaterThanOrEqual(15));
    const dates = shapes.ticks.map((tick) => tick.x);
    dates.slice(1).forEach((x, i) => expect(x - dates[i]!).toBeGreaterThan(50));
  },
);

test('many points become a line: symbols to 120, intervals to 40', () => {
  const [few, many, most] = [24, 60, 156].map((count) => chartShapes(picture(count), 760, 320).series[0]!);
  expect(few!.intervals).not.toBe('');
  expect(many!.intervals).toBe('');
  expect(many!.points).not.toBe('');
  expect(most!.points).toBe('');
  expect(most!.line).not.toBe('');
});

test('a line is broken where the pause was longer than the table says', () => {
  const long = picture(4);
  long.legibility[0]!.points[2]!.at += 70 * DAY;
  long.legibility[0]!.points[3]!.at += 70 * DAY;
  expect(chartShapes(long, 760, 320).series[0]!.line.match(/M/g)).toHaveLength(2);
});

test('dates stand on days in a short span and on first days of months in a long one', () => {
  const near = timeTicks(start, start + 40 * DAY, (at) => at, 700);
  expect(near.every((tick) => tick.kind === 'day')).toBe(true);
  const far = timeTicks(start, start + 156 * WEEK, (at) => at, 700);
  expect(far.every((tick) => tick.kind === 'month' && new Date(tick.at).getUTCDate() === 1)).toBe(true);
  expect(far.length).toBeLessThanOrEqual(10);
  expect(far.length).toBeGreaterThanOrEqual(4);
});
