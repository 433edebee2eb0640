/** The engine's warnings in the shown language: English as the engine says them, and nothing left English elsewhere. */
import { expect, test } from 'vitest';
import {
  doubtWarning,
  faintWarning,
  handsWarning,
  printedWarning,
  rulingWarning,
  sizeWarning,
  slipsWarning,
  WARNINGS,
} from '../../../renderer/measure/trust/warnings.ts';
import { pageWarning } from '../../../renderer/logic/sample/measured/warning-words.ts';
import { decimalsIn } from '../../../renderer/logic/texts/decimals.ts';
import { screensIn } from '../../../renderer/logic/texts/screens/screen-languages.ts';
import { englishTelling } from '../../../renderer/logic/texts/screens/telling.ts';

const all = [
  ...Object.values(WARNINGS),
  printedWarning([0, 1], 2),
  printedWarning([2], 5),
  handsWarning(6),
  faintWarning(23.4),
  slipsWarning(['río', 'pan'], 0),
  slipsWarning([], 1),
  slipsWarning(['pan'], 3),
  doubtWarning(1),
  doubtWarning(4.2),
  rulingWarning(8.456, null),
  rulingWarning(8.456, 8.7),
  sizeWarning(0.42),
];

test('in English as the engine says them', () => {
  for (const one of all) expect(pageWarning(one, englishTelling)).toBe(one.message);
});

test.each(['es', 'de'] as const)('%s: each in its own words, with its numbers and the decimal comma', (language) => {
  const telling = { told: screensIn(language).told, decimals: decimalsIn(language) };
  for (const one of all) expect(pageWarning(one, telling), one.code).not.toBe(one.message);
  expect(pageWarning(rulingWarning(8.456, 8.7), telling)).toMatch(/8,46 mm.* 8,7 mm/);
  expect(pageWarning(handsWarning(6), telling)).toMatch(/ 7\b/);
  expect(pageWarning(slipsWarning(['pan'], 3), telling)).toMatch(/pan.*3 /);
  expect(pageWarning(printedWarning([0, 1, 2, 6], 9), telling)).toContain('1–3, 7');
  expect(pageWarning({ code: 'of-tomorrow', message: 'As the engine says it.' }, telling)).toBe(
    'As the engine says it.',
  );
});
