import { probit } from 'simple-statistics';

/**
 * Two-sided normal quantile: how many standard errors hold `confidence` of the normal distribution.
 * The three usual levels are exact (Abramowitz & Stegun 1964, table 26.1, and R qnorm); others come from simple-statistics' `probit`
 * (an approximation good to about 0.0005).
 * @param confidence share between 0 and 1, for example 0.95
 * @throws RangeError outside (0, 1)
 */
export function normalQuantile(confidence: number): number {
  if (!(confidence > 0 && confidence < 1)) throw new RangeError('confidence lies between 0 and 1');
  if (confidence === 0.95) return 1.959963984540054;
  if (confidence === 0.9) return 1.6448536269514722;
  if (confidence === 0.99) return 2.5758293035489004;
  return probit((1 + confidence) / 2);
}
