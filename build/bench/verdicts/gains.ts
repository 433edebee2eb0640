/** Clients who gained: how often it is seen, and how often a gain is called steady. */
import { seededRandom } from '../../letters/random.ts';
import { covers, limits, looksOf } from './looks.ts';
import { Counter, type Rate, type Setting } from './rate.ts';
import { stepPath, wordsRight } from './simulated-clients.ts';

const SWING = { sd: 0.3, rho: 0 };

interface Needed {
  up: number;
  leaning: number;
}

function gain(points: number, words: number, needed: Needed): Setting {
  const name = `+${points} from 50 %, 3 + 5, SD 0.3, ${words} words`;
  return {
    name,
    run(clients, seed) {
      const random = seededRandom(seed);
      const counter = new Counter();
      for (let c = 0; c < clients; c++) {
        const right = wordsRight(random, words, stepPath(0.5, 3, 0.5 + points / 100, 5), SWING);
        const looks = looksOf(right, words, 3);
        const judged = looks.map((look) => look.judged());
        counter.count(
          'up by the fifth',
          looks.some(({ up }) => up >= limits.sure),
        );
        counter.count(
          'leaning by the fifth',
          looks.some(({ up }) => up >= limits.leaning),
        );
        counter.count(
          'steady, ever',
          judged.some(({ verdict }) => verdict === 'steady'),
        );
        counter.count('covered at the fifth', covers(judged.at(-1)!, points));
      }
      const rate = (what: string, side: Rate['side'], bound: number): Rate =>
        counter.rate(name, what, clients, side, bound);
      return [
        rate('up by the fifth', 'least', needed.up),
        rate('leaning by the fifth', 'least', needed.leaning),
        rate('steady, ever', 'most', 0.05),
        rate('covered at the fifth', 'least', 0.93),
      ];
    },
  };
}

/** 6 or 7 of 24 twice, then 20 to 22: not a matter of chance. */
const obvious: Setting = {
  name: '6-7 of 24 twice, then 20-22',
  run() {
    const all = [6, 7].flatMap((a) => [6, 7].flatMap((b) => [20, 21, 22].map((c) => [a, b, c])));
    const up = all.filter((right) => looksOf(right, 24, 2)[0]!.up >= limits.sure).length;
    return [
      {
        setting: this.name,
        what: 'up at the first retest',
        rate: up / all.length,
        clients: all.length,
        side: 'least',
        bound: 1,
      },
    ];
  },
};

export const gainSettings: Setting[] = [
  gain(20, 24, { up: 0.13, leaning: 0.45 }),
  gain(20, 60, { up: 0.21, leaning: 0.62 }),
  gain(30, 24, { up: 0.58, leaning: 0.86 }),
  gain(30, 60, { up: 0.8, leaning: 0.95 }),
  obvious,
];
