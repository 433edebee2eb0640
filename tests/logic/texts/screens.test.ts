/** Words of the screens in other languages: every group is there, nothing is left English, no value is dropped. */
import { expect, test } from 'vitest';
import { screensEn } from '../../../renderer/logic/texts/screens/en/screens-en.ts';
import { messages } from '../../../electron/contract/messages.ts';
import { refusalsDe } from '../../../renderer/logic/texts/screens/de/told/refusals-de.ts';
import { refusalsEs } from '../../../renderer/logic/texts/screens/es/told/refusals-es.ts';
import { screensIn } from '../../../renderer/logic/texts/screens/screen-languages.ts';

type Say = (...given: unknown[]) => unknown;

/** Each text with its path; a text that takes values is said with a mark for each, then with numbers, then with none. */
function said(texts: unknown, path = ''): Map<string, string> {
  const out = new Map<string, string>();
  if (typeof texts === 'string') return out.set(path, texts);
  if (typeof texts === 'function') {
    const marks = Array.from({ length: 8 }, (_, i) => `<${i}>`);
    for (const [way, given] of Object.entries({ marks, one: Array(8).fill(1), none: Array(8).fill(null) }))
      out.set(`${path}(${way})`, String((texts as Say)(...given)));
    return out;
  }
  for (const [key, inner] of Object.entries(texts as object))
    for (const [at, text] of said(inner, path === '' ? key : `${path}.${key}`)) out.set(at, text);
  return out;
}

test.each(['es', 'de'] as const)('%s: complete, nothing left in English, each value shown', (language) => {
  expect(Object.keys(screensIn(language)).sort()).toEqual(Object.keys(screensEn).sort());
  const english = said(screensEn);
  const other = said(screensIn(language));
  expect([...other.keys()].sort()).toEqual([...english.keys()].sort());
  const faults = [...english].flatMap(([path, text]) => {
    const own = other.get(path)!;
    const marks = (words: string): string[] => [...new Set(words.match(/<\d>/g) ?? [])].sort();
    const sentence = (text.replaceAll('null', '').match(/\p{L}{3,}/gu) ?? []).length >= 3;
    if (sentence && own === text) return [`${path}: still English`];
    if (text.trim() !== '' && own.trim() === '') return [`${path}: empty`];
    if (/undefined|\[object/.test(own)) return [`${path}: ${own}`];
    if (JSON.stringify(marks(own)) !== JSON.stringify(marks(text)))
      return [`${path}: ${marks(text)} but ${marks(own)}`];
    // What a sentence is joined to needs its space.
    if (/^\s/.test(text) !== /^\s/.test(own) || /\s$/.test(text) !== /\s$/.test(own))
      return [`${path}: space at an end`];
    return [];
  });
  expect(faults).toEqual([]);
});

test.each(['es', 'de'] as const)(
  '%s: every refusal has its sentence, with its short fact where the English has one',
  (language) => {
    const { sentences } = { es: refusalsEs, de: refusalsDe }[language];
    expect(Object.keys(sentences)).toEqual(Object.keys(messages));
    const takesDetail = (texts: Readonly<Record<string, string>>) =>
      Object.keys(texts).filter((code) => texts[code]!.includes('{detail}'));
    expect(takesDetail(sentences)).toEqual(takesDetail(messages));
    expect(
      Object.entries(messages).filter(([code, text]) => sentences[code as keyof typeof messages] === text),
    ).toEqual([]);
  },
);
