import { median } from '../../statistics/order-statistics.ts';
import type { WordResult } from '../types.ts';
import { evenedHeights, letterEffects, smallLetters } from './letter-effect.ts';
import type { Measure, ReadPage } from './measure.ts';
import { wordsOfLine } from './measure.ts';
import { pooledSlope } from './slopes.ts';
import type { Course } from './slopes.ts';

/** Letters further than this (ln) from the word's median are not averaged with it. */
const NEAR = 0.08;

export const lineDecrement: Measure = {
  code: 'line-decrement',
  name: 'Change of size along a line, per word',
  unit: 'ln(x-height) per word',
  direction: 'none',
  source:
    'Theil-Sen slope (Theil 1950, Sen 1968). Over 10 % from first to last letters in a repeated-letter task: Zham et al. 2019, Front Neurol 10:403; not for sentences.',
  how: 'Theil-Sen slope of ln(x-height) over the words of a line, pooled over lines, interval by t over the lines',
  compute: (page) => {
    const effects = letterEffects(page);
    return pooledSlope(page.lines.map((line) => wordCourse(wordsOfLine(line), effects)));
  },
};

export const lineDecrementLetter: Measure = {
  code: 'line-decrement-letter',
  name: 'Change of size along a line, per letter',
  unit: 'ln(x-height) per letter',
  direction: 'none',
  source: lineDecrement.source,
  how: 'Theil-Sen slope of ln(x-height) over the letters of a line, pooled over lines, interval by t over the lines',
  compute: (page) => pooledSlope(letterCourses(page)),
};

/** Mean of what lies close to the median: steadier than the median of a few letters. Null for none. */
function center(lns: readonly number[]): number | null {
  const middle = median(lns);
  if (middle === null) return null;
  const near = lns.filter((ln) => Math.abs(ln - middle) <= NEAR);
  return near.length === 0 ? middle : near.reduce((a, b) => a + b, 0) / near.length;
}

/** ln(x-height) by word; where the letters are known, their own heights are taken off first. */
function wordCourse(words: readonly WordResult[], effects: ReadonlyMap<string, number>): Course {
  const course: Course = { at: [], ln: [], weight: [] };
  words.forEach((word, index) => {
    const lns = evenedHeights(word, effects);
    const ln = center(lns);
    if (ln === null) return;
    course.at.push(index);
    course.ln.push(ln);
    course.weight.push(lns.length);
  });
  return course;
}

/** ln(height) by letter along each line, counted from its first letter. */
function letterCourses(page: ReadPage): Course[] {
  const effects = letterEffects(page);
  return page.lines.map((line) => {
    const course: Course = { at: [], ln: [], weight: [] };
    let before = 0;
    for (const word of wordsOfLine(line)) {
      const small = smallLetters(word).filter(({ kind }) => effects.has(kind));
      if (small.length > 0)
        for (const { kind, ln, index } of small) {
          course.at.push(before + index);
          course.ln.push(ln - effects.get(kind)!);
          course.weight.push(1);
        }
      else if (word.xHeightMm !== null) {
        // The letters are not known: the word's height stands in its middle.
        const lns = evenedHeights(word, effects);
        if (lns.length > 0) {
          course.at.push(before + word.letterCount / 2);
          course.ln.push(center(lns)!);
          course.weight.push(lns.length);
        }
      }
      before += word.letterCount;
    }
    return course;
  });
}
