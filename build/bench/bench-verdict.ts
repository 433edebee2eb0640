/**
 * Time of one verdict about change: 15 visits as after half a year, 156 as after three years of weekly samples, with one
 * reader, two, or another one at each visit. Processor time, so that a busy machine does not count.
 */
import { rulesCurrent } from '../../db/rules/index.ts';
import { changeLimits, examineChange, type ReadSample } from '../../renderer/change/index.ts';
import { median } from '../../renderer/statistics/order-statistics.ts';
import { seededRandom } from '../letters/random.ts';

const WARM_UP = 12;
const RUNS = 15;

interface VerdictTime {
  what: string;
  ms: number;
  most: number;
}

/** A verdict with few visits must not be felt at all; one with three years of them not as waiting. */
const MOST = { 15: 5, 156: 50 } as const;

const readers = {
  'one reader': () => ['A'],
  'two readers': () => ['A', 'B'],
  'another reader each visit': (visit: number) => ['ABCDE'[visit % 5]!],
} as const;

export function verdictTimes(): VerdictTime[] {
  const limits = changeLimits(rulesCurrent().thresholds);
  const random = seededRandom(1);
  const samples = (visits: number, of: (visit: number) => string[]): ReadSample[] =>
    Array.from({ length: visits }, (_, visit) => {
      const day = new Date(Date.UTC(2023, 0, 2 + 7 * visit)).toISOString().slice(0, 10);
      const right = 8 + Math.floor(random.next() * 12);
      return of(visit).map((reader): ReadSample => ({
        day,
        words: 24,
        right,
        reader,
        task: 'copy',
        baseline: visit < 3,
      }));
    }).flat();
  return ([15, 156] as const).flatMap((visits) =>
    Object.entries(readers).map(([name, of]) => {
      const times = Array.from({ length: WARM_UP + RUNS }, () => {
        const asked = samples(visits, of);
        const start = process.cpuUsage();
        examineChange({ samples: asked }, limits);
        return process.cpuUsage(start).user / 1000;
      });
      return { what: `a verdict, ${visits} visits, ${name}`, ms: median(times.slice(WARM_UP))!, most: MOST[visits] };
    }),
  );
}
