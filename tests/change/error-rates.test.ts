/**
 * A share of `npm run verdicts`: error rates on simulated clients whose truth is known. The bounds were set with the
 * model; the clients are simulated here anew, by another program than the one the model was worked out with.
 */
import { describe, expect, test } from 'vitest';
import { covers, coversNone, looksOf } from '../../build/bench/verdicts/looks.ts';
import { keepsBound, settings } from '../../build/bench/verdicts/index.ts';
import { ask, weekly } from './support.ts';

const CLIENTS = 120;
const SEED = 7;
/** Every so many of the settings, so that each kind is met. */
const STEP = 13;

describe('error rates', () => {
  const chosen = settings.map((setting, at) => ({ setting, at })).filter(({ at }) => at % STEP === 0);
  test.each(chosen.map(({ setting, at }) => [setting.name, at] as const))('%s', (_name, at) => {
    const missed = settings[at]!.run(CLIENTS, SEED + at).filter((rate) => !keepsBound(rate));
    expect(missed.map(({ what, rate, bound, side }) => `${what}: ${rate} (at ${side} ${bound})`)).toEqual([]);
  });
});

test('what is simulated is what the door answers', () => {
  for (const right of [
    [10, 11, 10, 17, 18, 20],
    [20, 21, 22, 12, 9, 8],
    [12, 13, 12, 12, 13, 12],
  ]) {
    looksOf(right, 24, 3).forEach((look) => {
      const answer = ask(weekly(right.slice(0, 3 + look.at + 1), 3));
      const judged = look.judged();
      expect(look.up).toBeCloseTo(answer.chances!.up, 10);
      expect(judged.change.mid).toBeCloseTo(answer.change!.mid, 8);
      expect(judged.verdict).toBe(answer.verdict);
      expect(covers(judged, 0)).toBe(coversNone(look));
    });
  }
});
