/** Builders of intake facts for the tests of this folder. */
import { shippedRedFlags } from '../../../db/rules/screen/items-schema.ts';
import type { IntakeAnswer, RedFlagAnswer } from '../../../db/types/intake.ts';

const clientId = '11111111-1111-4111-8111-111111111111';
const visitId = '22222222-2222-4222-8222-222222222222';
const at = '2026-03-04T09:00:00.000Z';

/** An answer; a grade of null is 'not tested' unless `change` says otherwise. */
export const answer = (item: string, grade: number | null, change: Partial<IntakeAnswer> = {}): IntakeAnswer => ({
  id: `answer ${item} ${change.side ?? 'none'}`,
  at,
  by: 'AB',
  clientId,
  visitId,
  item,
  side: 'none',
  state: grade === null ? 'not-tested' : 'graded',
  grade: grade as IntakeAnswer['grade'],
  reason: grade === null ? 'tired' : '',
  detail: null,
  before: null,
  after: null,
  note: '',
  ...change,
});

export const flagAnswer = (flag: string, present: boolean, when = at): RedFlagAnswer => ({
  id: `flag ${flag} ${when}`,
  at: when,
  by: 'AB',
  clientId,
  visitId,
  flag,
  present,
  review: null,
  note: '',
});

/** Every question answered with no. */
export const noToAll = (): RedFlagAnswer[] =>
  shippedRedFlags.flags.filter((flag) => flag.asked).map((flag) => flagAnswer(flag.code, false));
