import { expect, test } from 'vitest';
import { helpEn } from '../../../renderer/logic/texts/screens/help/help-en.ts';

// Plain words: no sentence of help longer than 25 words (common practice, no source).
test.each(Object.entries(helpEn))('help of %s is short', (_screen, { purpose, steps }) => {
  expect(purpose).toMatch(/\.$/);
  expect(steps.length).toBeGreaterThan(0);
  for (const sentence of [purpose, ...steps].flatMap((words) => words.split(/(?<=[.?!]) /)))
    expect(sentence.split(' ').length, sentence).toBeLessThanOrEqual(25);
});
