/** What a trial shows: which option is read better, if any, and what to say about it. */
import { mean, median } from '../../../statistics/order-statistics.ts';
import type { Trial, TrialLine } from '../../../../db/types/occasions.ts';
import { type ChangeInterval, type ChangeLimits, examineChange, type RepeatPair } from '../../../change/index.ts';
import type { Decimals } from '../../texts/decimals.ts';
import type { Told } from '../../texts/screens/en/screens-en.ts';
import { blocksATrial } from './trial-order.ts';
import { blockPermutation } from './block-permutation.ts';

interface OptionResult {
  name: string;
  right: number;
  words: number;
  /** Percent read; null = nothing read yet. */
  percent: number | null;
  /** Median of the seconds a line; null = not timed. */
  seconds: number | null;
  /** Mean comfort 0 to 10; null = not asked. */
  comfort: number | null;
}

export interface TrialVerdict {
  /** Blocks in which every option has been read. */
  blocks: number;
  /** All blocks are read. */
  complete: boolean;
  options: OptionResult[];
  /** Exact p of "no difference"; null = no whole block yet. */
  p: number | null;
  /** Place of the option that is read better; null = no difference seen, or not all blocks read. */
  better: number | null;
  /** The better against the next best, or the first against the second, in points, by the change model; null = not read. */
  interval: ChangeInterval | null;
  sentence: string;
}

/** Words of a line, as they are counted when it is read. */
export const wordsIn = (text: string): number => text.split(/\s+/).filter(Boolean).length;
const known = (values: readonly (number | null)[]): number[] =>
  values.flatMap((value) => (value === null ? [] : [value]));

function optionResult(name: string, lines: readonly TrialLine[]): OptionResult {
  const read = lines.filter((line) => line.right !== null);
  const right = read.reduce((sum, line) => sum + (line.right ?? 0), 0);
  const count = read.reduce((sum, line) => sum + wordsIn(line.text), 0);
  return {
    name,
    right,
    words: count,
    percent: count > 0 ? (100 * right) / count : null,
    seconds: median(known(lines.map((line) => line.seconds))),
    comfort: mean(known(lines.map((line) => line.comfort))),
  };
}

/** Words read, a row a block, a value an option; only blocks in which every option is read. */
function wholeBlocks(trial: Trial): number[][] {
  return Array.from({ length: blocksATrial }, (_, block) =>
    trial.options.map((_option, option) => {
      const line = trial.lines.find((each) => each.block === block && each.option === option);
      return line?.right ?? null;
    }),
  ).flatMap((row) => (row.every((value) => value !== null) ? [row] : []));
}

/**
 * @param p largest chance at which a difference is taken as seen (threshold `trial-p`)
 * @param pairs the clinic's repeat pairs: how far unchanged hands vary
 */
export function trialVerdict(
  trial: Trial,
  p: number,
  limits: ChangeLimits,
  pairs: readonly RepeatPair[] = [],
  words: Told['ladder'],
  decimals: Decimals,
): TrialVerdict {
  const counted = trial.lines.filter((line) => line.block !== null);
  const options = trial.options.map(({ name }, i) =>
    optionResult(
      name,
      counted.filter((line) => line.option === i),
    ),
  );
  const blocks = wholeBlocks(trial);
  const complete = blocks.length === blocksATrial;
  const chance = blockPermutation(blocks);
  const ranked = options.map((_, i) => i).sort((a, b) => (options[b]!.percent ?? -1) - (options[a]!.percent ?? -1));
  const [first, second] = ranked as [number, number];
  const pair = blocks.map((row) => [row[first]!, row[second]!]);
  // Of three options: they differ at all, and the best differs from the next best.
  const differ = chance !== null && chance <= p && (options.length === 2 || (blockPermutation(pair) ?? 1) <= p);
  const better = complete && differ ? first : null;
  const interval = intervalOf(counted, [first, second], limits, pairs);
  return {
    blocks: blocks.length,
    complete,
    options,
    p: chance,
    better,
    interval,
    sentence: sentenceOf(
      { options, complete, blocks: blocks.length, better, first, second, chance, interval },
      words,
      decimals,
    ),
  };
}

/** The change model asked for "best instead of next best": the two visits of the one as before, of the other as now. */
function intervalOf(
  lines: readonly TrialLine[],
  [first, second]: readonly [number, number],
  limits: ChangeLimits,
  pairs: readonly RepeatPair[],
): ChangeInterval | null {
  const samples = [second, first].flatMap((option, at) =>
    ([1, 2] as const).flatMap((part) => {
      const own = lines.filter((line) => line.option === option && line.part === part && line.right !== null);
      if (own.length === 0) return [];
      return [
        {
          // Days only order the visits: those of one option come before those of the other.
          day: `2000-01-0${1 + 2 * at + part - 1}`,
          right: own.reduce((sum, line) => sum + (line.right ?? 0), 0),
          words: own.reduce((sum, line) => sum + wordsIn(line.text), 0),
          task: 'copy',
          baseline: at === 0,
        },
      ];
    }),
  );
  if (samples.length < 2) return null;
  return examineChange({ samples, pairs }, limits).answer.change;
}

function sentenceOf(
  of: {
    options: readonly OptionResult[];
    complete: boolean;
    blocks: number;
    better: number | null;
    first: number;
    second: number;
    chance: number | null;
    interval: ChangeInterval | null;
  },
  words: Told['ladder'],
  decimals: Decimals,
): string {
  const read = of.options.map((each) => words.trialRead(each.name, each.right, each.words)).join('; ');
  if (!of.complete) return words.blocksRead(of.blocks, blocksATrial, of.blocks > 0 ? read : '');
  const p = of.chance === null ? '' : words.chance(decimals(of.chance, of.chance < 0.01 ? 3 : 2));
  if (of.better === null) return words.noDifference(p, read);
  const best = of.options[of.better]!.name;
  const next = of.options[of.second]!.name;
  const { low = null, high = null } = of.interval ?? {};
  return words.betterThan(
    best,
    next,
    low === null ? null : Math.round(low),
    high === null ? null : Math.round(high),
    p,
    read,
  );
}
