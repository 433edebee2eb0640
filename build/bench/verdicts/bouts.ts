/** Fatigue onset within bouts, and the interval of the shrinking along a line. */
import { seededRandom, type Random } from '../../letters/random.ts';
import { pooledSlope, type Course } from '../../../renderer/measure/measures/slopes.ts';
import { fatigueOnset } from '../../../renderer/change/fatigue-onset.ts';
import { limits } from './looks.ts';
import { Counter, type Rate, type Setting } from './rate.ts';
import { wordsRight } from './simulated-clients.ts';

const LINE_SWING = { sd: 0.3, rho: 0 };

function onset(lines: number, words: number, bouts: number, fall: number, side: Rate['side'], bound: number): Setting {
  const name = `onset, ${lines} lines of ${words}, ${bouts} bout${bouts > 1 ? 's' : ''}, ${fall ? `-${fall}` : 'no fall'}`;
  const from = Math.max(3, Math.floor(lines / 2) + 1);
  const levels = Array.from({ length: lines }, (_, i) => (i + 1 < from ? 0.8 : 0.8 - fall / 100));
  return {
    name,
    run(clients, seed) {
      const random = seededRandom(seed);
      const counter = new Counter();
      for (let c = 0; c < clients; c++) {
        const written = Array.from({ length: bouts }, () =>
          wordsRight(random, words, levels, LINE_SWING).map((right) => ({ right, words })),
        );
        counter.count('onset found', fatigueOnset(written, limits).onsetLine !== null);
      }
      return [counter.rate(name, 'onset found', clients, side, bound)];
    },
  };
}

/** Noise of a line's own slope: normal, with heavy tails, skewed; mean 0, variance 1. */
const noises: Readonly<Record<string, (random: Random) => number>> = {
  normal: (random) => random.normal(),
  'heavy tails': (random) => {
    const squares = random.normal() ** 2 + random.normal() ** 2 + random.normal() ** 2;
    return random.normal() / Math.sqrt(squares / 3) / Math.sqrt(3);
  },
  skewed: (random) => -Math.log(1 - random.next()) - 1,
};

const WORDS_A_LINE = 8;
const TRUE_SLOPE = -0.01;

/** ln of word heights along a line, whose own slope differs a little from the hand's. */
function lineOfWords(random: Random, noise: number): Course {
  const slope = TRUE_SLOPE + 0.006 * noise;
  const at = Array.from({ length: WORDS_A_LINE }, (_, i) => i);
  return { at, ln: at.map((i) => slope * i + 0.08 * random.normal()), weight: at.map(() => 1) };
}

function decrement(lines: number, kind: string): Setting {
  const name = `decrement, ${lines} lines, ${kind}`;
  return {
    name,
    run(clients, seed) {
      const random = seededRandom(seed);
      const counter = new Counter();
      for (let c = 0; c < clients; c++) {
        const page = Array.from({ length: lines }, () => lineOfWords(random, noises[kind]!(random)));
        const { low, high } = pooledSlope(page);
        counter.count('covered', low! <= TRUE_SLOPE && TRUE_SLOPE <= high!);
      }
      return [counter.rate(name, 'covered', clients, 'least', 0.93)];
    },
  };
}

export const boutSettings: Setting[] = [
  ...[4, 5, 6, 7, 8, 9, 10].flatMap((lines) =>
    [6, 8, 10].flatMap((words) => [1, 3].map((bouts) => onset(lines, words, bouts, 0, 'most', 0.05))),
  ),
  onset(8, 8, 1, 30, 'least', 0.5),
  onset(8, 8, 3, 30, 'least', 0.9),
  ...[3, 4, 5, 8, 12].flatMap((lines) => Object.keys(noises).map((kind) => decrement(lines, kind))),
];
