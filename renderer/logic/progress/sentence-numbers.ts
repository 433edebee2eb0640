import { CHANGE_VERSION, smallestChange, type ChangeExamination, type ChangeLimits } from '../../change/index.ts';

/** One number behind the sentence, with where it comes from. */
export interface NumberRow {
  name: string;
  value: string;
  how: string;
}

const points = (value: number): string => `${value > 0 ? '+' : ''}${value.toFixed(0)} points`;
const level = (value: number): string => `${value.toFixed(0)} %`;

/** "98.1 %", "more than 99.9 %": never a chance of 100. */
function chance(value: number): string {
  if (value > 0.999) return 'more than 99.9 %';
  return value < 0.001 ? 'less than 0.1 %' : `${(100 * value).toFixed(1)} %`;
}

/** The numbers behind a verdict, in the order in which they are worth reading; none where nothing is compared. */
export function numbersBehind({ answer, before, now }: ChangeExamination, limits: ChangeLimits): NumberRow[] {
  const { chances, change, perWords, visitSd } = answer;
  if (!chances || !change || perWords === null || visitSd === null) return [];
  const held = Math.round((1 - 2 * limits.intervalTail) * 1000) / 10;
  const p = (answer.before! + answer.now!) / 200;
  const smallest = smallestChange({ p, words: perWords, n1: before.length, n2: now.length, sd: visitSd }, limits);
  return [
    {
      name: 'Before, and now',
      value: `${level(answer.before!)}, ${level(answer.now!)}`,
      how: `level behind ${before.length} and ${now.length} visits, percent of words; a later visit counts for more (${limits.decay} for each visit after it)`,
    },
    {
      name: 'Change',
      value: `${points(change.mid)} (${points(change.low)} to ${points(change.high)})`,
      how: `the interval holds the true change with a chance of ${held} %`,
    },
    {
      name: 'Chance of more, of less',
      value: `${chance(chances.up)}, ${chance(1 - chances.up)}`,
      how: `“yes” is said from ${(100 * limits.sure).toFixed(1)} %, “probably” from ${(100 * limits.leaning).toFixed(1)} %`,
    },
    {
      name: `Chance of a change under ${limits.steadyPoints} points`,
      value: chance(chances.steady),
      how: `“about the same” is said from ${(100 * limits.steadyChance).toFixed(0)} %`,
    },
    {
      name: 'From day to day',
      value: visitSd.toFixed(2),
      how: 'standard deviation between visits, logit of the share of words; from this client and the clinic’s repeat pairs',
    },
    {
      name: 'Smallest change that counts',
      value: `${smallest.mdc95.toFixed(0)} points; ${smallest.callable.toFixed(0)} points are called in 8 of 10 clients`,
      how: `so many visits of ${perWords} words; longer texts and more visits make it smaller`,
    },
    { name: 'Method', value: CHANGE_VERSION, how: 'its error rates were simulated: see the guide' },
  ];
}
