/** Measures as a therapist reads them: a number with its unit, a course with how much and which way. */
import { expect, test } from 'vitest';
import { bothRanges, showMeasure, showOnPage } from '../../../renderer/logic/sample/measured/show-measure.ts';
import { decimalsIn } from '../../../renderer/logic/texts/decimals.ts';
import { screensIn } from '../../../renderer/logic/texts/screens/screen-languages.ts';
import { englishTelling } from '../../../renderer/logic/texts/screens/telling.ts';

const of = (code: string, unit: string, value: number, low: number, high: number) => ({
  ...{ code, name: '', unit, value, low, high, n: 4, method: '', handLow: null, handHigh: null },
});

test('a margin wanders to a side by millimeters, a line', () => {
  const drift = of('margin-drift', 'mm per line', 0.84, -0.33, 2.01);
  expect(showOnPage(drift, englishTelling)).toBe('0.84 mm to the right each line, on this page');
  expect(showMeasure({ ...drift, value: -0.84 }, englishTelling)).toBe('0.84 mm to the left each line');
  expect(bothRanges(drift, englishTelling).page).toBe('0.33 mm to the left to 2.01 mm to the right each line');
  expect(showMeasure({ ...drift, value: 0.004 }, englishTelling)).toBe('no change each line');
  const spanish = { told: screensIn('es').told, decimals: decimalsIn('es') };
  expect(showMeasure(drift, spanish)).toBe('0,84 mm a la derecha cada línea');
});

test('size changes by percent, a word, a letter or a line', () => {
  // exp(-0.0425) = 0.9584: a slope of ln(height) is told as percent.
  expect(showMeasure(of('', 'ln(x-height) per word', -0.0425, 0, 0), englishTelling)).toBe('4.16 % smaller each word');
  expect(showMeasure(of('', '% per line', -1.79, 0, 0), englishTelling)).toBe('1.79 % smaller each line');
  expect(showMeasure(of('', 'mm', 2.86, 0, 0), englishTelling)).toBe('2.86 mm');
});
