/** What a schema alone cannot see in frames and word lists. Used when they are read and when a clinic changes them. */
import type { Threshold } from '../rules.ts';
import type { TextFrame, TextLibrary } from './text-frames.ts';
import { threshold } from './threshold.ts';

/** Rows of the rule table that hold the limits of texts. */
export type TextLimits = readonly Pick<Threshold, 'code' | 'value'>[];

/** Words of a measured sentence: three make a text of 24. */
const wordsASentence = 8;

/** Slots whose words are drawn anew or come from the client's topics, not from a list. */
export const drawnSlots: ReadonlySet<string> = new Set([
  'topic',
  'the-topic',
  'thing',
  'the-thing',
  'hour',
  'phone',
  'date',
  'digits-date',
  'amount',
  'amount-words',
  'three',
  'five',
]);

/** Names of the slots of a frame, in order, repeats kept. */
export const slotsOf = (text: string): string[] => [...text.matchAll(/\{([^{}]*)\}/g)].map((match) => match[1] ?? '');

export interface TextProblem {
  path: (string | number)[];
  reason: string;
}

function frameProblems(
  frame: TextFrame,
  i: number,
  lists: ReadonlyMap<string, readonly string[]>,
  leastWords: number,
): TextProblem[] {
  const say = (reason: string): TextProblem => ({ path: ['frames', i, 'text'], reason });
  const out: TextProblem[] = [];
  if (/[{}]/.test(frame.text.replace(/\{[a-z0-9-]+\}/g, '')))
    out.push(say(`The frame "${frame.text}" has a brace too many or an empty slot.`));
  if ((frame.stream === 'measured') !== (frame.occasion === null))
    out.push(say(`The frame "${frame.text}" must name an occasion if it is for practice, and none if it is measured.`));
  for (const slot of new Set(slotsOf(frame.text))) {
    if (frame.stream === 'practice' && drawnSlots.has(slot)) continue;
    const words = lists.get(slot);
    if (!words) out.push(say(`The frame "${frame.text}" asks for words called "${slot}", and there is no such list.`));
    else if (words.length < leastWords)
      out.push(say(`"${slot}" has ${words.length} words and needs ${leastWords}: else the sentence gives them away.`));
    else if (frame.stream === 'measured' && words.some((word) => /\s/.test(word)))
      out.push(say(`Words of "${slot}" must be single words, so that every measured sentence has as many.`));
  }
  if (frame.stream === 'measured' && frame.text.split(/\s+/).length !== wordsASentence)
    out.push(say(`The measured frame "${frame.text}" must have ${wordsASentence} words.`));
  return out;
}

/** Everything wrong with the frames and lists; an empty list = they may be used. */
export function checkTextLibrary(library: TextLibrary, limits: TextLimits): TextProblem[] {
  const wordsASlot = threshold(limits, 'text-slot-words');
  const wordsATopic = threshold(limits, 'text-topic-words');
  const listsOf = (language: string, stream: string): Map<string, readonly string[]> =>
    new Map(library.lists.filter((l) => l.language === language && l.stream === stream).map((l) => [l.code, l.words]));
  const keyed = new Map<string, Map<string, readonly string[]>>();
  const codes = new Set<string>();
  const texts = new Map<string, TextFrame>();
  return [
    ...library.frames.flatMap((frame, i) => {
      const key = `${frame.language} ${frame.stream}`;
      if (!keyed.has(key)) keyed.set(key, listsOf(frame.language, frame.stream));
      const out = frameProblems(frame, i, keyed.get(key)!, wordsASlot);
      if (codes.has(frame.code)) out.push({ path: ['frames', i, 'code'], reason: `"${frame.code}" stands twice.` });
      codes.add(frame.code);
      const twin = texts.get(`${frame.language} ${frame.text.toLowerCase()}`);
      if (twin && twin.stream !== frame.stream)
        out.push({
          path: ['frames', i],
          reason: `"${frame.text}" stands in both streams: measured texts stay unknown.`,
        });
      texts.set(`${frame.language} ${frame.text.toLowerCase()}`, frame);
      return out;
    }),
    ...library.lists.flatMap(({ code, words }, i) =>
      new Set(words.map((word) => word.toLowerCase())).size < words.length
        ? [{ path: ['lists', i], reason: `A word stands twice in "${code}".` }]
        : [],
    ),
    ...library.topics.flatMap(({ name, words, onlyNamed }, i) => {
      const different = new Set(words.map((word) => word.toLowerCase())).size;
      const things = words.filter((word) => !onlyNamed.includes(word)).length;
      if (different < wordsATopic)
        return [{ path: ['topics', i], reason: `"${name}" has ${different} words and needs ${wordsATopic}.` }];
      return things < wordsASlot
        ? [{ path: ['topics', i], reason: `"${name}" has ${things} things to handle and needs ${wordsASlot}.` }]
        : [];
    }),
  ];
}
