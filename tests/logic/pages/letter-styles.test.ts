import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import opentype from 'opentype.js';
import { expect, test } from 'vitest';
import { printHandFont } from '../../../build/letters/print-hand.ts';
import {
  breakLines,
  fontSizeFor,
  letterStyles,
  textWidth,
  type TypeStyle,
} from '../../../renderer/logic/pages/practice/letter-styles.ts';

const require = createRequire(import.meta.url);
const files: Record<TypeStyle, string> = {
  print: '../../../renderer/window/pages/fonts/fairhand-print.otf',
  joined: '@fontsource/playwrite-us-trad/files/playwrite-us-trad-latin-400-normal.woff',
  page: '@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-400-normal.woff',
  'page-bold': '@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-700-normal.woff',
};

function load(style: TypeStyle) {
  const bytes = readFileSync(require.resolve(files[style]));
  return opentype.parse(bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.length) as ArrayBuffer);
}

const median = (values: number[]) => values.sort((a, b) => a - b)[Math.floor(values.length / 2)]!;

test.each(Object.keys(files) as TypeStyle[])('%s: heights and widths are those of the font file', (style) => {
  const font = load(style);
  const em = font.unitsPerEm;
  const box = (letter: string) =>
    (font.charToGlyph(letter) as unknown as { getBoundingBox(): { y1: number; y2: number } }).getBoundingBox();
  const kept = letterStyles[style];
  expect(median([...'acemnorsuvwxz'].map((c) => box(c).y2)) / em).toBeCloseTo(kept.xHeight, 3);
  expect(median([...'bdhkl'].map((c) => box(c).y2)) / em).toBeCloseTo(kept.ascender, 3);
  expect(-median([...'gpqy'].map((c) => box(c).y1)) / em).toBeCloseTo(kept.descender, 2);
  expect(kept.widths).toHaveLength(95);
  kept.widths.forEach((width, i) =>
    expect(
      Math.abs(width - ((font.charToGlyph(String.fromCharCode(32 + i)).advanceWidth ?? 0) * 1000) / em),
    ).toBeLessThan(0.51),
  );
});

test('the print hand in the repository is the one that its pen paths make', () => {
  // The file also holds the time it was made, so outlines are compared.
  const made = printHandFont();
  const again = opentype.parse(made.buffer.slice(0) as ArrayBuffer);
  const kept = load('print');
  for (const letter of 'abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789.,?!&$áñüß') {
    const [a, b] = [kept, again].map((font) => JSON.stringify(font.charToGlyph(letter).getPath(0, 0, 1000).commands));
    expect(a === b, letter).toBe(true);
    expect(a!.length).toBeGreaterThan(100);
  }
});

test('print letters fill three equal zones: tall twice, hanging once the height of the others', () => {
  const { xHeight, ascender, descender } = letterStyles.print;
  expect(ascender / xHeight).toBeCloseTo(2, 6);
  expect(descender / xHeight).toBeCloseTo(1, 6);
});

test('a font size gives exactly the x-height asked for', () => {
  expect(fontSizeFor('print', 4.35) * letterStyles.print.xHeight).toBeCloseTo(4.35, 10);
});

test('no broken line is wider than the line, and no word is lost', () => {
  const text = 'Please leave the package by the back gate, and ring twice. Unbelievablylongwordwithoutanyspaces';
  const lines = breakLines(text, 'page', 14, 150);
  for (const line of lines) expect(textWidth(line, 'page', 14)).toBeLessThanOrEqual(150);
  expect(lines.join('').replaceAll(' ', '')).toBe(text.replaceAll(' ', ''));
});
