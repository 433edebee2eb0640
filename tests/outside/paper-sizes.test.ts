/**
 * Paper sizes and rulings against what is published.
 * Sources: ISO 216 (A4 210 x 297 mm); US Letter 8.5 x 11 in; US ruling distances 11/32, 9/32 and 1/4 in (ruled-paper
 * reference); 1 in = 25.4 mm. Line counts at 20 mm top and bottom margins: computed from the sizes.
 */
import { expect, test } from 'vitest';
import { sheetSizes } from '../../renderer/logic/pages/practice/sheet-sizes.ts';
import { rulings } from '../../renderer/logic/pages/practice/ruling-drawings.ts';

const inch = 25.4;

test('sheets are those of ISO 216 and US Letter', () => {
  expect(sheetSizes.A4).toMatchObject({ widthMm: 210, heightMm: 297 });
  expect(sheetSizes.Letter.widthMm).toBeCloseTo(8.5 * inch, 6);
  expect(sheetSizes.Letter.heightMm).toBeCloseTo(11 * inch, 6);
});

test('US rulings are within 0.05 mm of 11/32, 9/32 and 1/4 inch', () => {
  expect(Math.abs(rulings['ruled-8.7'].sizeMm - (11 / 32) * inch)).toBeLessThan(0.05);
  expect(Math.abs(rulings['ruled-7.1'].sizeMm - (9 / 32) * inch)).toBeLessThan(0.05);
  expect(Math.abs(rulings['ruled-6.35'].sizeMm - (1 / 4) * inch)).toBeLessThan(0.05);
});

test.each([
  ['A4', 8.7, 29],
  ['A4', 7.1, 36],
  ['A4', 6.35, 40],
  ['A4', 10, 25],
  ['A4', 12, 21],
  ['Letter', 8.7, 27],
  ['Letter', 7.1, 33],
  ['Letter', 6.35, 37],
  ['Letter', 10, 23],
  ['Letter', 12, 19],
] as const)('%s at %d mm holds %d lines between margins of 20 mm', (sheet, mm, lines) => {
  expect(Math.floor((sheetSizes[sheet].heightMm - 40) / mm)).toBe(lines);
});
