import { syllable } from 'syllable';
import { describe, expect, it } from 'vitest';
import textThresholds from '../../../db/rules/library/texts/text-thresholds.json' with { type: 'json' };
import { textLibrary } from '../../../db/rules/library/text-library.ts';
import { slotsOf } from '../../../db/types/rule-table/text-frame-checks.ts';
import type { Threshold } from '../../../db/types/rules.ts';
import { fillFrame, sentenceKey } from '../../../renderer/logic/sample/fill-frame.ts';
import { countLetters, letterUse } from '../../../renderer/logic/sample/letter-counts.ts';
import { measuredText, outside } from '../../../renderer/logic/sample/measured-text.ts';
import { choiceFrom, seedOf } from '../../../renderer/logic/sample/seeded-choice.ts';
import { languagesWithBands, textBands } from '../../../renderer/logic/sample/text-bands.ts';

const library = textLibrary();
const thresholds = textThresholds as Threshold[];
const english = textBands(thresholds, 'en');
const none: ReadonlySet<string> = new Set();

// Counts published with the sample sentences of the specification (F1 to F6: letters, ascenders, descenders, closing).
describe('counts of letters', () => {
  it('agree with those that were counted by hand', () => {
    expect(countLetters('Please call me back before half past eight.')).toEqual({
      letters: 35,
      ascenders: 13,
      descenders: 3,
      closing: 17,
      different: 16,
    });
    expect(countLetters('My sister will drive me home after lunch.')).toMatchObject({
      letters: 33,
      ascenders: 9,
      descenders: 1,
      closing: 8,
      different: 18,
    });
  });

  it('count the letters of a goal by times and by words', () => {
    expect(letterUse('Sally called all day', 'l')).toEqual({ times: 6, words: 3 });
  });
});

describe.each(languagesWithBands)('measured texts in %s', (language) => {
  const bands = textBands(thresholds, language);
  const frames = library.frames.filter((frame) => frame.stream === 'measured' && frame.language === language);
  const lists = new Map(
    library.lists.filter((l) => l.stream === 'measured' && l.language === language).map((l) => [l.code, l.words]),
  );

  it('have at least 60 frames, and practice shares none of them', () => {
    expect(frames.length).toBeGreaterThanOrEqual(60);
    const practice = new Set(library.frames.filter((f) => f.stream === 'practice').map((f) => f.text.toLowerCase()));
    expect(frames.filter((frame) => practice.has(frame.text.toLowerCase()))).toEqual([]);
  });

  it('10,000 of one seed: none equal, all within the bands, no frame again within two texts', () => {
    const seen = new Set<string>();
    let last: string[] = [];
    for (let i = 0; i < 10_000; i++) {
      const text = measuredText(library, {
        language,
        seed: seedOf(`seed ${i}`),
        bands,
        used: none,
        lastFrames: new Set(last),
      });
      if (!text) throw new Error(`Text ${i} could not be made.`);
      const said = text.sentences.map((sentence) => sentence.text);
      const whole = said.join(' ');
      if (outside(whole, bands) > 0) throw new Error(`Outside the bands: ${whole}`);
      if (whole.split(/\s+/).length !== 24 || said.length !== 3) throw new Error(`Not 24 words: ${whole}`);
      const codes = text.sentences.map((sentence) => sentence.frame);
      if (new Set(codes).size !== 3 || codes.some((code) => last.includes(code)))
        throw new Error('A frame came again.');
      last = [...last.slice(-3), ...codes];
      seen.add(whole);
    }
    expect(seen.size).toBe(10_000);
  });

  it('a year of 20 clients read by one reader, a text a week each: no sentence twice', () => {
    const used = new Set<string>();
    let last: string[] = [];
    for (let i = 0; i < 20 * 52; i++) {
      const text = measuredText(library, {
        language,
        seed: seedOf(`year ${i}`),
        bands,
        used,
        lastFrames: new Set(last),
        goalLetters: i % 4 === 0 ? ['a', 'n'] : [],
      });
      if (!text) throw new Error(`Text ${i} could not be made.`);
      last = [...last.slice(-3), ...text.sentences.map((sentence) => sentence.frame)];
      for (const sentence of text.sentences) {
        const key = sentenceKey(sentence.text);
        if (used.has(key)) throw new Error(`Came again: ${sentence.text}`);
        used.add(key);
      }
    }
    expect(used.size).toBe(3120);
  });

  it('the bands lie where the neutral sentences are', () => {
    const choice = choiceFrom(1);
    const mean = { letters: 0, ascenders: 0, descenders: 0, closing: 0 };
    for (const frame of frames)
      for (let i = 0; i < 40; i++) {
        const words = slotsOf(frame.text).map((slot) => choice.of(lists.get(slot) ?? []));
        const counts = countLetters(fillFrame(frame.text, words, language));
        for (const name of ['letters', 'ascenders', 'descenders', 'closing'] as const)
          mean[name] += (counts[name] * 3) / (40 * frames.length);
      }
    for (const name of ['letters', 'ascenders', 'descenders', 'closing'] as const)
      expect(Math.abs(mean[name] - bands[name].middle), name).toBeLessThanOrEqual(bands[name].spread);
  });
});

describe('goal letters', () => {
  // Letters that readers of small or unclosed writing take for others most: common practice, no source.
  it.each([['a'], ['o'], ['n'], ['u'], ['r'], ['g'], ['y'], ['e'], ['t'], ['l'], ['d'], ['h'], ['b'], ['c'], ['p']])(
    '%s stands five times in three words',
    (letter) => {
      let met = 0;
      for (let i = 0; i < 20; i++) {
        const text = measuredText(library, {
          language: 'en',
          seed: seedOf(`${letter} ${i}`),
          bands: english,
          used: none,
          lastFrames: none,
          goalLetters: [letter],
        });
        const whole = text?.sentences.map((sentence) => sentence.text).join(' ') ?? '';
        const { times, words } = letterUse(whole, letter);
        if (times >= 5 && words >= 3) met++;
        else expect(text?.goalLettersShort).toEqual([letter]);
      }
      expect(met).toBeGreaterThanOrEqual(18);
    },
  );

  it('a letter that cannot stand so often is named, and the text stays within the bands', () => {
    const text = measuredText(library, {
      language: 'en',
      seed: 5,
      bands: english,
      used: none,
      lastFrames: none,
      goalLetters: ['q', 'z', 'x'],
    });
    expect(text?.goalLettersShort.length).toBeGreaterThan(0);
    expect(outside(text!.sentences.map((sentence) => sentence.text).join(' '), english)).toBe(0);
  });
});

describe('words', () => {
  it('English: three syllables at most', () => {
    const words = [...library.lists, ...library.topics]
      .filter((list) => list.language === 'en')
      .flatMap((list) => list.words)
      .flatMap((word) => word.split(' '));
    expect([...new Set(words)].filter((word) => syllable(word) > 3 && !/^(January|February)$/.test(word))).toEqual([]);
    const fixed = library.frames
      .filter((frame) => frame.language === 'en')
      .flatMap((frame) => frame.text.replace(/\{[^}]*\}/g, ' ').match(/[a-z]+/gi) ?? []);
    expect([...new Set(fixed)].filter((word) => syllable(word) > 3)).toEqual([]);
  });
});

describe('the same seed', () => {
  it('gives the same text; frames known lately are left alone', () => {
    const wish = { language: 'en', seed: 7, bands: english, used: none, lastFrames: none };
    const first = measuredText(library, wish)!;
    expect(measuredText(library, wish)).toEqual(first);
    const frames = new Set(first.sentences.map((sentence) => sentence.frame));
    const other = measuredText(library, { ...wish, lastFrames: frames })!;
    expect(other.sentences.filter((sentence) => frames.has(sentence.frame))).toEqual([]);
  });
});
