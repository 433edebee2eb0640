import { wordsFrom } from './spacing.ts';
import type { WordWork } from './word-groups.ts';
import type { Layout } from '../lines/page-layout.ts';
import { median } from '../../statistics/order-statistics.ts';
import { alignWords } from './align-words.ts';
import { pathLines } from './path-lines.ts';
import { layText } from './text-path.ts';
import type { PathLine, TextPath } from './text-path.ts';
import { expectedOf, wordCost } from './word-cost.ts';

/** How the text meant fits the page. */
export interface TextFit {
  fits: boolean;
  /** Words by line, parted as the text says; those of the layout where it does not fit. */
  words: WordWork[][];
  /** Text of each word; null where it is none of the text. Two words without a gap are joined by a space. */
  texts: (string | null)[][];
  /** Words of the text that were not found on the page. */
  leftOut: string[];
  /** The words fit clearly better from right to left (or from the end): the picture is mirrored or upside down. */
  turned: 'mirrored' | 'upside-down' | null;
}

/**
 * Price per word up to which a text fits, and from which it does not. Between them it must be cheaper than this share of
 * the same words in other orders. On 37 pages that two people wrote the right text came to 0.5 to 2.6, another page's to
 * 2.9 and more, other orders of the right words to 3.0 and more where they were over thirty.
 */
const FITS = 1.5;
const UNFIT = 3.2;
const BETTER = 0.82;
/** So many different words are needed to compare orders. */
const LEAST_DIFFERENT = 6;
/** The turned reading must be this much cheaper, over at least this many words. */
const CLEARLY = 0.5;
const LEAST_WORDS = 8;

/** Words of the text in order; line breaks need not be those of the page. */
export function fitText(layout: Layout, text: string): TextFit {
  const words = text.split(/\s+/).filter((word) => word.length > 0);
  const lines = pathLines(layout);
  const path = layText(lines, words);
  if (!isFit(path, lines, words))
    return {
      fits: false,
      words: layout.words,
      texts: layout.words.map((own) => own.map(() => null)),
      leftOut: [],
      turned: turnOf(layout, words),
    };
  const found = layout.lines.map((_, i) => wordsOfPath(path, lines[i]!, words, layout, i));
  return {
    fits: true,
    words: found.map((line) => line.map(({ word }) => word)),
    texts: found.map((line) => line.map(({ text: own }) => own)),
    leftOut: path.missing.map((j) => words[j]!),
    turned: null,
  };
}

function isFit({ perWord }: TextPath, lines: readonly PathLine[], words: readonly string[]): boolean {
  if (perWord < FITS) return true;
  if (perWord > UNFIT) return false;
  if (new Set(words).size < LEAST_DIFFERENT) return true;
  const moved = (by: number): string[] => [...words.slice(by), ...words.slice(0, by)];
  const orders = [[...words].reverse(), moved(words.length >> 1), moved(Math.floor(words.length / 3))];
  return perWord < BETTER * median(orders.map((order) => layText(lines, order).perWord))!;
}

/** Words of one line as the text was laid along it. */
function wordsOfPath(
  path: TextPath,
  line: PathLine,
  words: readonly string[],
  layout: Layout,
  index: number,
): { word: WordWork; text: string | null }[] {
  const starts: number[] = [];
  const texts: (string | null)[] = [];
  for (const stretch of path.stretches) {
    if (stretch.line !== index) continue;
    const own = stretch.words.map((j) => words[j]!);
    const parts = own.length === 2 ? bestParts(line, stretch.first, stretch.last, own, path.scale) : null;
    starts.push(stretch.first);
    if (parts === null) texts.push(own.length === 0 ? null : own.join(' '));
    else {
      starts.push(parts);
      texts.push(own[0]!, own[1]!);
    }
  }
  return wordsFrom(layout.spacings[index]!, starts).map((word, k) => {
    const text = texts[k] ?? null;
    return { text, word: text === null || text.includes(' ') ? { ...word, doubt: true } : word };
  });
}

/** Where two words without a clear gap are best parted between letters; null for a single piece of ink. */
function bestParts(line: PathLine, first: number, last: number, own: readonly string[], scale: number): number | null {
  const [left, right] = own.map((text) => expectedOf(text));
  let best: number | null = null;
  let least = Infinity;
  for (let at = first + 1; at < last; at += 1) {
    const price =
      wordCost(seenOf(line, first, at), left!, scale) +
      wordCost(seenOf(line, at, last), right!, scale) -
      (line.odds[at - 1] ?? 0) / 2;
    if (price < least) [least, best] = [price, at];
  }
  return best;
}

function seenOf(line: PathLine, first: number, last: number): Parameters<typeof wordCost>[0] {
  return {
    from: line.from[first]!,
    to: Math.max(...line.to.slice(first, last)),
    tall: line.tall.slice(first, last).flat(),
    hanging: line.hanging.slice(first, last).flat(),
  };
}

function turnOf(layout: Layout, words: readonly string[]): TextFit['turned'] {
  if (words.length < LEAST_WORDS) return null;
  const widths = layout.words.map((own, i) => own.map((word) => (word.to - word.from) / layout.sizes[i]!));
  const straight = alignWords(widths.flat(), words).cost;
  if (straight < CLEARLY) return null;
  const mirrored = alignWords(
    widths.flatMap((line) => [...line].reverse()),
    words,
  ).cost;
  const upside = alignWords([...widths.flat()].reverse(), words).cost;
  if (Math.min(mirrored, upside) > straight - CLEARLY) return null;
  return mirrored < upside ? 'mirrored' : 'upside-down';
}
