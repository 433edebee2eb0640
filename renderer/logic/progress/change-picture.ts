/** The posterior of the change as a picture: how likely each change is, its interval, and the chance of more. */
import type { Telling } from '../texts/screens/telling.ts';
import type { ChangeExamination, ChangeLimits } from '../../change/index.ts';

export interface ChangePicture {
  /** Percentage points, ascending, with how likely each is against the likeliest, 0 to 1. */
  bars: { points: number; height: number; inside: boolean }[];
  low: number;
  mid: number;
  high: number;
  /** What is drawn reaches from here to there, points, zero included. */
  from: number;
  to: number;
  /** Chance that the interval holds the change, percent. */
  held: number;
  /** In words, for those who do not see the picture. */
  words: string;
}

/** Bars this much lower than the highest are not drawn. */
const SEEN = 0.005;

const signed = (value: number): string => `${value > 0 ? '+' : ''}${Math.round(value)}`;

/** @returns null where nothing is compared */
export function changePicture(
  { answer, posterior }: ChangeExamination,
  limits: ChangeLimits,
  { told, decimals }: Telling,
): ChangePicture | null {
  const { change, chances } = answer;
  if (!posterior || !change || !chances) return null;
  const top = Math.max(...posterior.change);
  const middle = (posterior.change.length - 1) / 2;
  const bars = [...posterior.change]
    .map((chance, k) => ({ points: k - middle, height: chance / top }))
    .filter(({ height }) => height > SEEN)
    .map((bar) => ({ ...bar, inside: bar.points >= change.low && bar.points <= change.high }));
  const places = bars.map(({ points }) => points);
  const held = Math.round((1 - 2 * limits.intervalTail) * 1000) / 10;
  const more = Math.min(99.9, Math.max(0.1, 100 * chances.up));
  return {
    bars,
    ...change,
    from: Math.min(-5, ...places),
    to: Math.max(5, ...places),
    held,
    words: told.course.change(
      signed(change.mid),
      signed(change.low),
      signed(change.high),
      decimals(held, 1, 0),
      decimals(more, 1),
    ),
  };
}
