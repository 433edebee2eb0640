import { describe, expect, it } from 'vitest';
import { textLibrary } from '../../../db/rules/library/text-library.ts';
import { numberWords } from '../../../renderer/logic/texts/number-words.ts';
import { spanishSyllables } from '../../../renderer/logic/texts/spanish-syllables.ts';

// Divided by hand by the rules of diphthong and hiatus as taught in schools: common knowledge, no source.
describe('syllables of Spanish words', () => {
  it.each([
    ['casa', 2],
    ['tía', 2],
    ['escribir', 3],
    ['lluvia', 2],
    ['reunión', 2],
    ['queso', 2],
    ['guitarra', 3],
    ['poeta', 3],
    ['leer', 2],
    ['ciudad', 2],
    ['muy', 1],
    ['hoy', 1],
    ['ayer', 2],
    ['pingüino', 3],
    ['farmacia', 3],
    ['y', 1],
    ['buey', 1],
    ['país', 2],
    ['cuaderno', 3],
    ['terapeuta', 4],
  ])('%s has %i', (word, count) => expect(spanishSyllables(word)).toBe(count));

  it('words of measured and practice lists have three at most', () => {
    const library = textLibrary();
    const lists = [...library.lists, ...library.topics].filter((list) => list.language === 'es');
    const words = new Set(lists.flatMap((list) => list.words).flatMap((word) => word.split(' ')));
    // Names of months are what is practiced in dates.
    const months = ['septiembre', 'noviembre', 'diciembre', 'febrero'];
    expect([...words].filter((word) => spanishSyllables(word) > 3 && !months.includes(word))).toEqual([]);
  });
});

describe('numbers in words', () => {
  it.each([
    [17, 'seventeen', 'diecisiete'],
    [40, 'forty', 'cuarenta'],
    [99, 'ninety-nine', 'noventa y nueve'],
    [100, 'one hundred', 'cien'],
    [115, 'one hundred fifteen', 'ciento quince'],
    [198, 'one hundred ninety-eight', 'ciento noventa y ocho'],
    [516, 'five hundred sixteen', 'quinientos dieciséis'],
  ])('%i', (value, english, spanish) => {
    expect(numberWords(value, 'en')).toBe(english);
    expect(numberWords(value, 'es')).toBe(spanish);
  });
  it('refuses what a check line cannot hold', () => expect(() => numberWords(1000, 'en')).toThrow(RangeError));
});
