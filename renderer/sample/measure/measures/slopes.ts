import { interval } from '../bootstrap.ts';
import { NOTHING } from './measure.ts';
import type { Reading } from './measure.ts';

/** ln(height) of one line by place: index of the word or letter. */
export interface Course {
  at: number[];
  ln: number[];
  /** How many letters each rests on. */
  weight: number[];
}

/**
 * Theil-Sen slope pooled over lines: median of the slopes of all pairs within a line, each pair weighted by its
 * distance and letters (Theil 1950, Sen 1968; weights after Jaeckel 1972, from memory). Interval by drawing lines.
 */
export function pooledSlope(courses: readonly Course[], chance: () => number): Reading {
  const pairs: { slope: number; weight: number; line: number }[] = [];
  courses.forEach((course, line) => {
    for (let i = 0; i < course.at.length; i += 1)
      for (let j = i + 1; j < course.at.length; j += 1) {
        const distance = course.at[j]! - course.at[i]!;
        if (distance > 0) {
          const [a, b] = [course.weight[i]!, course.weight[j]!];
          pairs.push({ slope: (course.ln[j]! - course.ln[i]!) / distance, weight: (distance * a * b) / (a + b), line });
        }
      }
  });
  if (pairs.length === 0) return NOTHING;
  pairs.sort((a, b) => a.slope - b.slope);
  const once = courses.map(() => 1);
  const lines = courses.map((_, line) => line).filter((line) => courses[line]!.at.length > 1);
  const times = new Array<number>(courses.length).fill(0);
  return {
    value: weightedMedian(pairs, once),
    n: courses.reduce((sum, course) => sum + course.at.length, 0),
    ...interval(
      lines,
      (drawn) => {
        times.fill(0);
        for (const line of drawn) times[line]! += 1;
        return weightedMedian(pairs, times);
      },
      chance,
    ),
    spread: null,
  };
}

function weightedMedian(
  sorted: readonly { slope: number; weight: number; line: number }[],
  times: readonly number[],
): number | null {
  let total = 0;
  for (const pair of sorted) total += pair.weight * times[pair.line]!;
  if (total === 0) return null;
  let sum = 0;
  for (let i = 0; i < sorted.length; i += 1) {
    sum += sorted[i]!.weight * times[sorted[i]!.line]!;
    if (sum >= total / 2) return sorted[i]!.slope;
  }
  return null;
}
