import { interval } from '../bootstrap.ts';
import { theilSen } from '../numbers.ts';
import type { Measure } from './measure.ts';
import { NOTHING } from './measure.ts';

export const marginDrift: Measure = {
  code: 'margin-drift',
  name: 'Drift of the left margin, per line',
  unit: 'mm per line',
  direction: 'none',
  source: 'Theil-Sen slope of where lines begin over line number, + to the right (common practice). No cut-off.',
  how: 'Theil-Sen slope over the lines, interval over lines',
  compute: (page, chance) => {
    const points = page.lines.map((line, index) => ({ index, start: line.startMm }));
    if (points.length < 4) return { ...NOTHING, n: points.length };
    const slope = (drawn: readonly { index: number; start: number }[]): number | null =>
      theilSen(
        drawn.map((p) => p.index),
        drawn.map((p) => p.start),
      )?.slope ?? null;
    return { value: slope(points), n: points.length, ...interval(points, slope, chance), spread: null };
  },
};
