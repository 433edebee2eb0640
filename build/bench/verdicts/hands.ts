/** Page measures of a hand that does not change: how often one moves "by more than noise" in eight visits. */
import { seededRandom, type Random } from '../../letters/random.ts';
import { handChange, handInterval, handSpread } from '../../../renderer/change/hand-spread.ts';
import { limits } from './looks.ts';
import { Counter, type Setting } from './rate.ts';

/** What is known of other writers, in units of itself. */
const KNOWN = 1;
const VISITS = 8;

interface Hand {
  /** Whether other writers' figure is known. */
  known: boolean;
  /** Spread between visits over what is expected of it; 'varies' = as unsure as the figure itself. */
  spread: number | 'varies';
  baselines: number;
  /** Pages of each visit. */
  pages: number;
  /** Own pages of one session beforehand, one more than the repeats. */
  repeats: number;
  rho: number;
}

function spreadOf(random: Random, { spread }: Hand): number {
  const expected = limits.visitsApart * KNOWN;
  if (spread !== 'varies') return spread * expected;
  const squares = Array.from({ length: limits.knownPages }, () => random.normal() ** 2).reduce((a, b) => a + b, 0);
  return expected * Math.sqrt(limits.knownPages / squares);
}

function hand(of: Hand): Setting {
  const { known, baselines, pages, repeats, rho } = of;
  const name =
    `hand ${known ? 'with' : 'without'} a figure, spread ${of.spread}, ${baselines} + ${VISITS} visits, ` +
    `${pages} page${pages > 1 ? 's' : ''} each, ${repeats} repeats, rho ${rho}`;
  return {
    name,
    run(clients, seed) {
      const random = seededRandom(seed);
      const counter = new Counter();
      for (let c = 0; c < clients; c++) {
        const sd = spreadOf(random, of);
        // Visits weeks apart vary `visitsApart` times as much as pages of one session.
        const within = sd / limits.visitsApart;
        const between = Math.sqrt(sd * sd - within * within);
        let effect = random.normal();
        const values = Array.from({ length: baselines + VISITS }, () => {
          effect = rho * effect + Math.sqrt(1 - rho * rho) * random.normal();
          return between * effect + (within * random.normal()) / Math.sqrt(pages);
        });
        const session = Array.from({ length: repeats + 1 }, () => within * random.normal());
        const spread = handSpread(known ? KNOWN : null, [session], 'difference', limits)!;
        const looks = values
          .slice(baselines)
          .map((_, i) =>
            handChange(values.slice(0, baselines), values.slice(baselines, baselines + i + 1), spread, limits),
          );
        for (const way of ['up', 'down'] as const)
          counter.count(
            way,
            looks.some((look) => look?.beyond === way),
          );
        const { low, high } = handInterval(values[0]!, spread)!;
        counter.count('hand interval covers', low <= 0 && 0 <= high);
      }
      return [
        counter.rate(name, 'up', clients, 'most', 0.025),
        counter.rate(name, 'down', clients, 'most', 0.025),
        counter.rate(name, 'hand interval covers', clients, 'least', 0.93),
      ];
    },
  };
}

const shapes = [1, 3].flatMap((baselines) =>
  [1, 3].flatMap((pages) => [0, 0.3].map((rho) => ({ baselines, pages, rho }))),
);

export const handSettings: Setting[] = [
  ...([0.5, 1, 'varies'] as const).flatMap((spread) =>
    [0, 4, 20].flatMap((repeats) => shapes.map((shape) => hand({ known: true, spread, repeats, ...shape }))),
  ),
  ...[3, 6, 20].flatMap((repeats) => shapes.map((shape) => hand({ known: false, spread: 1, repeats, ...shape }))),
];
