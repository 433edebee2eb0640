/** ln of the gamma function: Lanczos' approximation (g = 7, nine terms), good to 15 digits for x > 0. */
function logGamma(x: number): number {
  const terms = [
    0.99999999999980993, 676.5203681218851, -1259.1392167224028, 771.32342877765313, -176.61502916214059,
    12.507343278686905, -0.13857109526572012, 9.9843695780195716e-6, 1.5056327351493116e-7,
  ];
  if (x < 0.5) return Math.log(Math.PI / Math.sin(Math.PI * x)) - logGamma(1 - x);
  const shifted = x - 1;
  const t = shifted + 7.5;
  const sum = terms.reduce((all, term, i) => (i === 0 ? term : all + term / (shifted + i)), 0);
  return 0.5 * Math.log(2 * Math.PI) + (shifted + 0.5) * Math.log(t) - t + Math.log(sum);
}

/** Regularized incomplete beta function by its continued fraction (Lentz). */
function incompleteBeta(x: number, a: number, b: number): number {
  if (x <= 0) return 0;
  if (x >= 1) return 1;
  if (x > (a + 1) / (a + b + 2)) return 1 - incompleteBeta(1 - x, b, a);
  const front = Math.exp(logGamma(a + b) - logGamma(a) - logGamma(b) + a * Math.log(x) + b * Math.log(1 - x)) / a;
  let [f, c, d] = [1, 1, 0];
  for (let i = 0; i <= 400; i++) {
    const m = Math.floor(i / 2);
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    const step = i === 0 ? 1 : i % 2 === 0 ? even : odd;
    d = 1 / (1 + step * d || 1e-30);
    c = 1 + step / c || 1e-30;
    f *= c * d;
    if (i > 0 && Math.abs(1 - c * d) < 1e-14) break;
  }
  return front * (f - 1);
}

/**
 * Quantile of Student's t distribution, by bisection on its distribution function (incomplete beta function).
 * @param chance 0 to 1, exclusive
 * @param df degrees of freedom, more than 0
 * @throws RangeError outside these
 * Source: Abramowitz and Stegun 26.5.8, 26.7.1; checked against printed tables and scipy in tests.
 */
export function studentQuantile(chance: number, df: number): number {
  if (!(chance > 0 && chance < 1)) throw new RangeError('a chance lies between 0 and 1');
  if (!(df > 0)) throw new RangeError('degrees of freedom are more than 0');
  if (chance < 0.5) return -studentQuantile(1 - chance, df);
  const above = (t: number): number => incompleteBeta(df / (df + t * t), df / 2, 0.5) / 2;
  let high = 1;
  while (above(high) > 1 - chance) high *= 2;
  let low = 0;
  for (let i = 0; i < 80; i++) {
    const middle = (low + high) / 2;
    if (above(middle) > 1 - chance) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
