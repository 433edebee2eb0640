/** Steady loss: how often a stable client raises the flag, and how often a loss asks for another sample. */
import { seededRandom } from '../../letters/random.ts';
import { phaseLikelihood, phaseOf } from '../../../renderer/change/phase.ts';
import { scaleRows } from '../../../renderer/change/posterior/posterior.ts';
import { lossSign } from '../../../renderer/change/steady-loss.ts';
import { asVisits, limits, looksOf, priorWithoutPairs } from './looks.ts';
import { Counter, type Rate, type Setting } from './rate.ts';
import { stepPath, wordsRight, type Swing } from './simulated-clients.ts';

/** Which signs were ever given, looking after each retest. */
function everOf(right: readonly number[], words: number, baselines: number): { flag: boolean; ask: boolean } {
  const visits = asVisits(right, words);
  const before = visits.slice(0, baselines);
  const atFirst = scaleRows(phaseLikelihood(phaseOf(before, 1), limits.readerSpread));
  const signs = looksOf(right, words, baselines).map(({ at, up }) => {
    const now = visits.slice(baselines, baselines + at + 1);
    return lossSign({ before, now, atFirst, down: 1 - up }, priorWithoutPairs, limits);
  });
  return { flag: signs.includes('flag'), ask: signs.some((sign) => sign !== null) };
}

type Bounds = Record<'flag' | 'asks for a repeat', [side: Rate['side'], bound: number]>;

function loss(
  about: string,
  levels: readonly number[],
  words: number,
  baselines: number,
  swing: Swing,
  bounds: Bounds,
): Setting {
  const name = `${about}, SD ${swing.sd} rho ${swing.rho}, ${baselines} baselines, ${words} words`;
  return {
    name,
    run(clients, seed) {
      const random = seededRandom(seed);
      const counter = new Counter();
      for (let c = 0; c < clients; c++) {
        const { flag, ask } = everOf(wordsRight(random, words, levels, swing), words, baselines);
        counter.count('flag', flag);
        counter.count('asks for a repeat', ask);
      }
      return Object.entries(bounds).map(([what, [side, bound]]) => counter.rate(name, what, clients, side, bound));
    },
  };
}

const stableBounds: Bounds = { flag: ['most', 0.02], 'asks for a repeat': ['told', 0] };
const lossBounds: Bounds = { flag: ['told', 0], 'asks for a repeat': ['least', 0.8] };

export const lossSettings: Setting[] = [
  ...[
    { sd: 0.3, rho: 0 },
    { sd: 0.4, rho: 0.3 },
    { sd: 0.5, rho: 0.3 },
  ].flatMap((swing) =>
    (
      [
        [1, 24, 0.6],
        [3, 24, 0.6],
        [3, 60, 0.6],
        [3, 60, 0.85],
        [3, 8, 0.6],
      ] as const
    ).map(([baselines, words, p]) =>
      loss(
        `stable at ${p * 100} %, 11 visits`,
        stepPath(p, baselines, p, 11 - baselines),
        words,
        baselines,
        swing,
        stableBounds,
      ),
    ),
  ),
  ...[24, 60].map((words) =>
    loss('-30 from 75 % at visit 7 of 11', stepPath(0.75, 6, 0.45, 5), words, 3, { sd: 0.3, rho: 0 }, lossBounds),
  ),
];
