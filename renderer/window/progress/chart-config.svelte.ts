import { millisecondsInDay } from 'date-fns/constants';
import type { AnnotationOptions } from 'chartjs-plugin-annotation';
import type { ChartConfiguration, ChartDataset, Plugin } from 'chart.js';
import type { ChartColors } from './chart-setup.svelte.ts';
import { lineNames } from './line-names.ts';
import { eventLane, type LaneLabel } from '../../logic/progress/event-lane.ts';
import type { ProgressPicture, Series, SeriesPoint } from '../../logic/progress/series.ts';
import { de } from 'date-fns/locale/de';
import { es } from 'date-fns/locale/es';
import { say, shownPageLanguage } from '../parts/say.svelte.ts';

/** Names of months below the chart; English is built in. */
const dateWords = { en: undefined, es, de };

/** A drawn point that still knows what it says. */
export interface DrawnPoint {
  x: number;
  y: number;
  point: SeriesPoint;
}

/** Room of the axis labels at the left, and of the names of lines and goals at the right, px. */
const AXIS_PX = 60;
const GUTTER_PX = 90;
/** From the end of a goal's line to the middle of its name, px. */
const GOAL_PX = 78;
/** Least distance between the names of two goals, px. */
const NAME_PX = 15;
/** Half of a letter of a name in the lane, px. */
const LETTER_PX = 3.4;
/** Points shrink as they grow many; past the last number only the line is drawn. */
const RADIUS: readonly (readonly [number, number])[] = [
  [24, 5],
  [60, 3],
  [120, 1.5],
];
const radiusOf = (count: number): number => RADIUS.find(([most]) => count <= most)?.[1] ?? 0;
/** Intervals of more points than this would be a hatching: then only the point in hand shows its own. */
const MOST_INTERVALS = 40;

type LineDataset = ChartDataset<'line', DrawnPoint[]>;

/** Dashes, so that lines differ without color; families, probes and home logs are not joined by lines at all. */
export const DASHES: Record<string, number[]> = {
  unfamiliar: [],
  family: [6, 4],
  therapist: [2, 3],
  'fatigue-before': [3, 3],
  'fatigue-after': [],
};

/** The chart of legibility and fatigue over one time axis. */
export function progressChart(
  picture: ProgressPicture,
  colors: ChartColors,
  showDate: (iso: string) => string,
  /** Room that the chart has, px. */
  widthPx: number,
): ChartConfiguration<'line', DrawnPoint[]> {
  const breakMs = picture.breakDays * millisecondsInDay;
  const { axis } = say.told.course;
  const datasets = [
    ...picture.legibility.map((series) => dataset(series, colors.accent, 'percent', colors, breakMs)),
    ...picture.fatigue.map((series) =>
      dataset(series, series.from === 'log' ? colors.soft : colors.ink, 'fatigue', colors, breakMs),
    ),
  ];
  const times = datasets.flatMap((set) => set.data.map((p) => p.x));
  const from = Math.min(...times, ...picture.marks.map((mark) => mark.at));
  const to = Math.max(...times, ...picture.marks.map((mark) => mark.at));
  const space = Math.max(3 * millisecondsInDay, (to - from) * 0.04);
  const tick = { color: colors.ink, font: { family: colors.font, size: 13 } };
  const inside = widthPx - AXIS_PX - GUTTER_PX;
  const lane = Number.isFinite(from)
    ? eventLane(
        picture.marks,
        (at) => ((at - from + space) / (to - from + 2 * space)) * inside,
        inside,
        say.told.course.changes,
      )
    : [];
  return {
    type: 'line',
    data: { datasets },
    options: {
      responsive: true,
      maintainAspectRatio: false,
      animation: false,
      layout: {
        padding: {
          top: lane.some((one) => one.row === 1) ? 40 : lane.length > 0 ? 24 : 0,
          right: GUTTER_PX,
        },
      },
      parsing: false,
      normalized: false,
      interaction: { mode: 'nearest', intersect: false },
      scales: {
        x: {
          type: 'time',
          ...(Number.isFinite(from) && { min: from - space, max: to + space }),
          adapters: { date: { locale: dateWords[shownPageLanguage()] } },
          time: { minUnit: 'day', displayFormats: { day: axis.day, week: axis.day, month: axis.month } },
          ticks: { ...tick, maxRotation: 0, autoSkipPadding: 16 },
          grid: { color: colors.rule },
        },
        // Stacked axes grow upward: the last one stands on top.
        fatigue: {
          type: 'linear',
          position: 'left',
          min: 0,
          max: 10,
          stack: 'both',
          stackWeight: 2,
          offset: true,
          title: { display: true, text: say.progress.fatigue0To10, ...tick },
          ticks: { ...tick, stepSize: 5 },
          grid: { color: colors.rule },
        },
        percent: {
          type: 'linear',
          position: 'left',
          min: 0,
          max: 100,
          stack: 'both',
          stackWeight: 3,
          title: { display: true, text: say.progress.wordsRead, ...tick },
          ticks: { ...tick, stepSize: 20 },
          grid: { color: colors.rule },
        },
      },
      plugins: {
        tooltip: {
          callbacks: {
            title: (items) => (items[0] ? showDate((items[0].raw as DrawnPoint).point.day) : ''),
            label: (item) => (item.raw as DrawnPoint).point.words,
          },
        },
        annotation: { clip: false, annotations: annotations(picture, lane, colors) },
      },
    },
    plugins: [intervals(colors), lineNames(namesOf(picture), goalPercents(picture), colors)],
  };
}

function namesOf({ legibility, fatigue }: ProgressPicture): ReadonlyMap<string, string> {
  const short: Readonly<Record<string, string>> = say.progress.lineNames;
  return new Map([...legibility, ...fatigue].flatMap(({ id, label }) => (short[id] ? [[label, short[id]]] : [])));
}

const goalPercents = ({ goals }: ProgressPicture): number[] => goals.map(({ percent }) => percent);

function dataset(series: Series, color: string, axis: string, colors: ChartColors, breakMs: number): LineDataset {
  const dash = DASHES[series.id];
  return {
    label: series.label,
    data: series.points.map((point) => ({ x: point.at, y: point.value, point })),
    yAxisID: axis,
    borderColor: color,
    backgroundColor: series.id === 'unfamiliar' || series.id === 'fatigue-after' ? color : colors.sheet,
    pointStyle: series.shape,
    pointRadius: dash ? radiusOf(series.points.length) : Math.max(1.5, radiusOf(series.points.length) - 2),
    pointHoverRadius: 8,
    pointBorderWidth: 2,
    borderWidth: 2,
    ...(dash ? { borderDash: dash } : {}),
    showLine: dash !== undefined,
    // No line over a long break: what was in between is not known.
    spanGaps: breakMs,
    clip: false,
  };
}

/** Wilson intervals as thin bars through each point of legibility. */
function intervals(colors: ChartColors): Plugin<'line'> {
  return {
    id: 'intervals',
    beforeDatasetsDraw(chart) {
      const { ctx } = chart;
      const axis = chart.scales['percent'];
      const time = chart.scales['x'];
      if (!axis || !time) return;
      ctx.save();
      ctx.strokeStyle = colors.accent;
      ctx.lineWidth = 2;
      const inHand = chart.getActiveElements();
      for (const [i, set] of chart.data.datasets.entries()) {
        const few = set.data.length <= MOST_INTERVALS;
        const shown = few ? set.data : inHand.flatMap((one) => (one.datasetIndex === i ? [set.data[one.index]!] : []));
        for (const { point } of shown as unknown as DrawnPoint[]) {
          if (point.low === null || point.high === null) continue;
          const x = time.getPixelForValue(point.at);
          const [low, high] = [axis.getPixelForValue(point.low), axis.getPixelForValue(point.high)];
          ctx.beginPath();
          ctx.moveTo(x, low);
          ctx.lineTo(x, high);
          for (const y of [low, high]) {
            ctx.moveTo(x - 4, y);
            ctx.lineTo(x + 4, y);
          }
          ctx.stroke();
        }
      }
      ctx.restore();
    },
  };
}

function annotations(
  picture: ProgressPicture,
  lane: readonly LaneLabel[],
  colors: ChartColors,
): Record<string, AnnotationOptions> {
  const all: Record<string, AnnotationOptions> = {};
  const label = (content: string, position: 'start' | 'end' | 'center') => ({
    display: true,
    content,
    position,
    color: colors.ink,
    backgroundColor: colors.sheet,
    font: { family: colors.font, size: 13, weight: 'normal' as const },
    padding: 3,
  });
  const dashes = { program: [], medicine: [2, 3], conditions: [8, 4] } as const;
  picture.marks.forEach((mark, i) => {
    const line = {
      type: 'line' as const,
      xScaleID: 'x',
      xMin: mark.at,
      xMax: mark.at,
      borderColor: colors.ink,
      borderWidth: mark.kind === 'program' ? 2 : 1,
      borderDash: [...dashes[mark.kind]],
    };
    // Once through each of the two stacked axes; the names stand in the lane above.
    all[`mark-${i}`] = { ...line, yScaleID: 'percent', yMin: 0, yMax: 100 };
    all[`mark-${i}-fatigue`] = { ...line, yScaleID: 'fatigue', yMin: 0, yMax: 10 };
  });
  lane.forEach(({ at, label: words, row }, i) => {
    if (row === null) return;
    all[`lane-${i}`] = {
      type: 'line',
      xScaleID: 'x',
      yScaleID: 'percent',
      xMin: at,
      xMax: at,
      yMin: 100,
      yMax: 100,
      borderWidth: 0,
      label: {
        ...label(words, 'center'),
        // A name stays inside the chart.
        xAdjust: ({ chart }) => {
          const half = words.length * LETTER_PX + 4;
          const x = chart.scales['x']?.getPixelForValue(at) ?? 0;
          return Math.min(Math.max(x, half), Math.max(half, chart.width - half)) - x;
        },
        yAdjust: -18 - row * 16,
        padding: 0,
      },
    };
  });
  const goals = [...picture.goals].sort((a, b) => a.percent - b.percent);
  picture.goals.forEach((goal, i) => {
    all[`goal-${i}`] = {
      type: 'line',
      yScaleID: 'percent',
      yMin: goal.percent,
      yMax: goal.percent,
      borderColor: colors.good,
      borderWidth: 2,
      borderDash: [10, 3, 2, 3],
      label: {
        ...label(say.progress.goal(goal.percent), 'end'),
        xAdjust: GOAL_PX,
        // In the gutter, lower where the name of a nearer goal stands.
        yAdjust: ({ chart }) => {
          const scale = chart.scales['percent'];
          if (!scale) return 0;
          let low = Infinity;
          for (const { percent } of goals) {
            const y = scale.getPixelForValue(percent);
            low = Math.min(y, low - NAME_PX);
            if (percent === goal.percent) return low - y;
          }
          return 0;
        },
      },
    };
  });
  return all;
}
