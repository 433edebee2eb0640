/**
 * The printed log: a row a day, circles to mark. Drawn and read from these numbers; lengths in mm from the sheet's top
 * left corner. Whoever moves a circle raises LOG_LAYOUT, so that sheets that are still out are not misread.
 */
import { PRINTED_BANDS } from '../sheet/corner-marks.ts';

export const LOG_LAYOUT = 1;

export type LogField = 'done' | 'minutes' | 'before' | 'after' | 'pain' | 'felt';

/** A circle (taller than wide, so that a shaking hand has room) that stands for a value. */
export interface LogCircle {
  row: number;
  field: LogField;
  /** Minutes, points, 1 for done, 0 to 2 for easy, fair, hard. */
  value: number;
  x: number;
  y: number;
  rx: number;
  ry: number;
}

interface LogColumn {
  field: LogField | 'day';
  x: number;
  width: number;
}

export interface LogLayout {
  rows: number;
  top: number;
  rowMm: number;
  left: number;
  right: number;
  columns: LogColumn[];
  circles: LogCircle[];
}

export const LOG_DRAWING = { marginMm: 15, rowMm: 13.6, lineMm: 0.35, gray: 0.3, numberMm: 3.9 } as const;
/** Above the rows so much is kept for how it is marked, below them so much for two sentences. */
const [HEAD_MM, FOOT_MM] = [25, 14];

const SCALE = [0, 2, 4, 6, 8, 10];
/** Days of so few minutes that a row from 5 on could not hold them have a row of their own. */
const MINUTES = { usual: [5, 10, 15, 20, 30], few: [1, 2, 4, 6, 10] };

/** Fields in the order of their columns, with the width of a column and the distance of its circles. */
const FIELDS: readonly { field: LogField; width: number; step: number }[] = [
  { field: 'done', width: 12.8, step: 0 },
  { field: 'minutes', width: 27.7, step: 5.4 },
  { field: 'before', width: 33.5, step: 5.4 },
  { field: 'after', width: 33.5, step: 5.4 },
  { field: 'pain', width: 33.5, step: 5.4 },
  { field: 'felt', width: 21, step: 4.4 },
];
const DAY_MM = 18;
const TALL = { rx: 2.1, ry: 2.9 };
const FLAT = { rx: 2.4, ry: 1.7 };

export function logValues(field: LogField, few: boolean): number[] {
  if (field === 'done') return [1];
  if (field === 'felt') return [0, 1, 2];
  if (field === 'minutes') return few ? MINUTES.few : MINUTES.usual;
  return SCALE;
}

export function logLayout(widthMm: number, heightMm: number, few: boolean): LogLayout {
  const { marginMm: left, rowMm } = LOG_DRAWING;
  const top = PRINTED_BANDS.headMm + HEAD_MM;
  const rows = Math.floor((heightMm - PRINTED_BANDS.footMm - FOOT_MM - top) / rowMm);
  let x = left + DAY_MM;
  const columns: LogColumn[] = [{ field: 'day', x: left, width: DAY_MM }];
  const inRow: Omit<LogCircle, 'row'>[] = [];
  for (const { field, width, step } of FIELDS) {
    columns.push({ field, x, width });
    const values = logValues(field, few);
    const first = x + (width - step * (values.length - 1)) / 2;
    values.forEach((value, i) =>
      inRow.push(
        field === 'felt'
          ? { field, value, x: x + 4.2, y: 2.4 + step * i, ...FLAT }
          : { field, value, x: first + step * i, y: 9.7, ...TALL },
      ),
    );
    x += width;
  }
  const circles = Array.from({ length: rows }, (_, row) =>
    inRow.map((circle) => ({ ...circle, row, y: top + row * rowMm + circle.y })),
  ).flat();
  return { rows, top, rowMm, left, right: x, columns, circles };
}
