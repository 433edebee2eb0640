import type { PrintedArea, PrintedOn } from '../../../measure/index.ts';
import type { Packet } from '../sheet/packet.ts';
import { letterStyles, textWidth } from './letter-styles.ts';
import type { PracticeSheet } from './practice.ts';
import { type InkRole, inks, rulings } from './ruling-drawings.ts';

/** Kept free around letters and drawings, mm: print runs, and paper curls. */
const EDGE = 0.8;
/** Ends of a row with a dashed line: its first dash, and the lines above and below as far, are not seen as ruling. */
const END = { long: 2.6, side: 0.5 } as const;
/** Height of a drawing as a share of its width. */
const PICTURE = 120 / 160;

/** Text from this gray on is printed to be written over. */
const PALE_FROM = 0.7;
/** From this gray on the line to write on is told from the pen. */
const PALE_LINE = 0.45;
/** Lines that stand where letters do; those of ruled papers are found by the page itself, unless they are bold. */
const CELLS: ReadonlySet<InkRole> = new Set<InkRole>(['square', 'box', 'start']);
const BOLD: ReadonlySet<InkRole> = new Set<InkRole>(['ruled', 'baseline', 'headline', 'midline']);

type Printed = Pick<PracticeSheet, 'texts' | 'dots' | 'pictures' | 'lines' | 'bold' | 'ruling'>;

/** What is printed on a practice page: what is measured there is no writing. */
export function printedOf(sheet: Printed): PrintedOn {
  const inBoxes = sheet.lines.some(({ ink }) => ink === 'box');
  const lines = sheet.lines
    .filter(({ ink }) => CELLS.has(ink) || (sheet.bold && BOLD.has(ink)) || (inBoxes && ink === 'midline'))
    .map(({ ink, x1, y1, x2, y2 }) => {
      const { width, grey } = inks[ink][sheet.bold ? 'bold' : 'normal'];
      return { x1, y1, x2, y2, width, pale: ink === 'midline' && grey >= PALE_LINE };
    });
  const pale = sheet.texts.filter(({ grey }) => grey >= PALE_FROM);
  const texts = sheet.texts.filter(({ grey }) => grey < PALE_FROM);
  const { kind, sizeMm } = rulings[sheet.ruling];
  const cellMm = kind === 'squares' || kind === 'boxes' ? sizeMm : null;
  return { areas: areasOf({ ...sheet, texts }), pale: areasOf({ texts: pale, lines: [] }), lines, cellMm };
}

function areasOf(sheet: Pick<Printed, 'texts' | 'dots' | 'pictures' | 'lines'>): PrintedArea[] {
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
