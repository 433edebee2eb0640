import type { OwnSpelling } from '../../../db/types/sample.ts';
import { wilson } from '../../statistics/wilson.ts';
import { align, edits, type Step } from './align.ts';
import { confusionsOf, mergeConfusions, type Confusion } from './confusions.ts';
import { words, type Word } from './normalise.ts';

/** What `fairhand readback --json` answers. Shares are 0 to 1 (error rates can exceed 1); null where no word was intended. */
export interface ReadbackScore {
  wordsRight: number;
  wordsIntended: number;
  wordAccuracy: number | null;
  /** Words of one page are alike, so the interval is a little too narrow. */
  wilson95: { low: number | null; high: number | null };
  wer: number | null;
  cerWithSpaces: number | null;
  cerLettersOnly: number | null;
  /** Gaps between words lost or added: one lost gap costs two words and points to spacing, not to letters. */
  spaceErrors: number;
  confusions: Confusion[];
}

/** One intended word and what became of it. */
export interface WordMark {
  intended: string;
  /** What the reader typed at its place; null when left out. */
  read: string | null;
  right: boolean;
}

/** Counts that can be added over lines; the score is computed from their sum. */
export interface ReadbackCounts {
  wordsRight: number;
  wordsIntended: number;
  wordEdits: number;
  characterEdits: number;
  characters: number;
  letterEdits: number;
  letters: number;
  spaceErrors: number;
  confusions: Confusion[];
  marks: WordMark[];
}

/**
 * Scores one reader's text against the intended one.
 * Word accuracy = words right / words intended; WER and CER = edits / intended words or characters.
 */
export function scoreReadback(text: string, read: string, spellings: readonly OwnSpelling[] = []): ReadbackScore {
  return scoreOf(countReadback(text, read, spellings));
}

/** The counts behind `scoreReadback`, for one line or a whole text. */
export function countReadback(text: string, read: string, spellings: readonly OwnSpelling[] = []): ReadbackCounts {
  const intended = words(text).map((word) => withSpellings(word, spellings));
  const typed = withPoints(words(read, true), intended);
  const steps = align(intended, typed, sameWord);
  // A word typed in an accepted form is compared as the intended one, letter by letter too.
  const settled = steps.map((step) => (step.kind === 'match' ? { ...step, read: step.intended } : step));
  const readWords = settled.flatMap((step) => (step.read ? [step.read.text] : []));
  const intendedText = intended.map((word) => word.text).join(' ');
  const withSpaces = align([...intendedText], [...readWords.join(' ')]);
  const intendedLetters = [...intendedText.replaceAll(' ', '')];
  const lettersOnly = align(intendedLetters, [...readWords.join('')]);
  return {
    wordsRight: steps.filter((step) => step.kind === 'match').length,
    wordsIntended: intended.length,
    wordEdits: edits(steps),
    characterEdits: edits(withSpaces),
    characters: [...intendedText].length,
    letterEdits: edits(lettersOnly),
    letters: intendedLetters.length,
    spaceErrors: countSpaceErrors(settled),
    confusions: confusionsOf(withSpaces),
    marks: steps
      .filter((step) => step.intended !== null)
      .map((step) => ({
        intended: step.intended!.text,
        read: step.read?.text ?? null,
        right: step.kind === 'match',
      })),
  };
}

/**
 * A decimal point that was read as a gap parts a number into two words. It is one misread point: joined again, it costs
 * one word and one letter, not two words and a gap.
 */
function withPoints(typed: readonly Word[], intended: readonly Word[]): Word[] {
  const plain = new Set(intended.map(({ text }) => text));
  const split = intended
    .map(({ text }) => text.split(/(?<=\p{Nd})[.,:/](?=\p{Nd})/u))
    .filter((parts) => parts.length > 1 && !parts.every((part) => plain.has(part)));
  const joined: Word[] = [];
  for (let i = 0; i < typed.length;) {
    const parts = split.find((each) => each.every((part, k) => typed[i + k]?.text === part));
    joined.push(parts ? { text: parts.join(''), also: [] } : typed[i]!);
    i += parts?.length ?? 1;
  }
  return joined;
}

/** Adds the counts of several lines. */
export function addCounts(lines: readonly ReadbackCounts[]): ReadbackCounts {
  const sum = (pick: (line: ReadbackCounts) => number) => lines.reduce((total, line) => total + pick(line), 0);
  return {
    wordsRight: sum((line) => line.wordsRight),
    wordsIntended: sum((line) => line.wordsIntended),
    wordEdits: sum((line) => line.wordEdits),
    characterEdits: sum((line) => line.characterEdits),
    characters: sum((line) => line.characters),
    letterEdits: sum((line) => line.letterEdits),
    letters: sum((line) => line.letters),
    spaceErrors: sum((line) => line.spaceErrors),
    confusions: mergeConfusions(lines.map((line) => line.confusions)),
    marks: lines.flatMap((line) => line.marks),
  };
}

/** Score of counted words, letters and gaps. */
export function scoreOf(counts: ReadbackCounts): ReadbackScore {
  const { wordsRight, wordsIntended } = counts;
  const share = (part: number, whole: number) => (whole > 0 ? part / whole : null);
  return {
    wordsRight,
    wordsIntended,
    wordAccuracy: share(wordsRight, wordsIntended),
    wilson95: wordsIntended > 0 ? wilson(wordsRight, wordsIntended) : { low: null, high: null },
    wer: share(counts.wordEdits, wordsIntended),
    cerWithSpaces: share(counts.characterEdits, counts.characters),
    cerLettersOnly: share(counts.letterEdits, counts.letters),
    spaceErrors: counts.spaceErrors,
    confusions: counts.confusions,
  };
}

const sameWord = (a: Word, b: Word): boolean => a.text === b.text || a.also.includes(b.text) || b.also.includes(a.text);

function withSpellings(word: Word, spellings: readonly OwnSpelling[]): Word {
  const form = (text: string) => words(text)[0]?.text;
  const others = spellings.flatMap(({ meant, written }) => {
    const pair = [form(meant), form(written)];
    return pair.includes(word.text) ? pair.filter((other) => other !== undefined && other !== word.text) : [];
  });
  return others.length > 0 ? { text: word.text, also: [...word.also, ...(others as string[])] } : word;
}

/**
 * Gaps that were lost or added, looked at between words read right only: there, two written words whose letters
 * ended up in one read word lost their gap, one written word whose letters ended up in two gained one.
 * A word left out entirely is no spacing error.
 */
function countSpaceErrors(steps: readonly Step<Word>[]): number {
  let errors = 0;
  let intended: string[] = [];
  let read: string[] = [];
  const close = () => {
    errors += joinedOrSplit(intended, read);
    intended = [];
    read = [];
  };
  for (const step of steps) {
    if (step.kind === 'match') close();
    else {
      if (step.intended) intended.push(step.intended.text);
      if (step.read) read.push(step.read.text);
    }
  }
  close();
  return errors;
}

function joinedOrSplit(intended: readonly string[], read: readonly string[]): number {
  const owners = (list: readonly string[]) => list.flatMap((word, index) => [...word].map(() => index));
  const intendedOwner = owners(intended);
  const readOwner = owners(read);
  const readOf = intended.map(() => new Set<number>());
  const intendedOf = read.map(() => new Set<number>());
  let i = 0;
  let j = 0;
  for (const step of align([...intended.join('')], [...read.join('')])) {
    if (step.kind === 'match') {
      readOf[intendedOwner[i]!]!.add(readOwner[j]!);
      intendedOf[readOwner[j]!]!.add(intendedOwner[i]!);
    }
    if (step.intended !== null) i++;
    if (step.read !== null) j++;
  }
  const extra = (sets: readonly Set<number>[]) => sets.reduce((sum, set) => sum + Math.max(0, set.size - 1), 0);
  return extra(readOf) + extra(intendedOf);
}
