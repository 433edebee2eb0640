import { z } from 'zod';
import { OccasionCode } from './occasions.ts';
import { factFields, Id, IsoDate, Line, Note, SourceTag } from './common.ts';

export const GoalLevel = z.union([z.literal(-2), z.literal(-1), z.literal(0), z.literal(1), z.literal(2)]);
export type GoalLevel = z.infer<typeof GoalLevel>;

/**
 * How a goal is judged. words: read by a reader. exact: every word and digit right. told-apart: a second person tells
 * pairs of signatures. accepted: taken in use, where and when.
 */
const GoalMeasure = z.enum(['words', 'exact', 'told-apart', 'accepted']);
export type GoalMeasure = z.infer<typeof GoalMeasure>;

/** One goal: one output, one variable, five levels. A revision is a new goal that names the one it replaces. */
export const Goal = z.object({
  ...factFields,
  clientId: Id,
  output: Line,
  paper: Line,
  aid: Line,
  cue: z.enum(['none', 'visual', 'verbal']),
  reader: z.enum(['unfamiliar', 'family']),
  /** Words to be read of words written at level 0. */
  wordsOf: z.number().int().min(1).max(200).nullable(),
  percent: z.number().min(0).max(100).nullable(),
  tries: z.object({ of: z.number().int().min(1).max(20), need: z.number().int().min(1).max(20) }),
  /** When it is to be reached. (`by` is who set it.) */
  dueOn: IsoDate.nullable(),
  setOn: IsoDate,
  baseline: Line,
  /** Why it matters, in the client's words. */
  because: Note,
  /** Text of each level -2..+2, in that order; '' = not written yet. */
  levels: z.tuple([Line, Line, Line, Line, Line]),
  weight: z.number().int().min(1).max(4),
  nextStep: Line,
  replaces: Id.nullable(),
  status: z.enum(['active', 'met', 'revised', 'dropped']),
  /** What the client wants to write it for; absent = none named. */
  occasion: OccasionCode.optional(),
  /** Absent = words read. */
  measure: GoalMeasure.optional(),
});
export type Goal = z.infer<typeof Goal>;

export const GoalRating = z.object({
  ...factFields,
  clientId: Id,
  goalId: Id,
  visitId: Id,
  level: GoalLevel,
  note: Note,
});
export type GoalRating = z.infer<typeof GoalRating>;

/** One rung of the ladder of goals: a piece of writing that matters by itself, a reachable step above the one before. */
export const GoalRung = z.strictObject({
  code: z.string().min(1).max(40),
  /** What is written, in words that fit into "will write …". */
  output: Line.min(1),
  /** About how many words it takes. */
  words: z.number().int().min(1).max(200),
});
export type GoalRung = z.infer<typeof GoalRung>;

/** A rung as it is shipped. */
export const ShippedRung = GoalRung.extend({ source: SourceTag, sourceNote: z.string().max(400) });

/** One rung of the ladder of a writing occasion, lowest first. */
export const OccasionRung = GoalRung.extend({
  occasion: OccasionCode,
  measure: GoalMeasure,
  /** On what it is written; '' = the paper of the last sample. */
  paper: Line,
  source: SourceTag,
});
export type OccasionRung = z.infer<typeof OccasionRung>;
