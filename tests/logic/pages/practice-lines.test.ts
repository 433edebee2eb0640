import { describe, expect, it } from 'vitest';
import { textLibrary } from '../../../db/rules/library/text-library.ts';
import limits from '../../../db/rules/library/texts/text-thresholds.json' with { type: 'json' };
import { checkTextLibrary } from '../../../db/types/rule-table/text-frame-checks.ts';
import { OccasionCode, type OwnWord } from '../../../db/types/occasions.ts';
import { practiceLines, type PracticeWish } from '../../../renderer/logic/pages/practice/practice-lines.ts';
import { sentenceKey } from '../../../renderer/logic/sample/fill-frame.ts';
import { seedOf } from '../../../renderer/logic/sample/seeded-choice.ts';
import { languages } from '../../../renderer/logic/texts/languages.ts';

const library = textLibrary();
const none: ReadonlySet<string> = new Set();
const made: readonly OccasionCode[] = OccasionCode.options.filter((code) => code !== 'signature');

const wish = (over: Partial<PracticeWish>): PracticeWish => ({
  language: 'en',
  occasion: 'list',
  words: [],
  topics: ['cooking'],
  seed: 1,
  count: 6,
  used: none,
  lastFrames: none,
  phraseShare: 30,
  mostLetters: null,
  ...over,
});

describe.each(Object.keys(languages))('practice lines in %s', (language) => {
  it.each(made)('%s has 20 frames or more', (occasion) => {
    const frames = library.frames.filter(
      (f) => f.stream === 'practice' && f.language === language && f.occasion === occasion,
    );
    expect(frames.length).toBeGreaterThanOrEqual(20);
  });

  it('ten topics of 40 words or more', () => {
    const topics = library.topics.filter((topic) => topic.language === language);
    expect(topics.length).toBeGreaterThanOrEqual(10);
    for (const topic of topics) expect(new Set(topic.words).size, topic.name).toBeGreaterThanOrEqual(40);
  });

  // A page a day, five days a week, six model lines: 20 clients with one occasion each, and the narrowest choice of words.
  it('a year of 20 clients: no client writes a line twice, no frame comes again within two pages', () => {
    for (let client = 0; client < 20; client++) {
      const occasion = made[client % made.length]!;
      const used = new Set<string>();
      const pages: string[][] = [];
      for (let day = 0; day < 260; day++) {
        const lines = practiceLines(
          library,
          wish({
            language,
            occasion,
            seed: seedOf(`client ${client} day ${day}`),
            used,
            lastFrames: new Set(pages.slice(-2).flat()),
            words: client % 2 === 0 ? [] : [{ kind: 'person', text: 'Teodora' }],
          }),
        );
        if (lines.length < 6) throw new Error(`${occasion}, day ${day}: only ${lines.length} lines were left.`);
        for (const { text } of lines) {
          if (used.has(sentenceKey(text))) throw new Error(`Came again: ${text}`);
          if (/[{}]|undefined|\s\s/.test(text)) throw new Error(`Not filled: ${text}`);
          used.add(sentenceKey(text));
        }
        const frames = lines.flatMap(({ frame }) => (frame ? [frame] : []));
        const again = frames.filter((frame) => pages.slice(-2).flat().includes(frame));
        if (again.length > 0) throw new Error(`Frame again within two pages: ${again.join(', ')}`);
        pages.push(frames);
      }
      expect(used.size).toBe(1560);
    }
  });
});

describe('the client’s own words', () => {
  const words: OwnWord[] = [
    { kind: 'person', text: 'Teodora' },
    { kind: 'place', text: 'the corner shop' },
    { kind: 'thing', text: 'oat milk' },
    { kind: 'phrase', text: 'Back in a minute.' },
    { kind: 'phrase', text: 'Love to all of you.' },
    { kind: 'phrase', text: 'See you soon.' },
  ];

  it('stand where they belong, and fixed phrases fill 30 % of a page at most', () => {
    let phrases = 0;
    let own = 0;
    for (let seed = 0; seed < 50; seed++) {
      const lines = practiceLines(library, wish({ occasion: 'message', words, seed, count: 10 }));
      const fixed = lines.filter((line) => line.frame === null);
      expect(fixed.length).toBeLessThanOrEqual(3);
      phrases += fixed.length;
      own += lines.filter((line) => /Teodora|corner shop|oat milk/.test(line.text)).length;
      expect(lines.filter((line) => /(at|call) oat milk/.test(line.text))).toEqual([]);
    }
    expect(phrases).toBeGreaterThan(100);
    expect(own).toBeGreaterThan(200);
  });

  it('nobody carries, buys or gives what is only named: ferries, owls', () => {
    for (const topic of ['travel', 'outdoors', 'music']) {
      const { onlyNamed } = library.topics.find((each) => each.language === 'en' && each.code === topic)!;
      for (const occasion of ['list', 'message', 'work', 'other'] as const) {
        const lines = practiceLines(library, wish({ occasion, words: [], topics: [topic], count: 20 }));
        const handled = lines.filter(({ frame }) =>
          library.frames.find((each) => each.code === frame)?.text.includes('{thing}'),
        );
        for (const { text } of handled)
          expect(
            onlyNamed.filter((word) => new RegExp(`\\b${word}\\b`).test(text)),
            text,
          ).toEqual([]);
      }
    }
  });

  it('a line longer than the paper is left out, not cut', () => {
    const lines = practiceLines(library, wish({ occasion: 'message', words, mostLetters: 30, count: 5 }));
    expect(lines.length).toBe(5);
    for (const { text } of lines) expect(text.length).toBeLessThanOrEqual(30);
  });
});

describe('frames that a clinic writes', () => {
  const problems = (text: string): string[] => {
    const frame = { code: 'own-1', language: 'en', source: 'clinic' as const, sourceNote: '' };
    const own = { ...frame, stream: 'measured' as const, occasion: null, text };
    return checkTextLibrary({ ...library, frames: [...library.frames, own] }, limits).map((problem) => problem.reason);
  };

  it('are checked when they are read', () => {
    expect(problems('The {job} waits for the {vehicle} at noon.')).toEqual([]);
    expect(problems('The {job} waits at noon.')[0]).toContain('must have 8 words');
    expect(problems('The {astronaut} waits for the {vehicle} at noon.')[0]).toContain('no such list');
    expect(problems('The {job waits for the {vehicle} at noon.')[0]).toContain('brace');
    expect(problems('{who} called at {hour}. Please call back.').join(' ')).toContain('both streams');
  });

  it('a word list of one and a topic of one are refused with a sentence', () => {
    const lists = library.lists.map((l) =>
      l.language === 'en' && l.stream === 'measured' && l.code === 'vehicle' ? { ...l, words: ['bus'] } : l,
    );
    expect(checkTextLibrary({ ...library, lists }, limits)[0]?.reason).toContain('has 1 words and needs 8');
    const topics = library.topics.map((t) => ({ ...t, words: ['one'] }));
    expect(checkTextLibrary({ ...library, topics }, limits)[0]?.reason).toContain('needs 40');
  });
});
