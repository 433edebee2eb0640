import type { PrintedArea } from '../../../measure/index.ts';
import type { Packet } from '../sheet/packet.ts';
import { letterStyles, textWidth } from './letter-styles.ts';
import type { PracticeSheet } from './practice.ts';

/** Kept free around letters and drawings, mm: print runs, and paper curls. */
const EDGE = 0.8;
/** Ends of a row with a dashed line: its first dash, and the lines above and below as far, are not seen as ruling. */
const END = { long: 2.6, side: 0.5 } as const;
/** Height of a drawing as a share of its width. */
const PICTURE = 120 / 160;

/** Where letters, dots and drawings stand on a practice page: what is measured there is print, not writing. */
export function printedAreas(sheet: Pick<PracticeSheet, 'texts' | 'dots' | 'pictures' | 'lines'>): PrintedArea[] {
  const around = (x: number, y: number, width: number, height: number): PrintedArea => ({
    x: x - EDGE,
    y: y - EDGE,
    width: width + 2 * EDGE,
    height: height + 2 * EDGE,
  });
  return [
    ...sheet.texts.map(({ text, x, y, size, style, anchor }) => {
      const width = textWidth(text, style, size);
      const { ascender, descender } = letterStyles[style];
      const left = anchor === 'start' ? x : anchor === 'middle' ? x - width / 2 : x - width;
      return around(left, y - ascender * size, width, (ascender + descender) * size);
    }),
    ...sheet.lines
      .filter(({ ink }) => ink === 'mark')
      .map(({ x1, y1, y2 }) => around(x1, Math.min(y1, y2), 0, Math.abs(y2 - y1))),
    ...(sheet.lines.some(({ dashed }) => dashed) ? sheet.lines.filter(({ y1, y2 }) => y1 === y2) : []).flatMap(
      ({ x1, x2, y1 }) =>
        [x1 - EDGE, x2 - END.long].map((x): PrintedArea => ({
          x,
          y: y1 - END.side,
          width: END.long + EDGE,
          height: 2 * END.side,
        })),
    ),
    ...(sheet.dots ?? []).map(({ x, y, r }) => around(x - r, y - r, 2 * r, 2 * r)),
    ...(sheet.pictures ?? []).map(({ x, y, width }) => around(x, y, width, width * PICTURE)),
  ];
}

/** Practice sheets of issued pages by the code that stands on them. */
export function codedPractice(issued: readonly { model: unknown }[]): Map<string, PracticeSheet> {
  const found = new Map<string, PracticeSheet>();
  for (const { model } of issued)
    for (const sheet of (model as Partial<Packet> | null)?.sheets ?? [])
      if (sheet.type === 'practice' && sheet.code) found.set(sheet.code, sheet);
  return found;
}
