import { interval, Sorted } from './bootstrap.ts';
import { median } from '../../statistics/order-statistics.ts';
import type { LineResult } from '../types.ts';
import type { Measure, ReadPage } from './measure.ts';
import { NOTHING, wordsIn, wordsOfLine } from './measure.ts';
import { pooledMedian, variation } from './pooled.ts';
import { smallHeights } from './x-height.ts';

/** Small letters' median height on the page, mm: the unit of the gaps. Null without small letters. */
function unitMm(page: ReadPage): number | null {
  return median(smallHeights(page).flat());
}

/** Gaps in mm as x-heights of the page; none where no x-height is known. */
function inXHeights(page: ReadPage, clusters: readonly (readonly number[])[]): number[][] {
  const unit = unitMm(page);
  return unit === null ? [] : clusters.map((gaps) => gaps.map((gap) => gap / unit));
}

/** Word gaps of a line, mm. A gap beside an excluded word is none. */
function wordGapsMm(line: LineResult): number[] {
  return line.words.flatMap((word, i) => {
    const before = line.words[i - 1];
    return !before || word.gapBeforeMm === null || word.excluded || before.excluded ? [] : [word.gapBeforeMm];
  });
}

/** Word gaps of a line, each over the size that the line has there: their spread is not that of the size. */
function wordGaps(line: LineResult): number[] {
  const gaps: number[] = [];
  line.words.forEach((word, i) => {
    const before = line.words[i - 1];
    if (!before || word.gapBeforeMm === null || word.excluded || before.excluded) return;
    gaps.push(word.gapBeforeMm / ((word.sizeMm + before.sizeMm) / 2));
  });
  return gaps;
}

/** From this share of doubtful gaps on, measures of the space between words are withheld. */
const WITHHELD = 0.2;

/** Whether the words of a page are told apart too badly for the space between them to mean anything. */
const isWithheld = (page: ReadPage): boolean => (page.wordDoubt ?? 0) > WITHHELD;

export const wordGap: Measure = {
  code: 'word-gap',
  name: 'Space between words',
  unit: 'xh',
  direction: 'none',
  source: 'Definition: edge to edge over x-height; about one letter width, 0.8 to 1.5 (common practice, no source).',
  how: 'median free space along the baseline over the median x-height of the page, interval over lines',
  compute: (page, draws) =>
    isWithheld(page) ? NOTHING : pooledMedian(inXHeights(page, page.lines.map(wordGapsMm)), draws),
};

export const wordGapCv: Measure = {
  code: 'word-gap-cv',
  name: 'Unevenness of the space between words',
  unit: '%',
  direction: 'less',
  least: 0,
  source: 'Definition: standard deviation over mean. Over 50 % is uneven (common practice, no source).',
  how: 'standard deviation over mean of the word gaps, interval over lines',
  compute: (page, draws) => (isWithheld(page) ? NOTHING : variation(page.lines.map(wordGaps), 5, draws)),
};

export const letterGap: Measure = {
  code: 'letter-gap',
  name: 'Space between letters that do not touch',
  unit: 'xh',
  direction: 'none',
  source:
    'Definition: edge to edge over x-height, negative when letters overlap; 0.1 to 0.4 (common practice, no source).',
  how: 'median free space between unjoined letters over the median x-height of the page, interval over words',
  compute: (page, draws) =>
    pooledMedian(
      inXHeights(
        page,
        wordsIn(page).map((word) => word.letterGapsMm),
      ),
      draws,
    ),
};

export const gapRatio: Measure = {
  code: 'gap-ratio',
  name: 'Word space over letter space',
  unit: '1',
  direction: 'more',
  source: 'Definition: median word gap over median letter gap; at least 3 (common practice, no source).',
  how: 'ratio of medians, interval over lines; unknown where letters touch or overlap',
  compute: (page, draws) => {
    if (isWithheld(page)) return NOTHING;
    const lines = gapsByLine(page);
    const words = Sorted.of(lines.map((line) => line.words));
    const letters = Sorted.of(lines.map((line) => line.letters));
    const ratio = (times: Int32Array): number | null => {
      const word = words.median(times);
      const letter = letters.median(times);
      return word === null || letter === null || letter <= 0 ? null : word / letter;
    };
    const word = median(lines.flatMap((line) => line.words));
    const letter = median(lines.flatMap((line) => line.letters));
    const value = word === null || letter === null || letter <= 0 ? null : word / letter;
    return { value, n: words.values.length, ...interval(lines.length, ratio, draws), spread: null };
  },
};

export const gapSeparation: Measure = {
  code: 'gap-separation',
  name: 'Chance that a word space is wider than a letter space',
  unit: '1',
  direction: 'more',
  source: 'Definition: overlap of the two distributions; at least 0.95 (common practice, no source).',
  how: 'share of pairs of a word gap and a letter gap in which the word gap is wider, interval over lines',
  compute: (page, draws) => {
    if (isWithheld(page)) return NOTHING;
    const lines = gapsByLine(page);
    const n = lines.reduce((sum, line) => sum + line.words.length, 0);
    // Wider pairs between each two lines, counted once; a draw only weighs them.
    const sorted = lines.map((line) => Float64Array.from(line.letters).sort());
    const wider = lines.map((line) => sorted.map((letters) => pairsWider(line.words, letters)));
    const words = lines.map((line) => line.words.length);
    const letters = lines.map((line) => line.letters.length);
    const share = (times: Int32Array): number | null => {
      let won = 0;
      let wordsDrawn = 0;
      let lettersDrawn = 0;
      for (let i = 0; i < words.length; i += 1) {
        wordsDrawn += times[i]! * words[i]!;
        lettersDrawn += times[i]! * letters[i]!;
        if (times[i] === 0) continue;
        const row = wider[i]!;
        let sum = 0;
        for (let j = 0; j < row.length; j += 1) sum += times[j]! * row[j]!;
        won += times[i]! * sum;
      }
      const all = wordsDrawn * lettersDrawn;
      return all === 0 ? null : won / all;
    };
    const value = share(new Int32Array(lines.length).fill(1));
    return value === null ? { ...NOTHING, n } : { value, n, ...interval(lines.length, share, draws), spread: null };
  },
};

/** Word and letter gaps by line, each over the size that the line has there. */
function gapsByLine(page: ReadPage): { words: number[]; letters: number[] }[] {
  return page.lines.map((line) => ({
    words: wordGaps(line),
    letters: wordsOfLine(line).flatMap((word) => word.letterGapsMm.map((gap) => gap / word.sizeMm)),
  }));
}

/** Pairs in which the word gap is wider; equal ones count half. */
function pairsWider(words: readonly number[], letters: Float64Array): number {
  const widest = letters.at(-1) ?? -Infinity;
  let wider = 0;
  for (const gap of words) {
    // Most word gaps are wider than any between letters.
    if (widest < gap) {
      wider += letters.length;
      continue;
    }
    let below = 0;
    while (below < letters.length && letters[below]! < gap) below += 1;
    let equal = 0;
    while (below + equal < letters.length && letters[below + equal] === gap) equal += 1;
    wider += below + equal / 2;
  }
  return wider;
}
