/** Goal levels: a client in the middle of a level, judged by the tries together, how often in a neighbor or beyond. */
import { seededRandom } from '../../letters/random.ts';
import { smallestChange } from '../../../renderer/change/smallest-change.ts';
import { limits } from './looks.ts';
import { Counter, type Setting } from './rate.ts';
import { wordsRight } from './simulated-clients.ts';

function level(p: number, words: number, tries: number, sd: number): Setting {
  const name = `goal level at ${p * 100} %, ${tries} tries of ${words} words, SD ${sd}`;
  return {
    name,
    run(clients, seed) {
      const random = seededRandom(seed);
      const counter = new Counter();
      const half = smallestChange({ p, words, n1: 1, n2: tries, sd }, limits).levelWidth / 200;
      for (let c = 0; c < clients; c++) {
        const levels = Array.from({ length: tries }, () => p);
        const right = wordsRight(random, words, levels, { sd, rho: 0 }).reduce((a, b) => a + b, 0);
        const away = Math.abs(right / (words * tries) - p);
        counter.count('in a neighbor or beyond', away > half);
        counter.count('beyond a neighbor', away > 3 * half);
      }
      // 1 in 3 and 1 in 300 of a normal distribution; counts are coarse and skewed near the ends.
      return [
        counter.rate(name, 'in a neighbor or beyond', clients, 'most', 1 / 3),
        counter.rate(name, 'beyond a neighbor', clients, 'most', 0.01),
      ];
    },
  };
}

export const goalSettings: Setting[] = [0.5, 0.7, 0.85].flatMap((p) =>
  [8, 24, 60].flatMap((words) => [0.3, 0.5].map((sd) => level(p, words, 3, sd))),
);
