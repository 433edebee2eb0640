/**
 * Texts for writing samples: three sentences from frames and word lists, balanced so that two texts are equally hard,
 * and new, so that no reader has met a sentence before. Same seed, same texts.
 */
import { slotsOf } from '../../../db/types/rule-table/text-frame-checks.ts';
import type { TextFrame, TextLibrary } from '../../../db/types/rule-table/text-frames.ts';
import { fillFrame, sentenceKey } from './fill-frame.ts';
import { countLetters, letterUse, plainLetters } from './letter-counts.ts';
import { type Choice, choiceFrom } from './seeded-choice.ts';
import type { TextBands } from './text-bands.ts';

export interface MeasuredText {
  sentences: { text: string; frame: string }[];
  /** Letters of the goal that do not stand often enough; [] = all do. */
  goalLettersShort: string[];
}

export interface MeasuredTextWish {
  language: string;
  seed: number;
  bands: TextBands;
  /** Keys of sentences that somebody may still remember (`sentenceKey`). */
  used: ReadonlySet<string>;
  /** Frames of the texts just before this one. */
  lastFrames: ReadonlySet<string>;
  /** Letters that the client works on. */
  goalLetters?: readonly string[];
}

interface Filled {
  frame: TextFrame;
  slots: readonly string[];
  words: string[];
}

export const sentencesAText = 3;
/** Starts from other frames, and single changes of a word after each start, before a text is given up. */
const starts = 60;
const changes = 120;

/**
 * A text within the bands, or null where no new one is left (all frames lately used or every sentence known).
 * Goal letters give way before the bands do: `goalLettersShort` names those that could not be met.
 */
export function measuredText(library: TextLibrary, wish: MeasuredTextWish): MeasuredText | null {
  const { language, bands } = wish;
  const frames = library.frames.filter(
    (frame) => frame.stream === 'measured' && frame.language === language && !wish.lastFrames.has(frame.code),
  );
  if (frames.length < sentencesAText) return null;
  const lists = new Map(
    library.lists.filter((l) => l.stream === 'measured' && l.language === language).map((l) => [l.code, l.words]),
  );
  const goal = [...new Set((wish.goalLetters ?? []).map(plainLetters).filter((letter) => letter.length === 1))];
  const choice = choiceFrom(wish.seed);
  let best: { text: Filled[]; short: string[] } | null = null;
  for (let start = 0; start < starts; start++) {
    let text = begin(frames, lists, choice);
    let off = distance(text, bands, goal, language);
    for (let change = 0; change < changes && off > 0; change++) {
      const next = changed(text, lists, choice);
      const nextOff = distance(next, bands, goal, language);
      if (nextOff <= off) {
        text = next;
        off = nextOff;
      }
    }
    const said = sentencesOf(text, language);
    if (outside(said.join(' '), bands) > 0) continue;
    if (said.some((sentence) => wish.used.has(sentenceKey(sentence)))) continue;
    const short = shortLetters(said.join(' '), bands, goal);
    if (!best || short.length < best.short.length) best = { text, short };
    if (short.length === 0) break;
  }
  if (!best) return null;
  const said = sentencesOf(best.text, language);
  return {
    sentences: best.text.map(({ frame }, i) => ({ text: said[i]!, frame: frame.code })),
    goalLettersShort: best.short,
  };
}

function wordFor(
  slot: string,
  taken: readonly string[],
  lists: ReadonlyMap<string, readonly string[]>,
  choice: Choice,
) {
  const words = lists.get(slot) ?? [];
  const free = words.filter((word) => !taken.includes(word));
  return choice.of(free.length > 0 ? free : words);
}

function begin(frames: readonly TextFrame[], lists: ReadonlyMap<string, readonly string[]>, choice: Choice): Filled[] {
  const left = [...frames];
  return Array.from({ length: sentencesAText }, () => {
    const [frame] = left.splice(choice.below(left.length), 1);
    const slots = slotsOf(frame!.text);
    const words: string[] = [];
    for (const slot of slots) words.push(wordFor(slot, words, lists, choice));
    return { frame: frame!, slots, words };
  });
}

/** The same text with one word changed. */
function changed(text: readonly Filled[], lists: ReadonlyMap<string, readonly string[]>, choice: Choice): Filled[] {
  const at = choice.below(text.length);
  return text.map((each, i) => {
    if (i !== at || each.slots.length === 0) return each;
    const slot = choice.below(each.slots.length);
    const word = wordFor(each.slots[slot]!, each.words, lists, choice);
    return { ...each, words: each.words.map((old, k) => (k === slot ? word : old)) };
  });
}

const sentencesOf = (text: readonly Filled[], language: string): string[] =>
  text.map(({ frame, words }) => fillFrame(frame.text, words, language));

/** How far a text lies outside the bands, in letters; 0 = within all of them. */
export function outside(text: string, bands: TextBands): number {
  const counts = countLetters(text);
  const beyond = (value: number, band: { middle: number; spread: number }): number =>
    Math.max(0, Math.abs(value - band.middle) - band.spread);
  return (
    beyond(counts.letters, bands.letters) +
    beyond(counts.ascenders, bands.ascenders) +
    beyond(counts.descenders, bands.descenders) +
    beyond(counts.closing, bands.closing) +
    Math.max(0, bands.leastDifferent - counts.different)
  );
}

const shortLetters = (text: string, bands: TextBands, goal: readonly string[]): string[] =>
  goal.filter((letter) => {
    const { times, words } = letterUse(text, letter);
    return times < bands.goalTimes || words < bands.goalWords;
  });

function distance(text: readonly Filled[], bands: TextBands, goal: readonly string[], language: string): number {
  const said = sentencesOf(text, language).join(' ');
  const missing = goal.reduce((sum, letter) => {
    const { times, words } = letterUse(said, letter);
    return sum + Math.max(0, bands.goalTimes - times) + Math.max(0, bands.goalWords - words);
  }, 0);
  return outside(said, bands) + missing;
}
