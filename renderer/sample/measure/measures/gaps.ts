import { interval } from '../bootstrap.ts';
import { median } from '../numbers.ts';
import type { LineResult } from '../types.ts';
import type { Measure, ReadPage } from './measure.ts';
import { NOTHING, wordsIn, wordsOfLine } from './measure.ts';
import { pooledMedian, variation } from './pooled.ts';

/** Small letters' median height on the page, mm: the unit of the gaps. Null without small letters. */
function unitMm(page: ReadPage): number | null {
  return median(wordsIn(page).flatMap((word) => word.xHeightsMm));
}

/** Gaps in mm as x-heights of the page; none where no x-height is known. */
function inXHeights(page: ReadPage, clusters: readonly (readonly number[])[]): number[][] {
  const unit = unitMm(page);
  return unit === null ? [] : clusters.map((gaps) => gaps.map((gap) => gap / unit));
}

/** Word gaps of a line, mm. A gap beside an excluded word is none. */
export function wordGapsMm(line: LineResult): number[] {
  return line.words.flatMap((word, i) => {
    const before = line.words[i - 1];
    return !before || word.gapBeforeMm === null || word.excluded || before.excluded ? [] : [word.gapBeforeMm];
  });
}

/** Word gaps of a line, each over the size that the line has there: their spread is not that of the size. */
export function wordGaps(line: LineResult): number[] {
  const gaps: number[] = [];
  line.words.forEach((word, i) => {
    const before = line.words[i - 1];
    if (!before || word.gapBeforeMm === null || word.excluded || before.excluded) return;
    gaps.push(word.gapBeforeMm / ((word.sizeMm + before.sizeMm) / 2));
  });
  return gaps;
}

export const wordGap: Measure = {
  code: 'word-gap',
  name: 'Space between words',
  unit: 'xh',
  direction: 'none',
  source: 'Definition: edge to edge over x-height; about one letter width, 0.8 to 1.5 (common practice, no source).',
  how: 'median free space along the baseline over the median x-height of the page, interval over lines',
  compute: (page, chance) => pooledMedian(inXHeights(page, page.lines.map(wordGapsMm)), chance),
};

export const wordGapCv: Measure = {
  code: 'word-gap-cv',
  name: 'Unevenness of the space between words',
  unit: '%',
  direction: 'less',
  source: 'Definition: standard deviation over mean. Over 50 % is uneven (common practice, no source).',
  how: 'standard deviation over mean of the word gaps, interval over lines',
  compute: (page, chance) => variation(page.lines.map(wordGaps), 5, chance),
};

export const letterGap: Measure = {
  code: 'letter-gap',
  name: 'Space between letters that do not touch',
  unit: 'xh',
  direction: 'none',
  source:
    'Definition: edge to edge over x-height, negative when letters overlap; 0.1 to 0.4 (common practice, no source).',
  how: 'median free space between unjoined letters over the median x-height of the page, interval over words',
  compute: (page, chance) =>
    pooledMedian(
      inXHeights(
        page,
        wordsIn(page).map((word) => word.letterGapsMm),
      ),
      chance,
    ),
};

export const gapRatio: Measure = {
  code: 'gap-ratio',
  name: 'Word space over letter space',
  unit: '1',
  direction: 'more',
  source: 'Definition: median word gap over median letter gap; at least 3 (common practice, no source).',
  how: 'ratio of medians, interval over lines; unknown where letters touch or overlap',
  compute: (page, chance) => {
    const lines = page.lines.map((line) => ({
      words: wordGaps(line),
      letters: wordsOfLine(line).flatMap((word) => word.letterGapsMm.map((gap) => gap / word.sizeMm)),
    }));
    const ratio = (drawn: readonly { words: number[]; letters: number[] }[]): number | null => {
      const words = median(drawn.flatMap((line) => line.words));
      const letters = median(drawn.flatMap((line) => line.letters));
      return words === null || letters === null || letters <= 0 ? null : words / letters;
    };
    const n = lines.reduce((sum, line) => sum + line.words.length, 0);
    return { value: ratio(lines), n, ...interval(lines, ratio, chance), spread: null };
  },
};

export const gapSeparation: Measure = {
  code: 'gap-separation',
  name: 'Chance that a word space is wider than a letter space',
  unit: '1',
  direction: 'more',
  source: 'Definition: overlap of the two distributions; at least 0.95 (common practice, no source).',
  how: 'share of pairs of a word gap and a letter gap in which the word gap is wider, interval over lines',
  compute: (page, chance) => {
    const lines = page.lines.map((line) => ({
      words: wordGaps(line),
      letters: wordsOfLine(line).flatMap((word) => word.letterGapsMm.map((gap) => gap / word.sizeMm)),
    }));
    const n = lines.reduce((sum, line) => sum + line.words.length, 0);
    const value = shareWider(lines);
    return value === null ? { ...NOTHING, n } : { value, n, ...interval(lines, shareWider, chance), spread: null };
  },
};

function shareWider(lines: readonly { words: number[]; letters: number[] }[]): number | null {
  const words = lines.flatMap((line) => line.words);
  const letters = lines.flatMap((line) => line.letters).sort((a, b) => a - b);
  if (words.length === 0 || letters.length === 0) return null;
  let wider = 0;
  for (const gap of words) wider += (countBelow(letters, gap) + countBelow(letters, gap + 1e-12)) / 2;
  return wider / (words.length * letters.length);
}

function countBelow(sorted: readonly number[], value: number): number {
  let low = 0;
  let high = sorted.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (sorted[middle]! < value) low = middle + 1;
    else high = middle;
  }
  return low;
}
