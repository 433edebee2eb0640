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

/** How the five levels are said. */
export const levelNames: Readonly<Record<number, string>> = {
  [-2]: 'much less than expected',
  [-1]: 'less than expected',
  0: 'as expected',
  1: 'more than expected',
  2: 'much more than expected',
};

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
): GoalLevels {
  const steps = couldWorsen ? 1 : 2;
  const spacing = (expected - baseline) / steps;
  const size = Math.max(1, Math.floor(Math.abs(spacing))) * (spacing < 0 ? -1 : 1);
  const values = LEVELS.map((level) => expected + level * size) as GoalLevels['values'];
  const problems: string[] = [];
  if (!Number.isFinite(baseline) || !Number.isFinite(expected))
    problems.push('Baseline and expected level must be numbers.');
  else if (expected <= baseline) problems.push('The expected level must lie above the baseline.');
  else if (spacing < 1)
    problems.push(`The step is smaller than one ${variable.unit}. Choose a higher expected level, or a longer task.`);
  if (problems.length === 0 && values[4] > variable.max) {
    const most = Math.floor((variable.max * steps + baseline * 2) / (steps + 2));
    problems.push(
      `Level +2 would be ${values[4]} ${variable.unit}, above ${variable.max}. Set the expected level at ${most} or lower, or choose a longer task.`,
    );
  }
  return { values, texts: levelTexts(values, variable), problems };
}

/**
 * Three levels where five would lie inside the noise: less than expected, as expected, more. Only the one in the middle
 * has two ends, and it is as wide as the noise asks.
 * @param width least width of a level, in the variable's unit
 * @returns null where there is no room for it
 */
export function threeLevels(variable: LevelVariable, expected: number, width: number): GoalLevels | null {
  const { unit, min, max } = variable;
  const above = expected + Math.max(1, Math.ceil(width));
  if (above > max || expected <= min) return null;
  const as = above - 1 > expected ? `${expected} to ${above - 1} ${unit}` : `${expected} ${unit}`;
  const more = above >= max ? `${above} ${unit}` : `${above} ${unit} or more`;
  const texts: GoalLevels['texts'] = ['', `fewer than ${expected} ${unit}`, as, more, ''];
  return { values: [min, min, expected, above, max + 1], texts, problems: [] };
}

/** Three levels: the outermost two are left empty on purpose. */
export const hasThreeLevels = (texts: readonly string[]): boolean =>
  texts.length === LEVELS.length && texts.every((text, i) => (text.trim() === '') === (i === 0 || i === 4));

/** Level that a value reaches. */
export function levelReached(levels: GoalLevels['values'], value: number): -2 | -1 | 0 | 1 | 2 {
  return ([2, 1, 0, -1].find((level) => value >= levels[level + 2]!) as 2 | 1 | 0 | -1 | undefined) ?? -2;
}

function levelTexts(values: GoalLevels['values'], { unit, max }: LevelVariable): GoalLevels['texts'] {
  const between = (low: number, next: number) => (next - 1 > low ? `${low} to ${next - 1} ${unit}` : `${low} ${unit}`);
  return [
    `fewer than ${values[1]} ${unit}`,
    between(values[1], values[2]),
    between(values[2], values[3]),
    between(values[3], values[4]),
    values[4] >= max ? `${values[4]} ${unit}` : `${values[4]} ${unit} or more`,
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
export function checkLevels(texts: readonly string[]): string[] {
  if (texts.every((text) => text.trim() === '')) return [];
  const problems: string[] = [];
  const isThree = hasThreeLevels(texts);
  const empty = isThree ? [] : LEVELS.filter((_, i) => !texts[i]?.trim());
  if (empty.length) problems.push(`Level ${empty.map(signed).join(', ')} has no text yet.`);
  const ranges = texts.map(parseRange);
  const unread = LEVELS.filter((_, i) => texts[i]?.trim() && !ranges[i]);
  if (unread.length) {
    problems.push(
      `Level ${unread.map(signed).join(', ')} has no number, so overlap cannot be checked. Begin it with a number, for example "6 to 8 words".`,
    );
  }
  const known = ranges.filter((range) => range !== null);
  if (new Set(known.map((range) => range.unit).filter(Boolean)).size > 1) {
    problems.push('The levels name more than one variable. Keep one, and put the rest into the goal itself.');
  }
  for (let i = 0; i + 1 < ranges.length; i++) {
    const [here, next] = [ranges[i], ranges[i + 1]];
    if (!here || !next) continue;
    const names = `${signed(LEVELS[i]!)} and ${signed(LEVELS[i + 1]!)}`;
    if (next.low <= here.low) problems.push(`Levels ${names} do not rise.`);
    else if (next.low <= here.high) problems.push(`Levels ${names} overlap.`);
    else if (next.low - here.high > 1) problems.push(`Between levels ${names} there is a hole.`);
  }
  const starts = ranges.slice(1).map((range) => range?.low ?? NaN);
  const steps = starts.slice(1).map((start, i) => start - starts[i]!);
  if (!isThree && steps.every(Number.isFinite) && Math.max(...steps) - Math.min(...steps) > 1) {
    problems.push('The levels are not equally spaced.');
  }
  return problems;
}

function parseRange(text: string): Range | null {
  const clean = text.trim().toLowerCase().replaceAll('\u2013', '-');
  const unitOf = (rest: string) =>
    rest
      .replace(/or (more|fewer|less|better)/, '')
      .replace(/[.,;].*$/, '')
      .trim();
  const below = /^(?:fewer than|less than|below|under)\s+(\d+)(.*)$/.exec(clean);
  if (below) return { low: -Infinity, high: Number(below[1]) - 1, unit: unitOf(below[2]!.trim()) };
  const span = /^(\d+)\s*(?:to|-)\s*(\d+)(.*)$/.exec(clean);
  if (span) return { low: Number(span[1]), high: Number(span[2]), unit: unitOf(span[3]!.trim()) };
  const single = /^(\d+)(.*)$/.exec(clean);
  if (!single) return null;
  const rest = single[2]!.trim();
  const value = Number(single[1]);
  if (/or (more|better)|and more/.test(rest)) return { low: value, high: Infinity, unit: unitOf(rest) };
  if (/or (fewer|less)/.test(rest)) return { low: -Infinity, high: value, unit: unitOf(rest) };
  return { low: value, high: value, unit: unitOf(rest) };
}

/** A level with its sign: -2, 0, +1. */
export const signed = (level: number): string => (level > 0 ? `+${level}` : String(level));
