/**
 * Tells gaps inside words from gaps between words by a model of the whole page: three kinds of gap (letters that touch,
 * inside a word, between words) and the widths that words have. Lengths in x-heights.
 */

import { bestWay, chancesOf } from './word-ways.ts';
import { stretchesOf, WORD } from './word-stretches.ts';
import type { Stretches } from './word-stretches.ts';

/** One line: its pieces of ink from left to right, and the gaps between them (one fewer). */
export interface GapLine {
  from: readonly number[];
  to: readonly number[];
  gaps: readonly number[];
  /** Log odds that a gap parts words, known beforehand (a point or comma stands in it). */
  prior: readonly number[];
}

interface GapModel {
  /** ln(gap + SHIFT) inside and between words: mean and standard deviation. */
  inner: Normal;
  between: Normal;
  /** Gaps inside words per x-height of word. */
  rate: number;
  /** Mean of ln(width of a word). */
  width: number;
  score: number;
}

interface Normal {
  mean: number;
  sd: number;
  lnSd: number;
}

export interface GapAnswer {
  /** Chance that each gap parts words, by line. */
  chances: number[][];
  /** Log odds of each gap for parting words, without the words' widths, by line. */
  odds: number[][];
}

/** A line with ln(gap + SHIFT) of each gap: asked for a hundred times. */
type Line = GapLine & { ln: readonly number[] };

const SHIFT = 0.1;
/** Gaps below this are those of letters that touch or overlap: they say nothing of how wide a hand spaces. */
const TOUCHING = 0.03;
/** What is expected before a page is looked at: mean of ln(gap + SHIFT), how far hands differ in it, and the usual spread. */
const INNER = { mean: Math.log(0.35), between: 0.5, sd: 0.4 } as const;
const BETWEEN = { mean: Math.log(1.6), between: 0.4, sd: 0.35 } as const;
/** So many gaps is the usual spread worth. */
const SD_WEIGHT = 8;
/** Gaps inside words per x-height: expected, and so many x-heights of writing is that worth. */
const RATE = { value: 0.4, weight: 15 } as const;
/** The first cut is tried at each of these, x-heights. */
const STARTS = [0.4, 0.65, 1, 1.6] as const;
const ROUNDS = 12;

/**
 * How far lines of one page differ in how wide they are spaced (standard deviation of ln): analysis of variance of the
 * gaps of 25 pages of two people gave 0.07 between words and 0.06 inside them in the middle, up to 0.18.
 */
const LINES_DIFFER = 0.1;

/** Words touch each other rarely: log odds against it. */
const TOUCHED = 2;

const at = (gap: number): number => Math.log(Math.max(gap, TOUCHING) + SHIFT);

/** Chance of each gap to part words. */
export function gapChances(given: readonly GapLine[]): GapAnswer {
  const lines = given.map((line) => ({ ...line, ln: line.gaps.map(at) }));
  let best: GapModel | null = null;
  const stretches = lines.map(stretchesOf);
  /** Ways of parting that were met, with the rounds that they had left to come to rest in. */
  const met = new Map<string, number>();
  for (const cut of STARTS) {
    let isBetween: number[][] = lines.map((line) => line.gaps.map((gap) => (gap > cut ? 1 : 0)));
    let model = fitted(lines, isBetween);
    const way: string[] = [];
    let score = -Infinity;
    let rested = false;
    let known = false;
    for (let round = 0; round < ROUNDS && !rested && !known; round += 1) {
      const key = isBetween.map((cuts) => cuts.join('')).join(' ');
      // From here it goes the way of an earlier start, to the same rest.
      known = (met.get(key) ?? Infinity) <= ROUNDS - round;
      if (known) break;
      way.push(key);
      const next = lines.map((line, i) => bestPath(line, stretches[i]!, model));
      model = fitted(
        lines,
        next.map(({ cuts }) => cuts),
      );
      score = next.reduce((sum, path) => sum + path.score, priorOf(model));
      rested = next.every(({ cuts }, i) => cuts.every((c, k) => c === isBetween[i]![k]));
      isBetween = next.map(({ cuts }) => cuts);
    }
    if (known) continue;
    // At rest the model is that of its own best ways.
    if (rested) way.forEach((key, i) => met.set(key, way.length - i));
    else score = lines.reduce((sum, line, i) => sum + bestPath(line, stretches[i]!, model).score, priorOf(model));
    model.score = score;
    if (!best || score > best.score) best = model;
  }
  let model = best!;
  let chances = lines.map((line, i) => chancesOf(oddsOf(line, model, 0), stretches[i]!, model.width));
  let spacing = lines.map(() => 0);
  for (let round = 0; round < 3; round += 1) {
    model = fitted(lines, chances);
    spacing = lines.map((line, i) => spacingOf(line, chances[i]!, model));
    chances = lines.map((line, i) => chancesOf(oddsOf(line, model, spacing[i]!), stretches[i]!, model.width));
  }
  return { chances, odds: lines.map((line, i) => oddsOf(line, model, spacing[i]!)) };
}

/** A line's own spacing, shared by both kinds of gap: a random effect, so that few gaps leave it near 0. */
function spacingOf(line: Line, chances: readonly number[], { inner, between }: GapModel): number {
  let weight = 1 / LINES_DIFFER ** 2;
  let sum = 0;
  line.gaps.forEach((gap, k) => {
    if (gap < TOUCHING) return;
    const x = line.ln[k]!;
    for (const [chance, { mean, sd }] of [
      [chances[k]!, between],
      [1 - chances[k]!, inner],
    ] as const) {
      weight += chance / sd ** 2;
      sum += (chance / sd ** 2) * (x - mean);
    }
  });
  return sum / weight;
}

const lnNormal = (x: number, { mean, sd, lnSd }: Normal): number => -0.5 * ((x - mean) / sd) ** 2 - lnSd;

function priorOf({ inner, between, width, rate }: GapModel): number {
  const of = (normal: Normal, prior: typeof INNER | typeof BETWEEN): number =>
    -0.5 * ((normal.mean - prior.mean) / prior.between) ** 2 -
    SD_WEIGHT * (normal.lnSd + prior.sd ** 2 / (2 * normal.sd ** 2));
  return (
    of(inner, INNER) +
    of(between, BETWEEN) -
    0.5 * ((width - WORD.mean) / WORD.between) ** 2 +
    RATE.weight * (RATE.value * Math.log(rate) - rate)
  );
}

/** Parameters from the chances of each gap. */
function fitted(lines: readonly Line[], chances: readonly (readonly number[])[]): GapModel {
  const sums = { inner: [0, 0, 0], between: [0, 0, 0] };
  let [gapsInside, ink, words, widths] = [0, 0, 0, 0];
  lines.forEach((line, i) => {
    if (line.from.length === 0) return;
    let start = line.from[0]!;
    let end = line.to[0]!;
    line.gaps.forEach((gap, k) => {
      const chance = chances[i]![k]!;
      gapsInside += 1 - chance;
      const x = line.ln[k]!;
      if (gap >= TOUCHING) add(sums.inner, x, 1 - chance);
      add(sums.between, x, gap >= TOUCHING ? chance : 0);
      if (chance >= 0.5) {
        ink += end - start;
        words += 1;
        widths += Math.log(Math.max(0.2, end - start));
        start = line.from[k + 1]!;
        end = line.to[k + 1]!;
      } else end = Math.max(end, line.to[k + 1]!);
    });
    ink += end - start;
    words += 1;
    widths += Math.log(Math.max(0.2, end - start));
  });
  const pull = WORD.sd ** 2 / WORD.between ** 2;
  return {
    inner: normalOf(sums.inner, INNER),
    between: normalOf(sums.between, BETWEEN),
    rate: (gapsInside + RATE.value * RATE.weight) / (ink + RATE.weight),
    width: (widths + pull * WORD.mean) / (words + pull),
    score: 0,
  };
}

function add(sums: number[], x: number, weight: number): void {
  sums[0] = sums[0]! + weight;
  sums[1] = sums[1]! + weight * x;
  sums[2] = sums[2]! + weight * x * x;
}

/** Mean and spread shrunk toward what is expected as far as the gaps are few. */
function normalOf(sums: readonly number[], prior: { mean: number; between: number; sd: number }): Normal {
  const [n, s, ss] = sums as [number, number, number];
  const pull = prior.sd ** 2 / prior.between ** 2;
  const mean = (s + pull * prior.mean) / (n + pull);
  const square = Math.max(0, ss - 2 * mean * s + n * mean * mean);
  const sd = Math.sqrt((square + SD_WEIGHT * prior.sd ** 2) / (n + SD_WEIGHT));
  return { mean, sd, lnSd: Math.log(sd) };
}

/**
 * Log odds of each gap for parting words, without the words' widths. Beyond the two means they grow no further.
 * @param spacing how much wider than the page's the line is spaced, ln
 */
function oddsOf(line: Line, { inner, between, rate }: GapModel, spacing: number): number[] {
  const lnRate = Math.log(rate);
  return line.gaps.map((gap, k) => {
    const x = Math.max(inner.mean, Math.min(between.mean, line.ln[k]! - spacing));
    return lnNormal(x, between) - lnNormal(x, inner) - lnRate + line.prior[k]! - (gap < TOUCHING ? TOUCHED : 0);
  });
}

/** The best words of a line: 1 for each gap that parts. */
function bestPath(line: Line, stretches: Stretches, model: GapModel): { cuts: number[]; score: number } {
  const { cuts, score } = bestWay(oddsOf(line, model, 0), stretches, model.width);
  // Common to all ways of parting: that every gap is one inside a word.
  let common = 0;
  const { inner, between } = model;
  const lnRate = Math.log(model.rate);
  line.gaps.forEach((gap, k) => {
    const x = line.ln[k]!;
    if (gap < TOUCHING) return;
    const beyond = x > between.mean && between.mean > inner.mean;
    common +=
      lnRate +
      (beyond
        ? lnNormal(x, between) - lnNormal(between.mean, between) + lnNormal(between.mean, inner)
        : lnNormal(x, inner));
  });
  return { cuts, score: score + common };
}
