/** chart.js with the parts that the progress page draws with, and its colors taken from the theme in use. */
import {
  BasicPlatform,
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
import type { ChartConfiguration, ChartType } from 'chart.js';
import { Element as VectorCanvas } from 'svgcanvas';
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

/**
 * The same chart as vectors, for paper: chart.js draws on a context that writes SVG.
 * @param width,height of the chart, px
 */
export function vectorChart<T extends ChartType, D>(
  config: ChartConfiguration<T, D>,
  width: number,
  height: number,
): SVGSVGElement {
  const surface = new VectorCanvas({ width, height });
  const options = { ...config.options, responsive: false, devicePixelRatio: 1 };
  // Lines with segments are drawn step by step; others by Path2D, which cannot be written as SVG.
  const datasets = config.data.datasets.map((set) => ({ ...set, segment: {} }));
  const drawn = { ...config, data: { ...config.data, datasets }, platform: BasicPlatform, options };
  const chart = new Chart(surface as unknown as HTMLCanvasElement, drawn as never);
  const svg = surface.svg.cloneNode(true) as SVGSVGElement;
  // chart.js keeps every chart until it is destroyed, and wipes its canvas then.
  chart.destroy();
  svg.setAttribute('viewBox', `0 0 ${width} ${height}`);
  return svg;
}

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
  probe.style.forcedColorAdjust = 'none';
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
    // As faint beside the lines as in the other themes; the system's gray may be a green or a red.
    const rule = systemColor(node, 'color-mix(in srgb, CanvasText 30%, Canvas)');
    const marked = systemColor(node, 'Highlight');
    const sheet = systemColor(node, 'Canvas');
    return { ink: text, soft: text, rule, accent: marked, good: text, wash: sheet, sheet, font };
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
