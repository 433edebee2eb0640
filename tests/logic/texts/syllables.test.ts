import { describe, expect, it } from 'vitest';
import { textLibrary } from '../../../db/rules/library/text-library.ts';
import { numberWords } from '../../../renderer/logic/texts/number-words.ts';
import { germanSyllables } from '../../../renderer/logic/texts/reading/german-syllables.ts';
import { spanishSyllables } from '../../../renderer/logic/texts/reading/spanish-syllables.ts';

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

// Divided by hand by the rules of spelling as taught in schools: common knowledge, no source.
describe('syllables of German words', () => {
  it.each([
    ['Haus', 1],
    ['schreiben', 2],
    ['Papier', 2],
    ['neue', 2],
    ['Bauer', 2],
    ['Bäume', 2],
    ['Tee', 1],
    ['quer', 1],
    ['Unterarm', 3],
    ['Linie', 3],
    ['Januar', 3],
    ['Ergotherapie', 5],
    ['Bleistift', 2],
    ['Übung', 2],
  ])('%s has %i', (word, count) => expect(germanSyllables(word)).toBe(count));

  it('words of measured and practice lists have three at most', () => {
    const library = textLibrary();
    const lists = [...library.lists, ...library.topics].filter((list) => list.language === 'de');
    const words = new Set(lists.flatMap((list) => list.words).flatMap((word) => word.split(' ')));
    expect([...words].filter((word) => germanSyllables(word) > 3)).toEqual([]);
  });
});

describe('numbers in words', () => {
  it.each([
    [1, 'one', 'uno', 'eins'],
    [17, 'seventeen', 'diecisiete', 'siebzehn'],
    [40, 'forty', 'cuarenta', 'vierzig'],
    [99, 'ninety-nine', 'noventa y nueve', 'neunundneunzig'],
    [100, 'one hundred', 'cien', 'einhundert'],
    [101, 'one hundred one', 'ciento uno', 'einhunderteins'],
    [115, 'one hundred fifteen', 'ciento quince', 'einhundertfünfzehn'],
    [121, 'one hundred twenty-one', 'ciento veintiuno', 'einhunderteinundzwanzig'],
    [198, 'one hundred ninety-eight', 'ciento noventa y ocho', 'einhundertachtundneunzig'],
    [516, 'five hundred sixteen', 'quinientos dieciséis', 'fünfhundertsechzehn'],
  ])('%i', (value, english, spanish, german) => {
    expect(numberWords(value, 'de')).toBe(german);
    expect(numberWords(value, 'en')).toBe(english);
    expect(numberWords(value, 'es')).toBe(spanish);
  });
  it('refuses what a check line cannot hold', () => expect(() => numberWords(1000, 'en')).toThrow(RangeError));
});
