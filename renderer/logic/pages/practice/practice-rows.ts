import type { TypeStyle } from './letter-styles.ts';
import type { Area } from './sheet-sizes.ts';
import type { InkRole, Ruling } from './ruling-drawings.ts';

export interface DrawnLine {
  ink: InkRole;
  dashed: boolean;
  x1: number;
  y1: number;
  x2: number;
  y2: number;
}

export interface DrawnText {
  text: string;
  x: number;
  /** Baseline. */
  y: number;
  /** Font size. */
  size: number;
  style: TypeStyle;
  grey: number;
  anchor: 'start' | 'middle' | 'end';
}

export interface DrawnDot {
  x: number;
  y: number;
  r: number;
}

/** A line drawing on its field of 160 by 120, scaled to `width`. */
export interface DrawnPicture {
  name: string;
  x: number;
  y: number;
  width: number;
}

/** Vertical room of a row and where its writing stands, from the row's top. */
export interface RowShape {
  height: number;
  baseline: number;
}

export function rowShape(ruling: Ruling): RowShape {
  const s = ruling.sizeMm;
  switch (ruling.kind) {
    case 'dashed':
      return { height: 2 * s, baseline: s };
    case 'boxes':
      return { height: s * 1.75, baseline: s * 0.7 };
    case 'signature':
      return { height: s + 9, baseline: s * 0.72 };
    case 'check':
      return { height: s + 10, baseline: s };
    case 'plain':
      return { height: 12, baseline: 9 };
    case 'dots':
      return { height: s + 14, baseline: s };
    default:
      return { height: s, baseline: ruling.kind === 'squares' ? s * 0.7 : s };
  }
}

export function line(ink: InkRole, x1: number, y1: number, x2: number, y2: number, dashed = false): DrawnLine {
  return { ink, dashed, x1, y1, x2, y2 };
}

/** Lines of one row. Squares share their lines, so the grid is drawn once for the sheet instead. */
export function rowLines(ruling: Ruling, area: Area, top: number): DrawnLine[] {
  const left = area.x;
  const right = area.x + area.width;
  const s = ruling.sizeMm;
  switch (ruling.kind) {
    case 'dashed':
      return [
        line('headline', left, top, right, top),
        line('midline', left, top + s / 2, right, top + s / 2, true),
        line('baseline', left, top + s, right, top + s),
      ];
    case 'ruled':
      return [line('ruled', left, top + s, right, top + s)];
    case 'guide':
      return [line('guide', left, top + s, right, top + s)];
    case 'boxes': {
      const count = Math.floor(area.width / s + 1e-9);
      const end = left + count * s;
      const rails = [line('box', left, top, end, top), line('box', left, top + s, end, top + s)];
      for (let i = 0; i <= count; i++) rails.push(line('box', left + i * s, top, left + i * s, top + s));
      return rails;
    }
    default:
      return [];
  }
}

/** Dots up and down in turn, to be joined one after the other. */
export function dotRow(area: Area, top: number, { sizeMm }: Ruling): DrawnDot[] {
  const r = 1.6;
  const count = Math.floor((area.width - 2 * r) / sizeMm + 1e-9) + 1;
  return Array.from({ length: count }, (_, i) => ({
    x: area.x + r + i * sizeMm,
    y: top + (i % 2 === 0 ? sizeMm : 6),
    r,
  }));
}

/** Lines that lean 10 degrees to the right, from the top to the bottom of the area. */
export function leaningLines(area: Area, { sizeMm }: Ruling): DrawnLine[] {
  const run = area.height * Math.tan((10 * Math.PI) / 180);
  const count = Math.floor((area.width - run) / sizeMm + 1e-9) + 1;
  return Array.from({ length: count }, (_, i) => {
    const x = area.x + i * sizeMm;
    return line('guide', x, area.y + area.height, x + run, area.y);
  });
}

/** Share of the row at which a short line stops. */
const stopShare = 0.6;

/** Where a short line stops, across the row from its top to its baseline. */
export function stopMark(area: Area, top: number, shape: RowShape): DrawnLine {
  const x = area.x + area.width * stopShare;
  return line('mark', x, top, x, top + shape.baseline + 1.5);
}

/** A dot on the baseline where a row starts, and one where it ends. */
export function rowDots(area: Area, y: number): DrawnDot[] {
  const r = 1.2;
  return [
    { x: area.x + r, y, r },
    { x: area.x + area.width - r, y, r },
  ];
}

const signatureBox = { width: 80, gap: 12 };
/** From this height on a box has the row to itself. */
const largeBox = 30;

export function signatureRow(
  area: Area,
  top: number,
  size: number,
  mark: string,
): { lines: DrawnLine[]; texts: DrawnText[] } {
  const lines: DrawnLine[] = [];
  const texts: DrawnText[] = [];
  const large = size >= largeBox;
  const width = large ? Math.min(area.width, 2 * signatureBox.width) : signatureBox.width;
  for (const left of large ? [area.x] : [area.x, area.x + signatureBox.width + signatureBox.gap]) {
    const right = left + width;
    const bottom = top + size;
    lines.push(line('box', left, top, right, top), line('box', left, bottom, right, bottom));
    lines.push(line('box', left, top, left, bottom), line('box', right, top, right, bottom));
    lines.push(line('midline', left + 4, top + size * 0.72, right - 4, top + size * 0.72));
    // Overprinted so that no practiced signature can be used as a real one.
    texts.push({
      text: mark,
      x: (left + right) / 2,
      y: top + size * 0.64,
      size: 11,
      style: 'page-bold',
      grey: 0.84,
      anchor: 'middle',
    });
  }
  return { lines, texts };
}
