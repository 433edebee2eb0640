/** Log likelihood of one visit over the grid. */
import { CELLS, EFFECTS, EFFECT_WEIGHTS, LEVELS, LOGITS, SPREADS } from './posterior/grid.ts';

const EFFECTS_EACH = EFFECTS.length;
const PLACES = CELLS * EFFECTS_EACH;
/** ln q and ln (1 - q) for every cell and effect, q the chance that a word is right. */
const logRight = new Float64Array(PLACES);
const logWrong = new Float64Array(PLACES);
SPREADS.forEach((spread, s) => {
  for (let i = 0; i < LEVELS; i++) {
    EFFECTS.forEach((z, k) => {
      const x = LOGITS[i]! + spread * z;
      const at = (s * LEVELS + i) * EFFECTS_EACH + k;
      logRight[at] = -Math.log1p(Math.exp(-x));
      logWrong[at] = -Math.log1p(Math.exp(x));
    });
  }
});

/** Powers of q and of 1 - q up to this are kept: whole counts then need no exponential. 10 MB when all are used. */
const POWERS = 64;
const powersOfRight: Float64Array[] = [new Float64Array(PLACES).fill(1)];
const powersOfWrong: Float64Array[] = [new Float64Array(PLACES).fill(1)];

function powerOf(powers: Float64Array[], log: Float64Array, n: number): Float64Array {
  while (powers.length <= n) {
    const k = powers.length;
    powers.push(log.map((value) => Math.exp(k * value)));
  }
  return powers[n]!;
}

/** Tables are asked for again at every look; a caseload's different counts are far fewer than this. */
const MOST_KEPT = 1500;
const kept = new Map<string, Float64Array>();

/**
 * Log likelihood of a visit, up to a constant, one row of levels for each spread: the binomial chance of `right` of
 * `words`, averaged over the visit's effect.
 * @param right words right; a fraction where readers are averaged, 0 to `words`
 * @param words more than 0
 * @returns a shared table: do not write into it
 */
export function visitTable(right: number, words: number): Float64Array {
  const key = `${right}/${words}`;
  const known = kept.get(key);
  if (known) return known;
  if (kept.size >= MOST_KEPT) kept.clear();
  const least = Math.floor(right);
  const byPower = Number.isInteger(words) && words - least <= POWERS && least <= POWERS;
  const table = byPower ? byPowers(least, words - least, right - least) : byExponents(right, words - right);
  kept.set(key, table);
  return table;
}

/**
 * From powers of whole counts; a fraction f of a word adds q^f (1 - q)^-f, which is e^(f logit q), and the logit is the
 * level's plus the effect: one exponential each instead of one for all their combinations.
 */
function byPowers(right: number, wrong: number, fraction: number): Float64Array {
  const ofRight = powerOf(powersOfRight, logRight, right);
  const ofWrong = powerOf(powersOfWrong, logWrong, wrong);
  const ofLevel = LOGITS.map((logit) => Math.exp(fraction * logit));
  const table = new Float64Array(CELLS);
  let at = 0;
  SPREADS.forEach((spread, s) => {
    const ofEffect = EFFECTS.map((z, k) => EFFECT_WEIGHTS[k]! * Math.exp(fraction * spread * z));
    for (let i = 0; i < LEVELS; i++) {
      let sum = 0;
      for (let k = 0; k < EFFECTS_EACH; k++, at++) sum += ofEffect[k]! * ofRight[at]! * ofWrong[at]!;
      table[s * LEVELS + i] = Math.log(sum * ofLevel[i]!);
    }
  });
  return table;
}

/** The best that any level can give: taken out, so that long texts do not fall below the smallest number. */
function highest(right: number, wrong: number): number {
  const part = (n: number): number => (n > 0 ? n * Math.log(n / (right + wrong)) : 0);
  return part(right) + part(wrong);
}

function byExponents(right: number, wrong: number): Float64Array {
  const top = highest(right, wrong);
  const table = new Float64Array(CELLS);
  for (let cell = 0, at = 0; cell < CELLS; cell++) {
    let sum = 0;
    let best = -Infinity;
    for (let k = 0; k < EFFECTS_EACH; k++, at++) {
      const exponent = right * logRight[at]! + wrong * logWrong[at]! - top;
      if (exponent > best) best = exponent;
      if (exponent > -700) sum += EFFECT_WEIGHTS[k]! * Math.exp(exponent);
    }
    table[cell] = sum > 0 ? Math.log(sum) : best;
  }
  return table;
}
