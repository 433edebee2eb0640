/** Clients in whom nothing changed: how often up, down or leaning is said at any of eight looks, and coverage. */
import { seededRandom, type Random } from '../../letters/random.ts';
import { spreadPrior, type CountPair } from '../../../renderer/change/spread-prior.ts';
import { coversNone, limits, looksOf, priorWithoutPairs } from './looks.ts';
import { Counter, type Rate, type Setting } from './rate.ts';
import { binomial, stepPath, wordsRight, type Swing } from './simulated-clients.ts';

const RETESTS = 8;
/** Looks at which coverage is counted: the first, third and eighth. */
const COVERAGE_AT = [0, 2, 7];
/** Leaning has a bound up to this spread. */
const LEANING_SPREAD = 0.3;

const swings: Swing[] = [0.2, 0.3, 0.4, 0.5].flatMap((sd) => [0, 0.3].map((rho) => ({ sd, rho })));

function unchanged(swing: Swing, baselines: number, words: number, p: number): Setting {
  const name = `unchanged, SD ${swing.sd} rho ${swing.rho}, ${baselines} + ${RETESTS}, ${words} words, ${p * 100} %`;
  return {
    name,
    run(clients, seed) {
      const random = seededRandom(seed);
      const counter = new Counter();
      for (let c = 0; c < clients; c++) {
        const right = wordsRight(random, words, stepPath(p, baselines, p, RETESTS), swing);
        const looks = looksOf(right, words, baselines);
        countEver(counter, looks);
        for (const at of COVERAGE_AT) counter.count(`covered ${at + 1}`, coversNone(looks[at]!));
      }
      const rate = (what: string, side: Rate['side'], bound: number): Rate =>
        counter.rate(name, what, clients, side, bound);
      const leaningSide = swing.sd <= LEANING_SPREAD ? 'most' : 'told';
      return [
        rate('up', 'most', 0.025),
        rate('down', 'most', 0.025),
        rate('leaning up', leaningSide, 0.05),
        rate('leaning down', leaningSide, 0.05),
        ...COVERAGE_AT.map((at) => rate(`covered ${at + 1}`, 'least', 0.93)),
      ];
    },
  };
}

function countEver(counter: Counter, looks: readonly { up: number }[]): void {
  const ever = (meets: (up: number) => boolean): boolean => looks.some(({ up }) => meets(up));
  counter.count(
    'up',
    ever((up) => up >= limits.sure),
  );
  counter.count(
    'down',
    ever((up) => up <= 1 - limits.sure),
  );
  counter.count(
    'leaning up',
    ever((up) => up >= limits.leaning),
  );
  counter.count(
    'leaning down',
    ever((up) => up <= 1 - limits.leaning),
  );
}

/** Repeat pairs of a clinic whose clients vary about as much as the one that is looked at. */
export function clinicPairs(random: Random, pairs: number, { sd, rho }: Swing, words: number, p: number): CountPair[] {
  return Array.from({ length: pairs }, () => {
    const own = sd * Math.exp(0.2 * random.normal());
    const level = Math.log(p / (1 - p)) + 0.5 * random.normal();
    const first = random.normal();
    const second = rho * first + Math.sqrt(1 - rho * rho) * random.normal();
    const draw = (effect: number) => ({
      right: binomial(random, words, 1 / (1 + Math.exp(-(level + own * effect)))),
      words,
    });
    return [draw(first), draw(second)];
  });
}

const CLIENTS_A_CLINIC = 15;

function withPairs(pairs: number, swing: Swing, words: number): Setting {
  const name = `unchanged, ${pairs} pairs, SD ${swing.sd} rho ${swing.rho}, 3 + ${RETESTS}, ${words} words, 60 %`;
  return {
    name,
    run(clients, seed) {
      const random = seededRandom(seed);
      const counter = new Counter();
      let prior = priorWithoutPairs;
      for (let c = 0; c < clients; c++) {
        if (c % CLIENTS_A_CLINIC === 0) prior = spreadPrior(clinicPairs(random, pairs, swing, words, 0.6), limits);
        const right = wordsRight(random, words, stepPath(0.6, 3, 0.6, RETESTS), swing);
        countEver(counter, looksOf(right, words, 3, prior));
      }
      return ['up', 'down'].map((what) => counter.rate(name, what, clients, 'most', 0.025));
    },
  };
}

export const unchangedSettings: Setting[] = [
  ...swings.flatMap((swing) =>
    [1, 2, 3].flatMap((baselines) =>
      [8, 24, 60].flatMap((words) => [0.3, 0.6, 0.9].map((p) => unchanged(swing, baselines, words, p))),
    ),
  ),
  ...[5, 20, 40].flatMap((pairs) =>
    [24, 60].flatMap((words) =>
      [
        { sd: 0.5, rho: 0.3 },
        { sd: 0.4, rho: 0.3 },
        { sd: 0.3, rho: 0 },
        { sd: 0.2, rho: 0.3 },
      ].map((swing) => withPairs(pairs, swing, words)),
    ),
  ),
];
