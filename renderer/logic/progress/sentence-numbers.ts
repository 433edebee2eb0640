import type { Telling } from '../texts/screens/telling.ts';
import { CHANGE_VERSION, smallestChange, type ChangeExamination, type ChangeLimits } from '../../change/index.ts';

/** One number behind the sentence, with where it comes from. */
export interface NumberRow {
  name: string;
  value: string;
  how: string;
}

/** The numbers behind a verdict, in the order in which they are worth reading; none where nothing is compared. */
export function numbersBehind(
  { answer, before, now }: ChangeExamination,
  limits: ChangeLimits,
  { told, decimals }: Telling,
): NumberRow[] {
  const { chances, change, perWords, visitSd } = answer;
  if (!chances || !change || perWords === null || visitSd === null) return [];
  const words = told.course.numbers;
  const points = (value: number): string => `${value > 0 ? '+' : ''}${decimals(value)}`;
  const level = (value: number): string => `${decimals(value)} %`;
  /** Never a chance of 100. */
  const chance = (value: number): string => {
    if (value > 0.999) return words.moreThan(decimals(99.9, 1));
    return value < 0.001 ? words.lessThan(decimals(0.1, 1)) : `${decimals(100 * value, 1)} %`;
  };
  const held = decimals(100 * (1 - 2 * limits.intervalTail), 1, 0);
  const p = (answer.before! + answer.now!) / 200;
  const smallest = smallestChange({ p, words: perWords, n1: before.length, n2: now.length, sd: visitSd }, limits);
  return [
    {
      name: words.level,
      value: `${level(answer.before!)}; ${level(answer.now!)}`,
      how: words.levelHow(before.length, now.length, decimals(limits.decay, 3, 0)),
    },
    {
      name: words.change,
      value: words.range(points(change.mid), points(change.low), points(change.high)),
      how: words.changeHow(held),
    },
    {
      name: words.chance,
      value: `${chance(chances.up)}; ${chance(1 - chances.up)}`,
      how: words.chanceHow(decimals(100 * limits.sure, 1), decimals(100 * limits.leaning, 1)),
    },
    {
      name: words.steady(limits.steadyPoints),
      value: chance(chances.steady),
      how: words.steadyHow(decimals(100 * limits.steadyChance)),
    },
    { name: words.spread, value: decimals(visitSd, 2), how: words.spreadHow },
    {
      name: words.smallest,
      value: words.smallestValue(decimals(smallest.mdc95), decimals(smallest.callable)),
      how: words.smallestHow(perWords),
    },
    { name: words.method, value: CHANGE_VERSION, how: words.methodHow },
  ];
}
