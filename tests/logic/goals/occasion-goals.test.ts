/** Goals by what the client wants to write: CLINICAL notes 2, a2 (rungs) and a3 (the signature's own measure). */
import { expect, test } from 'vitest';
import { rulesInUse } from '../../../db/rules/in-use.ts';
import { OccasionCode } from '../../../db/types/occasions.ts';
import type { ClientRecord } from '../../../db/types/record.ts';
import { occasionGoal, occasionSteps } from '../../../renderer/logic/goals/occasion-goals.ts';
import { levelNoise, proposedGoal } from '../../../renderer/logic/goals/new-goal.ts';
import { goalSentence, missingParts } from '../../../renderer/logic/goals/sentence.ts';
import { newPairs, signatureVerdict } from '../../../renderer/logic/goals/signature-check.ts';
import { ladder, limits } from '../../limits.ts';
import { clientId, id, record } from '../pages/record.ts';
import { toldEnglish } from '../../../renderer/logic/texts/screens/told-english.ts';
import { englishTelling } from '../../../renderer/logic/texts/screens/telling.ts';

const rules = rulesInUse(null);
const noise = levelNoise(null, limits);
const wants = (...codes: OccasionCode[]): ClientRecord =>
  record((r) => {
    r.samples = [];
    r.readings = [];
    r.goals = [];
    r.writingOccasions = codes.map((code, i) => ({
      id: id(0x500 + i),
      clientId,
      code,
      on: true,
      words: [],
      topics: [],
      often: null,
      example: '',
      at: `2026-03-04T09:0${i}:00.000Z`,
      by: 'JM',
    }));
  });

test('each occasion has its ladder, and starts on its first rung', () => {
  for (const code of OccasionCode.options) {
    const [step] = occasionSteps(wants(code), rules.occasionRungs, null, limits, toldEnglish.goals);
    expect(step?.rung.code).toBe(`${code}-1`);
  }
});

test('a signature is told apart and accepted, never read; sums and dates are exact', () => {
  const record = wants('signature', 'check', 'list');
  const steps = occasionSteps(record, rules.occasionRungs, null, limits, toldEnglish.goals);
  expect(steps.map((step) => step.rung.measure)).toEqual(['told-apart', 'exact', 'words']);
  const ids = { id: id(), clientId };
  const base = proposedGoal(
    ids,
    [],
    null,
    'Sign for the rent',
    '2026-03-04',
    limits,
    ladder,
    null,
    null,
    englishTelling,
  );
  const goal = occasionGoal(base, steps[0]!, rules.occasionRungs, noise, toldEnglish.goals);
  expect(goal).toMatchObject({
    occasion: 'signature',
    percent: null,
    wordsOf: null,
    nextStep: 'a signature in the real box',
  });
  const said = goalSentence(goal, 'the client', (iso) => iso, englishTelling);
  expect(said).toContain('a second person tells at least 5 of 6 pairs of signatures right');
  expect(said).not.toContain('reads');
  expect(missingParts(goal, toldEnglish.goals)).toEqual([]);
  const list = occasionGoal(base, steps[2]!, rules.occasionRungs, noise, toldEnglish.goals);
  expect(list.output).toBe('a list of three things');
  expect(list.percent).not.toBeNull();
});

test('a rung that was met gives the next one, and a tick that is taken off gives none', () => {
  const client = wants('check');
  client.goals = [
    {
      ...occasionGoal(
        proposedGoal({ id: id(), clientId }, [], null, '', '2026-03-04', limits, ladder, null, null, englishTelling),
        occasionSteps(client, rules.occasionRungs, null, limits, toldEnglish.goals)[0]!,
        rules.occasionRungs,
        noise,
        toldEnglish.goals,
      ),
      status: 'met',
      at: '2026-03-04T09:00:00.000Z',
      by: 'JM',
    },
  ];
  expect(occasionSteps(client, rules.occasionRungs, null, limits, toldEnglish.goals)[0]?.rung.code).toBe('check-2');
  client.writingOccasions[0]!.on = false;
  expect(occasionSteps(client, rules.occasionRungs, null, limits, toldEnglish.goals)).toEqual([]);
});

test('six pairs, three of each; five told right are enough, four are not, and an open check says so', () => {
  const pairs = newPairs('a');
  expect(pairs.filter((pair) => pair.shown === 'same')).toHaveLength(3);
  expect(newPairs('a')).toEqual(pairs);
  const judged = (wrong: number) =>
    pairs.map((pair, i) => ({
      ...pair,
      said: i < wrong ? (pair.shown === 'same' ? ('drawn' as const) : ('same' as const)) : pair.shown,
    }));
  expect(signatureVerdict({ pairs: judged(1), accepted: null }, toldEnglish.goals).told).toBe(true);
  expect(signatureVerdict({ pairs: judged(2), accepted: null }, toldEnglish.goals).told).toBe(false);
  expect(signatureVerdict({ pairs, accepted: null }, toldEnglish.goals).sentence).toContain('0 of 6 pairs are judged');
});
