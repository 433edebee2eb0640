import type { LetterStyleCode } from './letter-styles.ts';
import type { Area } from './sheet-sizes.ts';
import type { Ruling } from './ruling-drawings.ts';
import { line } from './practice-rows.ts';
import type { DrawnLine, DrawnText } from './practice-rows.ts';

export function gridLines(ruling: Ruling, area: Area): DrawnLine[] {
  const s = ruling.sizeMm;
  const columns = Math.floor(area.width / s + 1e-9);
  const rows = Math.floor(area.height / s + 1e-9);
  const lines: DrawnLine[] = [];
  for (let i = 0; i <= rows; i++)
    lines.push(line('square', area.x, area.y + i * s, area.x + columns * s, area.y + i * s));
  for (let i = 0; i <= columns; i++)
    lines.push(line('square', area.x + i * s, area.y, area.x + i * s, area.y + rows * s));
  return lines;
}

/** One letter in each square or box; a space leaves one empty. */
export function lettersInCells(
  text: string,
  ruling: Ruling,
  area: Area,
  y: number,
  size: number,
  style: LetterStyleCode,
) {
  const columns = Math.floor(area.width / ruling.sizeMm + 1e-9);
  return [...text]
    .slice(0, columns)
    .flatMap((letter, i): DrawnText[] =>
      letter === ' '
        ? []
        : [{ text: letter, x: area.x + (i + 0.5) * ruling.sizeMm, y, size, style, grey: 0.15, anchor: 'middle' }],
    );
}

export function breakIntoCells(text: string, columns: number): string[] {
  const rows: string[] = [];
  let row = '';
  for (const word of text.split(/\s+/).filter(Boolean)) {
    if (row && row.length + 1 + word.length > columns) {
      rows.push(row);
      row = word;
    } else row = row ? `${row} ${word}` : word;
  }
  if (row) rows.push(row);
  return rows;
}
