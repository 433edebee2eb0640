/** Proposals after each retest: go on, step back, next paper, plateau. 24 words, three baselines, six retests. */
import { seededRandom } from '../../letters/random.ts';
import { stepSigns } from '../../../renderer/change/steps.ts';
import { limits, looksOf } from './looks.ts';
import { Counter, type Rate, type Setting } from './rate.ts';
import { stepPath, wordsRight, type Swing } from './simulated-clients.ts';

const WORDS = 24;
const RETESTS = 6;
/** A retest a week. */
const DAYS = 7;

interface Bounded {
  what: 'better' | 'back' | 'ready' | 'plateau';
  side: Rate['side'];
  bound: number;
}

function proposals(from: number, gain: number, swing: Swing, bounds: readonly Bounded[]): Setting {
  const shift = gain === 0 ? '' : gain > 0 ? ` +${gain}` : ` ${gain}`;
  const name = `level ${from} %${shift}, SD ${swing.sd} rho ${swing.rho}, 3 + ${RETESTS}`;
  return {
    name,
    run(clients, seed) {
      const random = seededRandom(seed);
      const counter = new Counter();
      const p = from / 100;
      for (let c = 0; c < clients; c++) {
        const right = wordsRight(random, WORDS, stepPath(p, 3, p + gain / 100, RETESTS), swing);
        const signs = looksOf(right, WORDS, 3).map((look) =>
          stepSigns(look.judged().chances, look.at + 1, DAYS * (look.at + 1), limits),
        );
        for (const { what } of bounds) {
          const met = what === 'plateau' ? signs.at(-1)!.plateau : signs.some((each) => each[what]);
          counter.count(what, met);
        }
      }
      return bounds.map(({ what, side, bound }) => counter.rate(name, what, clients, side, bound));
    },
  };
}

const calm: Swing = { sd: 0.3, rho: 0 };
const restless: Swing = { sd: 0.5, rho: 0.3 };
const falseSigns: Bounded[] = [
  { what: 'better', side: 'most', bound: 0.05 },
  { what: 'back', side: 'most', bound: 0.05 },
  { what: 'plateau', side: 'told', bound: 0 },
];
const ready = (side: Rate['side'], bound: number): Bounded => ({ what: 'ready', side, bound });

export const proposalSettings: Setting[] = [
  proposals(50, 0, calm, falseSigns),
  proposals(50, 0, restless, falseSigns),
  proposals(75, 0, restless, falseSigns),
  proposals(75, 0, calm, [...falseSigns, ready('most', 0.02)]),
  proposals(85, 0, calm, [...falseSigns, ready('most', 0.12)]),
  proposals(94, 0, calm, [...falseSigns, ready('least', 0.9)]),
  proposals(50, 20, calm, [
    { what: 'better', side: 'told', bound: 0 },
    { what: 'plateau', side: 'told', bound: 0 },
  ]),
  proposals(75, -20, calm, [{ what: 'back', side: 'told', bound: 0 }]),
];
