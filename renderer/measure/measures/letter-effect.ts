import { SMALL } from '../letters/letter-kinds.ts';
import type { LetterResult, WordResult } from '../types.ts';
import { additiveFit } from './additive-fit.ts';
import type { ReadPage } from './measure.ts';
import { wordsOfLine } from './measure.ts';

/** A letter counts from this many readings on a page; rarer ones say nothing about their own height. */
const LEAST = 3;
/** Kinds that hold less than this share of the small letters (joined writing) say too little. */
const COVERED = 0.6;
/** Of joined writing this share is enough: its tops are more than its letters, and other words are left out. */
const COVERED_HEADS = 0.4;
/** A change of size along a line is told from what letters are there by lines of so many words only. */
const LEAST_WORDS = 3;
/** Letters further than this (ln) from the fit are left out of it. */
const OUTLIER = 0.12;
/** A letter half or twice the size of its line was cut or aligned wrongly. */
const MISREAD = 0.5;

/** One small letter: what it is, ln of its height in mm, and its place in the word. */
export interface SmallLetter {
  kind: string;
  ln: number;
  index: number;
}

/** What a letter is: the letter of the text, or the kind it looks like where the text is not known. */
function kindOf(letter: LetterResult): string | null {
  if (letter.text !== null) return SMALL.includes(letter.text) ? letter.text : null;
  return letter.shape !== null && letter.zone === 'x' ? `#${letter.shape}` : null;
}

/** Small letters of a word in order; `index` counts all letters of the word. */
export function smallLetters(word: WordResult): SmallLetter[] {
  const found: SmallLetter[] = [];
  word.letters.forEach((letter, index) => {
    const kind = kindOf(letter);
    if (kind === null || letter.excluded || letter.topMm === null || letter.topMm <= 0) return;
    const ln = Math.log(letter.topMm);
    if (Math.abs(ln - Math.log(word.sizeMm)) < MISREAD) found.push({ kind, ln, index });
  });
  return found;
}

/** Names of kinds of tops begin with this. */
const HEAD = '^';

/** The same of the tops of joined writing. */
function smallTops(word: WordResult): SmallLetter[] {
  return word.xHeightsMm.flatMap((height, index) => {
    const kind = word.headKinds?.[index] ?? null;
    return kind === null ? [] : [{ kind: `${HEAD}${String(kind)}`, ln: Math.log(height), index }];
  });
}

/**
 * How much taller each kind of small letter of this hand is than the others, as ln: taken off before sizes are compared
 * along a line, so that a line whose letters change from c to e does not look like growing. Fitted together with the
 * size of each line and one change of size per word for the page.
 */
export function letterEffects(page: ReadPage): Map<string, number> {
  const before = known.get(page);
  if (before) return before;
  const effects = fitted(page);
  known.set(page, effects);
  return effects;
}

/**
 * ln of the heights of a word's small letters, in order. Where it is known which letter (or which look) each is, what
 * that is taller than others is taken off; where others of the page are known by their tops and none of these is, they
 * say nothing.
 */
export function evenedHeights(word: WordResult, effects: ReadonlyMap<string, number>): number[] {
  const known = [...smallLetters(word), ...smallTops(word)].filter(({ kind }) => effects.has(kind));
  if (known.length > 0) return known.map(({ kind, ln }) => ln - effects.get(kind)!);
  return areOfHeads(effects) ? [] : word.xHeightsMm.map((height) => Math.log(height));
}

/** Whether a page's kinds are those of the tops of joined writing: all or none are. */
function areOfHeads(effects: ReadonlyMap<string, number>): boolean {
  const [first] = effects.keys();
  return first !== undefined && first.startsWith(HEAD);
}

/** Several measures ask for the same fit of a page. */
const known = new WeakMap<ReadPage, Map<string, number>>();

function fitted(page: ReadPage): Map<string, number> {
  const effects = fittedTo(page, smallLetters, COVERED);
  return effects.size > 0 ? effects : fittedTo(page, smallTops, COVERED_HEADS);
}

/** @param covered least share of the small tops that kinds must hold */
function fittedTo(page: ReadPage, known: (word: WordResult) => SmallLetter[], covered: number): Map<string, number> {
  const readings = page.lines.flatMap((line, i) =>
    wordsOfLine(line).flatMap((word, k) => known(word).map(({ kind, ln }) => ({ kind, ln, line: i, word: k }))),
  );
  const counts = new Map<string, number>();
  for (const { kind } of readings) counts.set(kind, (counts.get(kind) ?? 0) + 1);
  const used = readings.filter(({ kind }) => counts.get(kind)! >= LEAST);
  const tops = page.lines.reduce(
    (sum, line) => wordsOfLine(line).reduce((part, word) => part + word.xHeightsMm.length, sum),
    0,
  );
  if (used.length < covered * tops || !used.some(({ word }) => word >= LEAST_WORDS - 1)) return new Map();
  const kinds = [...new Set(used.map(({ kind }) => kind))];
  const kindAt = new Map(kinds.map((kind, i) => [kind, i]));
  const rows = used.map((r) => ({ kind: kindAt.get(r.kind)!, line: r.line, word: r.word, ln: r.ln }));
  const fit = additiveFit(rows, kinds.length, page.lines.length);
  // Once more without letters that were cut or read wrongly.
  const kept = rows.filter((row) => Math.abs(fit.rest(row)) < OUTLIER);
  const effects = kept.length > rows.length / 2 ? additiveFit(kept, kinds.length, page.lines.length).kinds : fit.kinds;
  return new Map(kinds.map((kind, i) => [kind, effects[i]!]));
}
