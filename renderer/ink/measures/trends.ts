import type { Interval } from '../../statistics/wilson.ts';
import { kendallVariance, tieSizes } from '../../statistics/kendall.ts';
import { normalQuantile } from '../../statistics/normal-quantile.ts';
import { theilSen } from '../../statistics/theil-sen.ts';
import { SlopeRanks } from '../../statistics/slope-rank.ts';

/** A trend of logarithms as percent over a stretch. */
export interface LogTrend {
  percent: number;
  interval: Interval | null;
}

const LEAST = 3;
/** Sen's interval from this many points on. */
const LEAST_FOR_INTERVAL = 8;

/** Beyond this many points the slopes are counted, not listed: half an hour of writing has 20 million of them. */
const MOST_LISTED = 400;

/** Theil-Sen slope of many points at different places, with Sen's interval by the normal approximation. */
function countedSlope(x: readonly number[], y: readonly number[]): { slope: number; interval: Interval | null } {
  const ranks = new SlopeRanks(x, y);
  const middle = (ranks.pairs - 1) / 2;
  const slope = (ranks.at(Math.floor(middle)) + ranks.at(Math.ceil(middle))) / 2;
  const spread = normalQuantile(0.95) * Math.sqrt(kendallVariance(x.length, [], tieSizes(y)));
  const below = Math.floor((ranks.pairs - spread) / 2) - 1;
  return { slope, interval: { low: ranks.at(below), high: ranks.at(ranks.pairs - 1 - below) } };
}

/**
 * Theil-Sen slope b of ln(value), told as 100 (e^(b per) - 1).
 * @param per stretch in the unit of `at`: 10 strokes, 60 s
 * @returns null below three values or when all lie at one place
 */
export function logTrend(at: readonly number[], values: readonly number[], per: number): LogTrend | null {
  const kept = at.map((x, i) => ({ x, y: Math.log(values[i]!) })).filter(({ y }) => Number.isFinite(y));
  if (kept.length < LEAST) return null;
  const [x, y] = [kept.map((each) => each.x), kept.map((each) => each.y)];
  const line = kept.length > MOST_LISTED && new Set(x).size === x.length ? countedSlope(x, y) : theilSen(x, y);
  if (!line) return null;
  const told = (slope: number): number => 100 * Math.expm1(slope * per);
  const interval =
    line.interval && kept.length >= LEAST_FOR_INTERVAL
      ? { low: told(line.interval.low), high: told(line.interval.high) }
      : null;
  return { percent: told(line.slope), interval };
}
