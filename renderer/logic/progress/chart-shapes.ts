/** Where everything of the progress chart stands: plain numbers and SVG paths in px, for screen and paper alike. */
import { eventLane, type LaneLabel } from './event-lane.ts';
import type { ProgressPicture, Series, SeriesPoint } from './series.ts';
import { timeTicks, type TimeTick } from './time-ticks.ts';

/** Two panels over one time axis: percent of words above, fatigue below. */
interface Panel {
  top: number;
  bottom: number;
  /** Value at the top; 0 lies at the bottom. */
  most: number;
  ticks: { y: number; value: number }[];
}

interface ChartSeries {
  label: string;
  tone: 'accent' | 'ink' | 'soft';
  filled: boolean;
  dash: string;
  /** Joined points, broken at a long pause; empty where points are not joined. */
  line: string;
  /** All points of the series as one path; empty where they would be a smear. */
  points: string;
  /** Wilson intervals as one path; empty where they would be a hatching. */
  intervals: string;
}

/** A point to walk to. */
interface ChartPoint {
  x: number;
  y: number;
  /** Its own interval, for when it has the focus. */
  interval: string;
  point: SeriesPoint;
  series: Series;
}

interface ChartShapes {
  left: number;
  right: number;
  percent: Panel;
  fatigue: Panel;
  ticks: TimeTick[];
  series: ChartSeries[];
  /** Oldest first. */
  points: ChartPoint[];
  marks: { x: number; kind: ProgressPicture['marks'][number]['kind'] }[];
  lane: (LaneLabel & { x: number })[];
  goals: { y: number; labelY: number; percent: number }[];
}

const DAY_MS = 86_400_000;
/** Room for the axis words at the left, for goals at the right, for dates below, between the panels; px. */
const ROOM = { left: 60, goals: 78, right: 12, dates: 24, between: 22, laneRow: 16 };
/** Share of the height of the percent panel. */
const PERCENT_SHARE = 0.72;
/** Points shrink as they grow many; past the last number only the line is drawn. */
const RADIUS: readonly (readonly [number, number])[] = [
  [24, 5],
  [60, 3],
  [120, 1.5],
];
const radiusOf = (count: number): number => RADIUS.find(([most]) => count <= most)?.[1] ?? 0;
/** Intervals of more points than this would be a hatching: then only the point in hand shows its own. */
const MOST_INTERVALS = 40;
/** Half of the bar at either end of an interval, px. */
const CAP = 4;
/** Least distance between the names of two goals, px. */
const NAME_PX = 15;
/** Dashes, so that lines differ without color; a series without an entry is not joined by lines at all. */
const DASHES: Record<string, string> = {
  unfamiliar: '',
  family: '6 4',
  therapist: '2 3',
  'fatigue-before': '3 3',
  'fatigue-after': '',
};

const round = (n: number): number => Math.round(n * 10) / 10;

/** One symbol of radius `r` around a place, as a path. */
export function symbolPath(shape: Series['shape'], x: number, y: number, r: number): string {
  const a = r * 0.88;
  const from = `M${round(x)} ${round(y)}`;
  const cross = `${from}m${-r} 0h${2 * r}m${-r} ${-r}v${2 * r}`;
  const crossRot = `${from}m${-a} ${-a}l${2 * a} ${2 * a}m0 ${-2 * a}l${-2 * a} ${2 * a}`;
  switch (shape) {
    case 'circle':
      return `${from}m${-r} 0a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0z`;
    case 'triangle':
      return `${from}m0 ${-r}l${r} ${1.7 * r}h${-2 * r}z`;
    case 'rect':
      return `${from}m${-a} ${-a}h${2 * a}v${2 * a}h${-2 * a}z`;
    case 'rectRot':
      return `${from}m0 ${-r}l${r} ${r}l${-r} ${r}l${-r} ${-r}z`;
    case 'cross':
      return cross;
    case 'crossRot':
      return crossRot;
    case 'star':
      return cross + crossRot;
  }
}

function panel(top: number, bottom: number, most: number, step: number): Panel {
  const values = Array.from({ length: most / step + 1 }, (_, i) => i * step);
  return { top, bottom, most, ticks: values.map((value) => ({ value, y: bottom - (value / most) * (bottom - top) })) };
}
const yIn = (panel: Panel, value: number): number => panel.bottom - (value / panel.most) * (panel.bottom - panel.top);
/** The value that stands at a height: by this the drawing is checked. */
export const valueAt = (panel: Panel, y: number): number =>
  ((panel.bottom - y) / (panel.bottom - panel.top)) * panel.most;

/** @param width,height of the whole chart, px */
export function chartShapes(picture: ProgressPicture, width: number, height: number): ChartShapes {
  const all = [...picture.legibility, ...picture.fatigue];
  const times = [...all.flatMap((series) => series.points.map((p) => p.at)), ...picture.marks.map((mark) => mark.at)];
  const [first, last] = [Math.min(...times), Math.max(...times)];
  const space = Math.max(3 * DAY_MS, (last - first) * 0.04);
  const [from, to] = [first - space, last + space];
  const left = ROOM.left;
  const right = width - (picture.goals.length > 0 ? ROOM.goals : ROOM.right);
  const xOf = (at: number): number => left + ((at - from) / (to - from)) * (right - left);
  const names = eventLane(picture.marks, (at) => xOf(at) - left, right - left);
  const rows = names.some((one) => one.row === 1) ? 2 : names.length > 0 ? 1 : 0;
  const top = 10 + rows * ROOM.laneRow;
  const inside = height - top - ROOM.dates - ROOM.between;
  const percent = panel(top, top + inside * PERCENT_SHARE, 100, 20);
  const fatigue = panel(percent.bottom + ROOM.between, height - ROOM.dates, 10, 5);
  const intervalOf = (x: number, { low, high }: SeriesPoint): string =>
    low === null || high === null
      ? ''
      : `M${round(x)} ${round(yIn(percent, low))}V${round(yIn(percent, high))}` +
        [low, high].map((v) => `M${round(x - CAP)} ${round(yIn(percent, v))}h${2 * CAP}`).join('');
  const points: ChartPoint[] = [];
  const series = all.map((one): ChartSeries => {
    const own = picture.legibility.includes(one) ? percent : fatigue;
    const dash = DASHES[one.id];
    const radius = radiusOf(one.points.length);
    const r = dash === undefined ? Math.max(1.5, radius - 2) : radius;
    let line = '';
    let before: SeriesPoint | undefined;
    const symbols: string[] = [];
    const bars: string[] = [];
    for (const point of one.points) {
      const [x, y] = [xOf(point.at), yIn(own, point.value)];
      // No line over a long break: what was in between is not known.
      const joined = before && point.at - before.at <= picture.breakDays * DAY_MS;
      line += `${joined ? 'L' : 'M'}${round(x)} ${round(y)}`;
      before = point;
      if (r > 0) symbols.push(symbolPath(one.shape, x, y, r));
      if (one.points.length <= MOST_INTERVALS) bars.push(intervalOf(x, point));
      points.push({ x, y, interval: intervalOf(x, point), point, series: one });
    }
    return {
      label: one.label,
      tone: own === percent ? 'accent' : one.from === 'log' ? 'soft' : 'ink',
      filled: one.id === 'unfamiliar' || one.id === 'fatigue-after',
      dash: dash ?? '',
      line: dash === undefined ? '' : line,
      points: symbols.join(''),
      intervals: bars.join(''),
    };
  });
  let low = Infinity;
  const goals = [...picture.goals]
    .sort((a, b) => a.percent - b.percent)
    .map((goal) => {
      const y = yIn(percent, goal.percent);
      low = Math.min(y, low - NAME_PX);
      return { y, labelY: low, percent: goal.percent };
    });
  return {
    left,
    right,
    percent,
    fatigue,
    ticks: Number.isFinite(from) ? timeTicks(from, to, xOf, right - left) : [],
    series,
    points: points.sort((a, b) => a.point.at - b.point.at),
    marks: picture.marks.map((mark) => ({ x: xOf(mark.at), kind: mark.kind })),
    lane: names.map((one) => ({ ...one, x: xOf(one.at) })),
    goals,
  };
}
