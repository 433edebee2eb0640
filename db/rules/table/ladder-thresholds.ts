/**
 * The ladder of goals: what is written, a reachable step above the rung before. Its two numbers, the place of a rung
 * and the words it takes, are rows of the threshold table, so that a clinic can reorder, leave out and resize rungs.
 */
import { type GoalRung, ShippedRung } from '../../types/goal.ts';
import type { Threshold } from '../../types/rules.ts';
import ladderJson from './goal-ladder.json' with { type: 'json' };

const shipped = ladderJson.map((row) => ShippedRung.parse(row));

const placeOf = (code: string): string => `goal-rung-${code}-place`;
const wordsOf = (code: string): string => `goal-rung-${code}-words`;

/** Rungs as rows of the threshold table. */
export const shippedLadderThresholds: readonly Threshold[] = shipped.flatMap(
  ({ code, output, words, source, sourceNote }, i) => [
    {
      code: placeOf(code),
      name: `Goal ladder: place of “${output}” (0 leaves it out)`,
      value: i + 1,
      unit: 'place',
      min: 0,
      max: shipped.length,
      source,
      sourceNote,
    },
    {
      code: wordsOf(code),
      name: `Goal ladder: words in “${output}”`,
      value: words,
      unit: 'words',
      min: 1,
      max: 200,
      source,
      sourceNote,
    },
  ],
);

/** The rungs in use, lowest first; equal places keep the shipped order. At least the first rung stays. */
export function goalLadder(thresholds: readonly Threshold[]): GoalRung[] {
  const values = new Map(thresholds.map((row) => [row.code, row.value]));
  const rungs = shipped.map(({ code, output, words }, i) => ({
    place: values.get(placeOf(code)) ?? i + 1,
    rung: { code, output, words: values.get(wordsOf(code)) ?? words },
  }));
  const used = rungs.filter(({ place }) => place > 0).sort((a, b) => a.place - b.place);
  return (used.length > 0 ? used : rungs.slice(0, 1)).map(({ rung }) => rung);
}
