import type { Told } from '../texts/screens/en/screens-en.ts';
import { toldEnglish } from '../texts/screens/told-english.ts';

/** The one variable of a goal scale. */
export interface LevelVariable {
  /** Shown after the number: "% of words", "words of 12", "items". */
  unit: string;
  min: number;
  max: number;
}

export interface GoalLevels {
  /** Lowest value of each level -2..+2; for -2 it is where the baseline or worse begins. */
  values: [number, number, number, number, number];
  texts: [string, string, string, string, string];
  /** Sentences about what is wrong with the scale; empty when it can be used. */
  problems: string[];
}

/** The levels from worst to best. */
export const LEVELS = [-2, -1, 0, 1, 2] as const;

/** How the five levels are said in English. */
export const levelNames: Readonly<Record<number, string>> = toldEnglish.goals.levelNames;

/**
 * Five equally spaced levels of one whole-number variable.
 * @param baseline where the client is now
 * @param expected where level 0 begins
 * @param couldWorsen true puts the baseline at -1, so that -2 can say "worse"
 * Source of the five levels: Kiresuk & Sherman 1968; equal spacing and baseline at -1 where it could worsen:
 * common practice, no source.
 */
export function buildLevels(
  variable: LevelVariable,
  baseline: number,
  expected: number,
  couldWorsen: boolean,
  words: Told['goals'],
): GoalLevels {
  const steps = couldWorsen ? 1 : 2;
  const spacing = (expected - baseline) / steps;
  const size = Math.max(1, Math.floor(Math.abs(spacing))) * (spacing < 0 ? -1 : 1);
  const values = LEVELS.map((level) => expected + level * size) as GoalLevels['values'];
  const problems: string[] = [];
  if (!Number.isFinite(baseline) || !Number.isFinite(expected)) problems.push(words.mustBeNumbers);
  else if (expected <= baseline) problems.push(words.expectedAbove);
  else if (spacing < 1) problems.push(words.stepTooSmall(variable.unit));
  if (problems.length === 0 && values[4] > variable.max) {
    const most = Math.floor((variable.max * steps + baseline * 2) / (steps + 2));
    problems.push(words.topTooHigh(values[4], variable.unit, variable.max, most));
  }
  return { values, texts: levelTexts(values, variable, words), problems };
}

/**
 * Three levels where five would lie inside the noise: less than expected, as expected, more. Only the one in the middle
 * has two ends, and it is as wide as the noise asks.
 * @param width least width of a level, in the variable's unit
 * @returns null where there is no room for it
 */
export function threeLevels(
  variable: LevelVariable,
  expected: number,
  width: number,
  words: Told['goals'],
): GoalLevels | null {
  const { unit, min, max } = variable;
  const above = expected + Math.max(1, Math.ceil(width));
  if (above > max || expected <= min) return null;
  const as = above - 1 > expected ? words.to(expected, above - 1, unit) : `${expected} ${unit}`;
  const more = above >= max ? `${above} ${unit}` : words.orMore(above, unit);
  const texts: GoalLevels['texts'] = ['', words.fewerThan(expected, unit), as, more, ''];
  return { values: [min, min, expected, above, max + 1], texts, problems: [] };
}

/** Three levels: the outermost two are left empty on purpose. */
export const hasThreeLevels = (texts: readonly string[]): boolean =>
  texts.length === LEVELS.length && texts.every((text, i) => (text.trim() === '') === (i === 0 || i === 4));

/** Level that a value reaches. */
export function levelReached(levels: GoalLevels['values'], value: number): -2 | -1 | 0 | 1 | 2 {
  return ([2, 1, 0, -1].find((level) => value >= levels[level + 2]!) as 2 | 1 | 0 | -1 | undefined) ?? -2;
}

function levelTexts(
  values: GoalLevels['values'],
  { unit, max }: LevelVariable,
  words: Told['goals'],
): GoalLevels['texts'] {
  const between = (low: number, next: number) => (next - 1 > low ? words.to(low, next - 1, unit) : `${low} ${unit}`);
  return [
    words.fewerThan(values[1], unit),
    between(values[1], values[2]),
    between(values[2], values[3]),
    between(values[3], values[4]),
    values[4] >= max ? `${values[4]} ${unit}` : words.orMore(values[4], unit),
  ];
}

interface Range {
  low: number;
  high: number;
  unit: string;
}

/**
 * Checks five level texts, as edited by the therapist: one variable, rising, no overlap, no hole, equal steps.
 * @returns sentences about what to change; empty when all is well or nothing is written yet
 */
export function checkLevels(texts: readonly string[], words: Told['goals']): string[] {
  if (texts.every((text) => text.trim() === '')) return [];
  const problems: string[] = [];
  const isThree = hasThreeLevels(texts);
  const empty = isThree ? [] : LEVELS.filter((_, i) => !texts[i]?.trim());
  if (empty.length) problems.push(words.noText(empty.map(signed).join(', ')));
  const ranges = texts.map(parseRange);
  const unread = LEVELS.filter((_, i) => texts[i]?.trim() && !ranges[i]);
  if (unread.length) {
    problems.push(words.noNumber(unread.map(signed).join(', ')));
  }
  const known = ranges.filter((range) => range !== null);
  if (new Set(known.map((range) => range.unit).filter(Boolean)).size > 1) {
    problems.push(words.twoVariables);
  }
  for (let i = 0; i + 1 < ranges.length; i++) {
    const [here, next] = [ranges[i], ranges[i + 1]];
    if (!here || !next) continue;
    const names = [signed(LEVELS[i]!), signed(LEVELS[i + 1]!)] as const;
    if (next.low <= here.low) problems.push(words.doNotRise(...names));
    else if (next.low <= here.high) problems.push(words.overlap(...names));
    else if (next.low - here.high > 1) problems.push(words.hole(...names));
  }
  const starts = ranges.slice(1).map((range) => range?.low ?? NaN);
  const steps = starts.slice(1).map((start, i) => start - starts[i]!);
  if (!isThree && steps.every(Number.isFinite) && Math.max(...steps) - Math.min(...steps) > 1) {
    problems.push(words.notEqual);
  }
  return problems;
}

function parseRange(text: string): Range | null {
  const clean = text.trim().toLowerCase().replaceAll('\u2013', '-');
  const unitOf = (rest: string) =>
    rest
      .replace(/(or (more|fewer|less|better)|o (más|menos|mejor)|oder (mehr|weniger|besser))/, '')
      .replace(/[.,;].*$/, '')
      .trim();
  const below = /^(?:fewer than|less than|below|under|menos de|weniger als|unter)\s+(\d+)(.*)$/.exec(clean);
  if (below) return { low: -Infinity, high: Number(below[1]) - 1, unit: unitOf(below[2]!.trim()) };
  const span = /^(\d+)\s*(?:to|a|bis|-)\s*(\d+)(.*)$/.exec(clean);
  if (span) return { low: Number(span[1]), high: Number(span[2]), unit: unitOf(span[3]!.trim()) };
  const single = /^(\d+)(.*)$/.exec(clean);
  if (!single) return null;
  const rest = single[2]!.trim();
  const value = Number(single[1]);
  if (/or (more|better)|and more|o (más|mejor)|oder (mehr|besser)/.test(rest))
    return { low: value, high: Infinity, unit: unitOf(rest) };
  if (/or (fewer|less)|o menos|oder weniger/.test(rest)) return { low: -Infinity, high: value, unit: unitOf(rest) };
  return { low: value, high: value, unit: unitOf(rest) };
}

/** A level with its sign: -2, 0, +1. */
export const signed = (level: number): string => (level > 0 ? `+${level}` : String(level));
