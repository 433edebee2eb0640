import { expect, test } from 'vitest';
import { formatLength, parseLength } from '../../../renderer/logic/setup/length.ts';

test('inches show as on a tape, to the nearest eighth', () => {
  expect(formatLength(25.4, 'in')).toBe('1 in');
  expect(formatLength(393.7, 'in')).toBe('15 1/2 in');
  expect(formatLength(9.525, 'in')).toBe('3/8 in');
  expect(formatLength(0, 'in')).toBe('0 in');
  expect(formatLength(394.4, 'mm')).toBe('394 mm');
});

test('typed lengths are read with decimals, commas, fractions and a written unit', () => {
  expect(parseLength('395', 'mm')).toBe(395);
  expect(parseLength('39,5 cm', 'mm')).toBe(395);
  expect(parseLength('15 1/2', 'in')).toBeCloseTo(393.7);
  expect(parseLength('1/2"', 'mm')).toBeCloseTo(12.7);
  expect(parseLength('400 mm', 'in')).toBe(400);
});

test('what is no length is null', () => {
  for (const text of ['', 'abc', '-3', '1/0', '151/2', '3 kg']) expect(parseLength(text, 'mm')).toBeNull();
});
