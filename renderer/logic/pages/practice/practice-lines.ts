/**
 * Lines to practice for a writing occasion: frames of the practice stream with the client's own words, the words of
 * the client's topics, and dates, times and amounts drawn anew. Same seed, same lines.
 */
import { drawnSlots, slotsOf } from '../../../../db/types/rule-table/text-frame-checks.ts';
import type { OccasionCode, OwnWord } from '../../../../db/types/occasions.ts';
import type { TextFrame, TextLibrary } from '../../../../db/types/rule-table/text-frames.ts';
import { fillFrame, sentenceKey } from '../../sample/fill-frame.ts';
import { type Choice, choiceFrom } from '../../sample/seeded-choice.ts';
import { drawnSum, drawnValue } from './drawn-values.ts';

export interface PracticeWish {
  language: string;
  occasion: OccasionCode;
  /** The client's own words. */
  words: readonly OwnWord[];
  /** Codes of topics; none = all of the language. */
  topics: readonly string[];
  seed: number;
  count: number;
  /** Keys of lines that this client wrote within the year (`sentenceKey`). */
  used: ReadonlySet<string>;
  /** Frames of the pages just before. */
  lastFrames: ReadonlySet<string>;
  /** Of a page at most so much in the client's fixed phrases, percent. */
  phraseShare: number;
  /** Longest line, in letters and spaces; null = any. */
  mostLetters: number | null;
  /** Whether a line stands on one row of the paper: others come only where none does. */
  onOneRow?: (text: string) => boolean;
}

export interface PracticeLine {
  text: string;
  /** Code of its frame; null = a phrase of the client's own. */
  frame: string | null;
}

/** Occasions whose text is the client's own and the same each time. */
export const sameEachTime: ReadonlySet<OccasionCode> = new Set<OccasionCode>(['signature', 'name-address']);

/** Share of the places where the client's own words stand, when there are some. */
const ownShare = 0.7;
/** Fillings of one frame before it is left for the next. */
const tries = 40;

/** As many lines as can be made, `count` at most, none equal and none written before. */
export function practiceLines(library: TextLibrary, wish: PracticeWish): PracticeLine[] {
  const choice = choiceFrom(wish.seed);
  const words = wordsFor(library, wish);
  const taken = new Set(wish.used);
  const lines: PracticeLine[] = [];
  const longest = wish.mostLetters ?? Infinity;
  const add = (text: string, frame: string | null, fits: (text: string) => boolean): boolean => {
    const key = sentenceKey(text);
    if (key === '' || taken.has(key) || text.length > longest || !fits(text)) return false;
    taken.add(key);
    lines.push({ text, frame });
    return true;
  };
  // Phrases are the client's wish and may come again on another page, never twice on one.
  const phrases = wish.words.filter((word) => word.kind === 'phrase').map((word) => word.text.trim());
  const most = Math.floor((wish.count * wish.phraseShare) / 100);
  const first = phrases.length > 0 ? choice.below(phrases.length) : 0;
  for (let i = 0; i < Math.min(most, phrases.length); i++) {
    const text = phrases[(first + i) % phrases.length]!;
    if (text.length <= longest) lines.push({ text, frame: null });
  }
  const any = (): boolean => true;
  for (const fits of new Set([wish.onOneRow ?? any, any])) {
    // Each frame once before any comes again, those of the last pages last.
    for (const frame of framesFor(library, wish, choice)) {
      for (let i = 0; i < tries && lines.length < wish.count; i++)
        if (add(filled(frame, words, wish.language, choice), frame.code, fits)) break;
    }
    for (let i = 0; i < tries && lines.length > 0 && lines.length < wish.count; i++) {
      const frame = choice.of(framesFor(library, wish, choice));
      add(filled(frame, words, wish.language, choice), frame.code, fits);
    }
  }
  return phrasesLater(lines, wish.phraseShare);
}

/** Phrases no earlier than their share allows: on large paper only the first lines of a page have room. */
function phrasesLater(lines: readonly PracticeLine[], share: number): PracticeLine[] {
  const out = lines.filter((line) => line.frame !== null);
  const phrases = lines.filter((line) => line.frame === null);
  phrases.forEach((phrase, i) => out.splice(Math.ceil((100 * (i + 1)) / share) - 1, 0, phrase));
  return out;
}

/** First names that practice texts use; empty where a language has no such list. */
export const practiceNames = (library: TextLibrary, language: string): readonly string[] =>
  library.lists.find((l) => l.code === 'who' && l.stream === 'practice' && l.language === language)?.words ?? [];

/** Practice checks to fill in: date, payee, sum in numbers and in words, all drawn anew, none as one of the year. */
export function checkModels(
  library: TextLibrary,
  own: readonly OwnWord[],
  want: { seed: number; count: number; language: string },
  used: ReadonlySet<string>,
): string[] {
  const choice = choiceFrom(want.seed);
  const mine = own.filter(({ kind }) => kind === 'person' || kind === 'place').map(({ text }) => bare(text.trim()));
  const names = practiceNames(library, want.language);
  const out: string[] = [];
  for (let i = 0; i < want.count * tries && out.length < want.count; i++) {
    const who =
      mine.length > 0 && choice.chance(ownShare) ? choice.of(mine) : choice.of(names.length > 0 ? names : mine);
    const value = (slot: string): string => drawnValue(slot, want.language, choice) ?? '';
    const { digits, words } = drawnSum(want.language, choice);
    const model = [value('date'), who, digits, words].join('  ·  ');
    if (!used.has(sentenceKey(model)) && !out.includes(model)) out.push(model);
  }
  return out;
}

/** Frames of the occasion in a drawn order, those of the last pages at the end. */
function framesFor(library: TextLibrary, wish: PracticeWish, choice: Choice): TextFrame[] {
  const all = library.frames.filter(
    (frame) => frame.stream === 'practice' && frame.language === wish.language && frame.occasion === wish.occasion,
  );
  const order: TextFrame[] = [];
  const left = [...all];
  while (left.length > 0) order.push(...left.splice(choice.below(left.length), 1));
  return [
    ...order.filter((frame) => !wish.lastFrames.has(frame.code)),
    ...order.filter((frame) => wish.lastFrames.has(frame.code)),
  ];
}

interface Words {
  own: ReadonlyMap<string, readonly string[]>;
  lists: ReadonlyMap<string, readonly string[]>;
}

/** Slots that a kind of own word fits: a place of the client's is also where things are bought. */
const slotsOfKind: Readonly<Record<OwnWord['kind'], readonly string[]>> = {
  person: ['who'],
  place: ['where', 'shop'],
  thing: ['topic', 'thing'],
  phrase: [],
};

function wordsFor(library: TextLibrary, wish: PracticeWish): Words {
  const ofLanguage = <T extends { language: string }>(list: readonly T[]): T[] =>
    list.filter((each) => each.language === wish.language);
  const topics = ofLanguage(library.topics);
  const ticked = topics.filter((topic) => wish.topics.includes(topic.code));
  // Nothing ticked: what is usual for the occasion, so that no shopping list asks for songs.
  const chosen = ticked.length > 0 ? ticked : topics.filter((topic) => topic.usualFor?.includes(wish.occasion));
  const lists = new Map<string, readonly string[]>(
    ofLanguage(library.lists)
      .filter((list) => list.stream === 'practice')
      .map((list) => [list.code, list.words]),
  );
  const inUse = chosen.length > 0 ? chosen : topics;
  lists.set('topic', [...new Set(inUse.flatMap((topic) => topic.words))]);
  lists.set('thing', [
    ...new Set(inUse.flatMap(({ words, onlyNamed }) => words.filter((word) => !onlyNamed.includes(word)))),
  ]);
  const own = new Map<string, string[]>();
  for (const { kind, text } of wish.words)
    for (const slot of slotsOfKind[kind]) own.set(slot, [...(own.get(slot) ?? []), text.trim()]);
  return { own, lists };
}

/** Spanish topic words carry their article; a slot without "the" drops it. */
const bare = (word: string): string => word.replace(/^(el|la|los|las|the) /, '');

function filled(frame: TextFrame, words: Words, language: string, choice: Choice): string {
  const taken: string[] = [];
  const values = slotsOf(frame.text).map((slot) => {
    const name = slot.replace(/^the-/, '');
    if (drawnSlots.has(slot) && !words.lists.has(name)) return drawnValue(slot, language, choice) ?? '';
    const own = words.own.get(name) ?? [];
    const pool = own.length > 0 && choice.chance(ownShare) ? own : (words.lists.get(name) ?? own);
    const free = pool.filter((word) => !taken.includes(word));
    const word = choice.of(free.length > 0 ? free : (words.lists.get(name) ?? pool));
    taken.push(word);
    return (slot === 'topic' || slot === 'thing') && language.startsWith('es') ? bare(word) : word;
  });
  return fillFrame(frame.text, values, language);
}
