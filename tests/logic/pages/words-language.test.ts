/** The language of typed sentences on pages of another one. */
import { expect, test } from 'vitest';
import { spokenParts } from '../../../renderer/logic/pages/sheet/words-language.ts';

test('what was typed in another language is told apart from the page’s own sentences', () => {
  expect(spokenParts('A list of five items. Un lector nuevo lee 15 de 20 palabras.', 'es')).toEqual([
    { text: 'A list of five items. ', language: 'en' },
    { text: 'Un lector nuevo lee 15 de 20 palabras.', language: null },
  ]);
  expect(spokenParts('Usted dijo: «The club orders seeds from my list.»', 'es')).toEqual([
    { text: 'Usted dijo: ', language: null },
    { text: '«The club orders seeds from my list.»', language: 'en' },
  ]);
  expect(spokenParts('Heute ging es gut mit dem Stift.', 'en')[0]!.language).toBe('de');
  expect(spokenParts('Hoy se cansó menos.', 'de')[0]!.language).toBe('es');
  // Names, numbers and what could be several stay as the page is.
  expect(spokenParts('Quillmere Hand Clinic, 555-0142', 'de')).toEqual([
    { text: 'Quillmere Hand Clinic, 555-0142', language: null },
  ]);
  expect(
    spokenParts('', 'en')
      .map((part) => part.text)
      .join(''),
  ).toBe('');
});
