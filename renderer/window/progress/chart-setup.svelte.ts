/** chart.js with the parts that the progress page draws with, and its colors taken from the theme in use. */
import {
  CategoryScale,
  Chart,
  LinearScale,
  LineController,
  LineElement,
  PointElement,
  ScatterController,
  TimeScale,
  Tooltip,
} from 'chart.js';
import annotation from 'chartjs-plugin-annotation';
import 'chartjs-adapter-date-fns';

Chart.register(
  CategoryScale,
  LinearScale,
  LineController,
  LineElement,
  PointElement,
  ScatterController,
  TimeScale,
  Tooltip,
  annotation,
);

export { Chart };

export interface ChartColors {
  ink: string;
  soft: string;
  rule: string;
  accent: string;
  good: string;
  wash: string;
  sheet: string;
  font: string;
}

/** Colors of the theme in use, as the style sheet has them. */
export function themeColors(node: Element): ChartColors {
  const style = getComputedStyle(node);
  const read = (name: string) => style.getPropertyValue(name).trim();
  return {
    ink: read('--ink'),
    soft: read('--ink-soft'),
    rule: read('--rule'),
    accent: read('--accent'),
    good: read('--good'),
    wash: read('--accent-wash'),
    sheet: read('--sheet'),
    font: read('--font'),
  };
}
