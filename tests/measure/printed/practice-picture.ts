/** A practice sheet as it is printed, and what a hand writes on it, letter by letter at known places. */
import { outlineFont, type OutlineHand } from '../../../build/letters/outline-fonts.ts';
import { textWidth } from '../../../renderer/logic/pages/practice/letter-styles.ts';
import type { PracticeSheet } from '../../../renderer/logic/pages/practice/practice.ts';
import { inks, midlineDash } from '../../../renderer/logic/pages/practice/ruling-drawings.ts';
import { sheetSvg } from './log-picture.ts';

const rgb = (grey: number): string => `rgb(${[1, 1, 1].map(() => Math.round(255 * grey)).join(',')})`;

/** The printed drawing of the sheet, with marks and code, and `written` over it. */
export function practiceSvg(sheet: PracticeSheet, code: string, written: readonly string[]): string {
  const lines = sheet.lines.map(({ ink, dashed, x1, y1, x2, y2 }) => {
    const { width, grey } = inks[ink][sheet.bold ? 'bold' : 'normal'];
    const dash = dashed ? ` stroke-dasharray="${midlineDash.join(' ')}"` : '';
    return `<line x1="${x1}" y1="${y1}" x2="${x2}" y2="${y2}" stroke="${rgb(grey)}" stroke-width="${width}"${dash}/>`;
  });
  const texts = sheet.texts.map(({ text, x, y, size, style, grey, anchor }) =>
    printedText(text, x, y, size, textWidth(text, style, size), { anchor, gray: 255 * grey }),
  );
  const dots = (sheet.dots ?? []).map(({ x, y, r }) => `<circle cx="${x}" cy="${y}" r="${r}"/>`);
  return sheetSvg(code, [...lines, ...texts, ...dots, ...written]);
}

/** Type as wide as the printed page has it; its letters stand in for those of the page's own. */
function printedText(text: string, x: number, y: number, size: number, width: number, how: Penned): string {
  const own = widthOf(text, 0.5 * size, 1.4);
  return `<g transform="translate(${x} ${y}) scale(${width / own} 1)">${penned(text, 0, 0, 0.5 * size, how)}</g>`;
}

const widthOf = (text: string, xHeightMm: number, wordGap: number): number =>
  [...text].reduce(
    (sum, char) => sum + (char === ' ' ? wordGap : outlineFont('patrick-hand').glyph(char).advance) * xHeightMm,
    0,
  );

interface Penned {
  hand?: OutlineHand;
  anchor?: 'start' | 'middle' | 'end';
  gray?: number;
  wordGap?: number;
}

/** A line of writing on a baseline, from x on; x-height in mm. */
export function penned(text: string, x: number, y: number, xHeightMm: number, how: Penned = {}): string {
  const { hand = 'patrick-hand', anchor = 'start', gray = 40, wordGap = 1.4 } = how;
  const font = outlineFont(hand);
  const advance = (char: string): number => (char === ' ' ? wordGap : font.glyph(char).advance) * xHeightMm;
  const width = [...text].reduce((sum, char) => sum + advance(char), 0);
  let at = anchor === 'start' ? x : anchor === 'middle' ? x - width / 2 : x - width;
  const paths: string[] = [];
  for (const char of text) {
    if (char !== ' ')
      for (const ring of font.glyph(char).rings) {
        const points: string[] = [];
        for (let i = 0; i + 1 < ring.length; i += 2)
          points.push(`${(at + ring[i]! * xHeightMm).toFixed(3)} ${(y - ring[i + 1]! * xHeightMm).toFixed(3)}`);
        paths.push(`M${points.join('L')}Z`);
      }
    at += advance(char);
  }
  return `<path d="${paths.join('')}" fill="rgb(${gray},${gray},${gray})" fill-rule="nonzero"/>`;
}

/** One letter in the middle of each cell of a row; a space leaves one empty. */
export const inCells = (text: string, left: number, cell: number, y: number, xHeightMm: number): string =>
  [...text]
    .map((char, i) => (char === ' ' ? '' : penned(char, left + (i + 0.5) * cell, y, xHeightMm, { anchor: 'middle' })))
    .join('');
