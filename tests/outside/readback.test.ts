import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { align, edits } from '../../renderer/logic/readback/align.ts';
import { scoreReadback } from '../../renderer/logic/readback/score.ts';

const read = (name: string) => JSON.parse(readFileSync(new URL(`./data/${name}`, import.meta.url), 'utf8'));
const published = read('published-examples.json');

describe('edit distance, textbook words (Jurafsky & Martin, from memory; recomputed)', () => {
  test.each(published.edit as [string, string, number][])('%s to %s takes %i edits', (a, b, distance) => {
    expect(edits(align([...a], [...b]))).toBe(distance);
  });
});

describe('word error rate', () => {
  test.each(published.wer as { src: string; ref: string; hyp: string; edits: number; n: number }[])(
    '$src',
    ({ ref, hyp, edits: wrong, n }) => {
      const score = scoreReadback(ref, hyp);
      expect(score.wordsIntended).toBe(n);
      expect(score.wer).toBeCloseTo(wrong / n, 12);
    },
  );

  test('CMU lecture example: three of five words right', () => {
    expect(scoreReadback('hi how are you today', 'hey are you in today')).toMatchObject({
      wordsRight: 3,
      wordAccuracy: 0.6,
    });
  });
});

describe('letter examples (own computation, no publication)', () => {
  test('three letters wrong in 44 characters, 37 letters', () => {
    const score = scoreReadback(
      'please call the clinic about my friday visit',
      'please coll the clinic abont my friday uisit',
    );
    expect(score).toMatchObject({ wordsRight: 5, wordsIntended: 8, cerWithSpaces: 3 / 44, cerLettersOnly: 3 / 37 });
    expect(score.confusions).toEqual([
      { intended: 'a', read: 'o', count: 1 },
      { intended: 'u', read: 'n', count: 1 },
      { intended: 'v', read: 'u', count: 1 },
    ]);
  });

  test('one lost gap costs two words and shows as a space error', () => {
    const score = scoreReadback('buy milk bread six eggs', 'buymilk bread sx egqs');
    expect(score).toMatchObject({ wordsRight: 1, wordsIntended: 5, cerWithSpaces: 3 / 23, spaceErrors: 1 });
  });
});

test('every sample sentence has the letters, words and strokes that are stated for it', () => {
  const sentences = read('sample-sentences.json') as Record<string, Record<string, string | number>>;
  for (const [code, sentence] of Object.entries(sentences)) {
    const text = String(sentence.text);
    const lower = [...text.toLowerCase()].filter((c) => /[a-z]/.test(c));
    const count = (set: string) => lower.filter((c) => set.includes(c)).length;
    expect([code, lower.length]).toEqual([code, sentence.letters]);
    expect([code, text.split(' ').length]).toEqual([code, sentence.words]);
    expect([code, count('bdfhklt')]).toEqual([code, sentence.asc]);
    expect([code, count('gjpqy')]).toEqual([code, sentence.desc]);
    expect([code, count('abdegopq')]).toEqual([code, sentence.closed]);
    expect([code, new Set(lower).size]).toEqual([code, sentence.distinct]);
    if (code.startsWith('P')) expect([code, new Set(lower).size]).toEqual([code, 26]);
  }
});

test('pangrams have every letter also in lower case', () => {
  const sentences = read('sample-sentences.json') as Record<string, { text: string }>;
  for (const [code, { text }] of Object.entries(sentences).filter(([key]) => key.startsWith('P'))) {
    expect([code, new Set([...text].filter((c) => /[a-z]/.test(c))).size]).toEqual([code, 26]);
  }
});
