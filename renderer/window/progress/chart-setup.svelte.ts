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

/** A color of the system as the page draws it now: a canvas takes no part in forced colors by itself. */
function systemColor(node: Element, name: string): string {
  const probe = document.createElement('span');
  probe.style.color = name;
  (node.parentElement ?? document.body).append(probe);
  const color = getComputedStyle(probe).color;
  probe.remove();
  return color;
}

/** Colors of the theme in use, as the style sheet has them; in forced colors those of the system. */
export function themeColors(node: Element): ChartColors {
  const style = getComputedStyle(node);
  const read = (name: string) => style.getPropertyValue(name).trim();
  const font = read('--font');
  if (matchMedia('(forced-colors: active)').matches) {
    const text = systemColor(node, 'CanvasText');
    const gray = systemColor(node, 'GrayText');
    const marked = systemColor(node, 'Highlight');
    const sheet = systemColor(node, 'Canvas');
    return { ink: text, soft: text, rule: gray, accent: marked, good: text, wash: sheet, sheet, font };
  }
  return {
    ink: read('--ink'),
    soft: read('--ink-soft'),
    rule: read('--rule'),
    accent: read('--accent'),
    good: read('--good'),
    wash: read('--accent-wash'),
    sheet: read('--sheet'),
    font,
  };
}
