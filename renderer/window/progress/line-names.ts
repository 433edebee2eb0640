/** Names of the chart's lines in its right gutter, each beside the last point, so that nobody has to look them up below. */
import type { Plugin } from 'chart.js';
import type { ChartColors } from './chart-setup.svelte.ts';

/** Room of a name, px. */
const NAME_PX = 15;
/** From the place it should have: where it goes when another name stands there. */
const NEARBY = [0, 1, -1, 2, -2, 3, -3].map((step) => step * NAME_PX);

/**
 * @param names by the line's label
 * @param goals percent of each goal, whose names stand in the same gutter
 */
export function lineNames(
  names: ReadonlyMap<string, string>,
  goals: readonly number[],
  colors: ChartColors,
): Plugin<'line'> {
  return {
    id: 'line-names',
    afterDatasetsDraw(chart) {
      const percent = chart.scales['percent'];
      if (!percent) return;
      const taken = goals.map((goal) => percent.getPixelForValue(goal));
      const { ctx } = chart;
      ctx.save();
      ctx.font = `13px ${colors.font}`;
      ctx.fillStyle = colors.ink;
      ctx.textAlign = 'left';
      ctx.textBaseline = 'middle';
      for (const set of chart.data.datasets) {
        const name = names.get(set.label ?? '');
        const last = (set.data as unknown as { y: number }[]).at(-1);
        const scale = chart.scales[set.yAxisID ?? ''];
        if (!name || !last || !scale) continue;
        const wanted = scale.getPixelForValue(last.y);
        const free = (y: number): boolean => taken.every((other) => Math.abs(other - y) >= NAME_PX);
        const y = wanted + (NEARBY.find((by) => free(wanted + by)) ?? 0);
        taken.push(y);
        ctx.fillText(name, chart.chartArea.right + 10, y);
      }
      ctx.restore();
    },
  };
}
