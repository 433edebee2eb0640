import type { LetterTop } from './letter-tops.ts';
import { sizeAt } from './letter-tops.ts';
import type { LineWork } from './line-work.ts';
import { fastTopSums } from '../image/wasm/curves.ts';
import type { TopRound, TopSums } from '../image/wasm/curves.ts';
import { median } from '../../statistics/order-statistics.ts';

/**
 * Which tops of a page are those of small letters, and how high those are: tops of small letters, tall letters and
 * joins as a mixture with free spreads, each line with its own offset from its trend, shrunk toward the page's.
 * Everything in ln(height).
 */
export interface PageModel {
  /** Height of the small letters over that of the lines' trends, ln. */
  level: number;
  /** Spread (standard deviation) of the small letters, ln. */
  spread: number;
  /** Offset of each line from the level. */
  offsets: number[];
  /** Share of each kind. */
  shares: Shares;
  /** Tall letters over small ones, and their spread. */
  tall: { step: number; spread: number };
}

interface Shares {
  small: number;
  tall: number;
  other: number;
  /** Of the tops of joined writing only: those are shared by the three kinds above in what is left. */
  join: number;
}

/** Before a page is looked at (from memory, kept where 37 pages of two people and the drawn pages did not move it). */
const SMALL = { spread: 0.17, weight: 15 } as const;
const TALL = { step: 0.65, spread: 0.2, weight: 12 } as const;
const JOIN = { step: -0.5, spread: 0.22 } as const;
/** English has 59 small letters in 100 and 28 tall ones, capitals and figures aside: worth so many tops of any page. */
const SHARES = { small: 160, tall: 80, other: 8 } as const;
/** Tops of joined writing that are joins, and how many tops that is worth. */
const JOINS = { share: 0.15, weight: 40 } as const;
/** What is none of these lies anywhere in this range, ln. */
const RANGE = 3;
/** Lines of one hand differ by this (ln), squared. */
const LINE_VARIANCE = 0.05 ** 2;
/** Starts: small letters at these shares of the middle top, tall ones so much (ln) and so evenly above. */
const STARTS = [0.7, 0.85, 1, 1.2, 1.45] as const;
const STEPS = [
  { step: TALL.step, spread: TALL.spread },
  { step: 0.4, spread: 0.1 },
] as const;
/** Rounds of each start, and of the best one in the end. */
const TRIED = 12;
const ROUNDS = 40;
/** Fewer tops than this tell nothing. */
const LEAST = 8;

/** Tops of all lines: ln(height) over the line's trend, and whose line each is. */
interface Points {
  ys: Float64Array;
  lines: Int32Array;
  /** 1 for tops of joined writing, else 0. */
  joined: Float64Array;
}

/** Fits the page; null with few tops. @param tops those of each line */
export function pageModel(lines: readonly LineWork[], tops: readonly (readonly LetterTop[])[]): PageModel | null {
  const [ys, ofLine, joined]: [number[], number[], number[]] = [[], [], []];
  lines.forEach(({ trend }, line) => {
    for (const top of tops[line]!)
      if (top.height > 0) {
        ys.push(Math.log(top.height / sizeAt(trend, top.u)));
        ofLine.push(line);
        joined.push(Number(top.joined));
      }
  });
  if (ys.length < LEAST) return null;
  const points: Points = {
    ys: Float64Array.from(ys),
    lines: Int32Array.from(ofLine),
    joined: Float64Array.from(joined),
  };
  const middle = median(ys)!;
  let best: PageModel | null = null;
  let highest = -Infinity;
  for (const tall of STEPS)
    for (const start of STARTS) {
      const { model, score } = fitted(points, startOf(lines.length, middle + Math.log(start), tall), TRIED);
      if (score > highest + 1e-9) [best, highest] = [model, score];
    }
  return best && fitted(points, best, ROUNDS).model;
}

/** Chance that a top is one of a small letter. */
export function smallChance(model: PageModel, line: LineWork, index: number, top: LetterTop): number {
  if (top.height <= 0) return 0;
  const parts = chancesOf(model, index, Math.log(top.height / sizeAt(line.trend, top.u)), top.joined);
  return parts.small / parts.all;
}

const ROOT_2_PI = 2.5066282746;
const normal = (x: number, spread: number): number => Math.exp(-0.5 * (x / spread) ** 2) / (spread * ROOT_2_PI);

function chancesOf(
  model: PageModel,
  line: number,
  y: number,
  joined: boolean,
): { small: number; tall: number; join: number; all: number } {
  const { level, spread, offsets, shares, tall } = model;
  const off = y - level - offsets[line]!;
  const join = joined ? shares.join : 0;
  const small = (1 - join) * shares.small * normal(off, spread);
  const high = (1 - join) * shares.tall * normal(off - tall.step, tall.spread);
  const low = join * normal(off - JOIN.step, JOIN.spread);
  return { small, tall: high, join: low, all: small + high + low + ((1 - join) * shares.other) / RANGE };
}

function startOf(lines: number, level: number, tall: PageModel['tall']): PageModel {
  return {
    level,
    spread: tall.step < TALL.step ? tall.spread : SMALL.spread,
    offsets: new Array<number>(lines).fill(0),
    shares: { small: 0.65, tall: 0.3, other: 0.05, join: JOINS.share },
    tall: { ...tall },
  };
}

/** @param start is not changed */
function fitted(points: Points, start: PageModel, rounds: number): { model: PageModel; score: number } {
  const model = { ...start };
  const { ys } = points;
  const joined = points.joined.reduce((sum, one) => sum + one, 0);
  let score = -Infinity;
  for (let round = 0; round < rounds; round += 1) {
    const given = roundOf(points, model);
    const { sums, own, products } = fastTopSums(given) ?? topSums(given);
    const [small, tall, join, other, mean, square, high, highSquare] = [0, 1, 2, 3, 4, 5, 6, 7].map(
      (kind) => sums[2 * kind]! + sums[2 * kind + 1]!,
    ) as [number, number, number, number, number, number, number, number];
    model.level = mean / Math.max(1e-9, small);
    const variance = (square + SMALL.weight * SMALL.spread ** 2) / (small + SMALL.weight);
    model.spread = Math.sqrt(variance);
    model.offsets = model.offsets.map((_, line) => own[2 * line + 1]! / (own[2 * line]! + variance / LINE_VARIANCE));
    const step = (high + TALL.weight * TALL.step) / (tall + TALL.weight);
    const tallVariance = (highSquare + TALL.weight * TALL.spread ** 2) / (tall + TALL.weight);
    model.tall = { step, spread: Math.sqrt(tallVariance) };
    const all = ys.length - join + SHARES.small + SHARES.tall + SHARES.other;
    model.shares = {
      small: (small + SHARES.small) / all,
      tall: (tall + SHARES.tall) / all,
      other: (other + SHARES.other) / all,
      join: (join + JOINS.share * JOINS.weight) / (joined + JOINS.weight),
    };
    const next = products.reduce((sum, product) => sum + Math.log(product), 0) + priorOf(model);
    if (Math.abs(next - score) < 1e-6 * Math.abs(next)) {
      score = next;
      break;
    }
    score = next;
  }
  return { model, score };
}

/** A round of fitting as curves.as takes it. */
export function roundOf({ ys, lines, joined }: Points, model: PageModel): TopRound {
  const { level, spread, shares, tall } = model;
  const kinds = [
    [shares.small, spread, spread * ROOT_2_PI],
    [shares.tall, tall.step, tall.spread, tall.spread * ROOT_2_PI],
    [shares.join, JOIN.step, JOIN.spread, JOIN.spread * ROOT_2_PI],
  ];
  return {
    ys,
    lines,
    joined,
    offsets: Float64Array.from(model.offsets),
    numbers: [level, shares.other / RANGE, ...kinds.flat()],
  };
}

/** e^-700 is nothing beside what it is added to. */
const bell = (z: number): number => Math.exp(Math.max(-700, -0.5 * (z * z)));

/**
 * Chances of each top to be of each kind, summed: the numbers of `chancesOf`, written out without objects, for there are
 * some 160 rounds a page. Every second top has sums of its own, so that curves.as can take two at once.
 */
export function topSums({ ys, lines, joined, offsets, numbers }: TopRound): TopSums {
  const sums = new Float64Array(16);
  const own = new Float64Array(2 * offsets.length);
  const products = new Float64Array(2 * Math.ceil(ys.length / 16)).fill(1);
  const [level, elsewhere, smallShare, spread, smallWidth] = numbers as [number, number, number, number, number];
  const [tallShare, tallStep, tallSpread, tallWidth] = numbers.slice(5) as [number, number, number, number];
  const [joinShare, joinStep, joinSpread, joinWidth] = numbers.slice(9) as [number, number, number, number];
  for (let i = 0; i < ys.length; i += 1) {
    const lane = i & 1;
    const y = ys[i]!;
    const line = lines[i]!;
    const above = y - level;
    const off = above - offsets[line]!;
    const beyond = off - tallStep;
    const isJoined = joinShare * joined[i]!;
    const rest = 1 - isJoined;
    const smallPart = rest * smallShare * (bell(off / spread) / smallWidth);
    const tallPart = rest * tallShare * (bell(beyond / tallSpread) / tallWidth);
    const joinPart = isJoined * (bell((off - joinStep) / joinSpread) / joinWidth);
    const all = smallPart + tallPart + joinPart + rest * elsewhere;
    const [isSmall, isTall, isJoin] = [smallPart / all, tallPart / all, joinPart / all];
    products[2 * (i >> 4) + lane]! *= all;
    sums[lane]! += isSmall;
    sums[2 + lane]! += isTall;
    sums[4 + lane]! += isJoin;
    sums[6 + lane]! += 1 - isSmall - isTall - isJoin;
    sums[8 + lane]! += isSmall * (y - offsets[line]!);
    sums[10 + lane]! += isSmall * off * off;
    sums[12 + lane]! += isTall * off;
    sums[14 + lane]! += isTall * (beyond * beyond);
    own[2 * line]! += isSmall;
    own[2 * line + 1]! += isSmall * above;
  }
  return { sums, own, products };
}

function priorOf({ spread, shares, tall, offsets }: PageModel): number {
  const ofSpread = (value: number, prior: { spread: number; weight: number }): number =>
    -prior.weight * (Math.log(value) + prior.spread ** 2 / (2 * value ** 2));
  return (
    ofSpread(spread, SMALL) +
    ofSpread(tall.spread, TALL) -
    (TALL.weight * (tall.step - TALL.step) ** 2) / (2 * TALL.spread ** 2) +
    SHARES.small * Math.log(shares.small) +
    SHARES.tall * Math.log(shares.tall) +
    SHARES.other * Math.log(shares.other) +
    JOINS.weight * (JOINS.share * Math.log(shares.join) + (1 - JOINS.share) * Math.log(1 - shares.join)) -
    offsets.reduce((sum, off) => sum + (off * off) / (2 * LINE_VARIANCE), 0)
  );
}

/** Share of misread letters before any is looked at, worth so many letters; how far from the others they may lie, ln. */
const MISREAD = { share: 0.1, weight: 10, range: 3 } as const;

/**
 * Which ln(heights) belong to one hand's small letters, the others being misread: one normal kind with a free spread
 * among values that may lie anywhere.
 */
export function usualOnes(values: readonly number[]): (value: number) => boolean {
  let mean = median(values) ?? 0;
  let spread: number = SMALL.spread;
  let share: number = MISREAD.share;
  const chance = (value: number): number => {
    const usual = (1 - share) * normal(value - mean, spread);
    return usual / (usual + share / MISREAD.range);
  };
  for (let round = 0; round < ROUNDS; round += 1) {
    let [n, sum, square] = [0, 0, 0];
    for (const value of values) {
      const weight = chance(value);
      n += weight;
      sum += weight * value;
      square += weight * (value - mean) ** 2;
    }
    if (n > 0) mean = sum / n;
    spread = Math.sqrt((square + SMALL.weight * SMALL.spread ** 2) / (n + SMALL.weight));
    share = (values.length - n + MISREAD.share * MISREAD.weight) / (values.length + MISREAD.weight);
  }
  return (value) => chance(value) > 0.5;
}
