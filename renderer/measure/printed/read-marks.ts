import { quantile } from '../../statistics/order-statistics.ts';
import type { Area } from '../sheet/sheet-part.ts';
import type { GrayImage } from '../types.ts';
import { LOG_DRAWING, type LogCircle, type LogField, type LogLayout } from './log-layout.ts';

/**
 * When a circle counts as marked. Own design; the rates of false and doubtful ones stand in DEVELOPERS.md. A filled
 * circle is inked over half its inside, a cross over a third and in all four quarters; a single line through it may be a
 * slip of the pen.
 */
const MARK_LIMITS = {
  /** Share of the inside that is inked: below the first nothing was marked, from the second on it was. */
  least: 0.045,
  sure: 0.24,
  /** Share of a quarter of the inside, without the cross in its middle, from which it counts as inked. */
  quarter: 0.08,
  /** Darkness of ink, as a share of the way from paper to print. */
  inkFrom: 0.13,
  /** Inked share of a line around the circle, from which somebody drew a ring about it. */
  ring: 0.36,
} as const;

/** Inked shares of a circle's inside and of a line around it, 0 to 1, and how many quarters of the inside hold ink. */
interface ReadCircle {
  value: number;
  ink: number;
  quarters: number;
  ring: number;
}

/** How one field of a day was read. */
export interface ReadField {
  row: number;
  field: LogField;
  /** The value of the circle that is marked, or most likely is; null where none is. */
  value: number | null;
  /** Whether a person has to look: a faint or half mark, two marks, a ring about a circle. */
  doubt: boolean;
  circles: ReadCircle[];
  /** The field with its numbers on the straight sheet, mm. */
  box: Area;
}

const AROUND = Array.from(
  { length: 36 },
  (_, i) => [Math.cos((i * Math.PI) / 18), Math.sin((i * Math.PI) / 18)] as const,
);
/** The inside begins this far from the middle of the printed line, mm: line, registration and blur. */
const RIM_MM = 0.6;
const RING_AT = 1.38;

interface Sheet {
  image: GrayImage;
  pxPerMm: number;
  /** Gray of solid print. */
  black: number;
}

const grayAt = ({ image, pxPerMm }: Sheet, x: number, y: number): number => {
  const column = Math.min(image.width - 1, Math.max(0, Math.round(x * pxPerMm - 0.5)));
  const row = Math.min(image.height - 1, Math.max(0, Math.round(y * pxPerMm - 0.5)));
  return image.data[row * image.width + column]!;
};

/** How well printed circles fit the picture when moved: dark on their line, paler beside it. */
function fitOf(sheet: Sheet, circles: readonly LogCircle[], dx: number, dy: number): number {
  let sum = 0;
  for (const { x, y, rx, ry } of circles)
    for (let i = 0; i < AROUND.length; i += 2) {
      const [cos, sin] = AROUND[i]!;
      const on = grayAt(sheet, x + dx + rx * cos, y + dy + ry * sin);
      const out = grayAt(sheet, x + dx + (rx + 0.55) * cos, y + dy + (ry + 0.55) * sin);
      const inside = grayAt(sheet, x + dx + (rx - 0.55) * cos, y + dy + (ry - 0.55) * sin);
      // A mark over the line makes no fit better than print does.
      sum += Math.min(60, Math.max(-60, out - on)) + 0.5 * Math.min(60, Math.max(-60, inside - on));
    }
  return sum;
}

/** Where printed circles lie in the picture: a sheet that curls moves them. */
function shiftOf(
  sheet: Sheet,
  circles: readonly LogCircle[],
  from: readonly [number, number],
  reach: number,
  step: number,
) {
  let best = { dx: from[0], dy: from[1], fit: -Infinity };
  const steps = Math.round(reach / step);
  for (let j = -steps; j <= steps; j += 1)
    for (let i = -steps; i <= steps; i += 1) {
      const [dx, dy] = [from[0] + i * step, from[1] + j * step];
      const fit = fitOf(sheet, circles, dx, dy) - Math.hypot(i, j) * 1e-3;
      if (fit > best.fit) best = { dx, dy, fit };
    }
  return best;
}

/** What was written in and around one circle. */
function inkOf(sheet: Sheet, { x, y, rx, ry, value }: LogCircle): ReadCircle {
  const { pxPerMm } = sheet;
  const step = Math.max(1 / pxPerMm, 0.1);
  const near: number[] = [];
  for (let v = -ry - 1.2; v <= ry + 1.2; v += 0.3)
    for (let u = -rx - 0.6; u <= rx + 0.6; u += 0.3)
      if (Math.hypot(u / (rx + 0.5), v / (ry + 0.5)) > 1) near.push(grayAt(sheet, x + u, y + v));
  const paper = quantile(near, 0.8) ?? 255;
  const contrast = Math.max(20, paper - sheet.black);
  const limit = paper - MARK_LIMITS.inkFrom * contrast;
  // Noise of a picture is smaller than a pen's line: the mean of a few pixels tells them apart.
  const soft = (px: number, py: number): number => {
    const d = 0.12;
    return (
      (grayAt(sheet, px - d, py - d) +
        grayAt(sheet, px + d, py - d) +
        grayAt(sheet, px - d, py + d) +
        grayAt(sheet, px + d, py + d) +
        grayAt(sheet, px, py)) /
      5
    );
  };
  const [inX, inY] = [rx - RIM_MM, ry - RIM_MM];
  let [dark, all] = [0, 0];
  const quarters = Array.from({ length: 4 }, () => ({ dark: 0, all: 0 }));
  for (let v = -inY; v <= inY; v += step)
    for (let u = -inX; u <= inX; u += step) {
      if ((u / inX) ** 2 + (v / inY) ** 2 > 1) continue;
      all += 1;
      const inked = soft(x + u, y + v) < limit ? 1 : 0;
      dark += inked;
      if (Math.abs(u) < 0.25 * inX || Math.abs(v) < 0.25 * inY) continue;
      const quarter = quarters[(u < 0 ? 0 : 1) + (v < 0 ? 0 : 2)]!;
      quarter.all += 1;
      quarter.dark += inked;
    }
  const ring = AROUND.filter(([cos, sin]) => soft(x + rx * RING_AT * cos, y + ry * RING_AT * sin) < limit).length;
  return {
    value,
    ink: dark / all,
    quarters: quarters.filter((each) => each.dark >= MARK_LIMITS.quarter * each.all).length,
    ring: ring / AROUND.length,
  };
}

/** Marks of every field of a log on the straight sheet. */
export function readMarks(image: GrayImage, pxPerMm: number, layout: LogLayout, black: number): ReadField[] {
  const sheet = { image, pxPerMm, black };
  const fields: ReadField[] = [];
  let last: [number, number] = [0, 0];
  for (let row = 0; row < layout.rows; row += 1) {
    const inRow = layout.circles.filter((circle) => circle.row === row);
    const coarse = shiftOf(sheet, inRow, last, 1.2, 0.3);
    last = [coarse.dx, coarse.dy];
    for (const column of layout.columns) {
      const circles = inRow.filter((circle) => circle.field === column.field);
      if (column.field === 'day' || circles.length === 0) continue;
      const { dx, dy } = shiftOf(sheet, circles.length > 2 ? circles : inRow, last, 0.45, 0.15);
      const read = circles.map((circle) => inkOf(sheet, { ...circle, x: circle.x + dx, y: circle.y + dy }));
      const top = layout.top + row * layout.rowMm + dy;
      const box = { x: column.x + dx, y: top, width: column.width, height: LOG_DRAWING.rowMm };
      fields.push({ row, field: column.field, ...judged(read), circles: read, box });
    }
  }
  return fields;
}

/** Which circle of a field is marked, and whether that is sure. */
function judged(read: readonly ReadCircle[]): Pick<ReadField, 'value' | 'doubt'> {
  const { least, sure, ring } = MARK_LIMITS;
  const touched = read.filter((circle) => circle.ink >= least || circle.ring >= ring);
  if (touched.length === 0) return { value: null, doubt: false };
  const strongest = touched.reduce((best, each) => (each.ink > best.ink ? each : best));
  return { value: strongest.value, doubt: touched.length > 1 || strongest.ink < sure || strongest.quarters < 4 };
}
