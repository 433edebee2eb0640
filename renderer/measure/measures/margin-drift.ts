import type { Measure } from './measure.ts';
import { NOTHING } from './measure.ts';
import { slopeOverLines } from './slopes.ts';

const LEAST_LINES = 4;

export const marginDrift: Measure = {
  code: 'margin-drift',
  name: 'Drift of the left margin, per line',
  unit: 'mm per line',
  direction: 'none',
  source: 'Theil-Sen slope of where lines begin over line number, + to the right (common practice). No cut-off.',
  how: 'Theil-Sen slope over the lines, interval by t of least squares',
  compute: (page) => {
    const points = page.lines.map((line, index) => ({ index, value: line.startMm }));
    if (points.length < LEAST_LINES) return { ...NOTHING, n: points.length };
    return slopeOverLines(points, (slope) => slope);
  },
};
