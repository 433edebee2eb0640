import { z } from 'zod';
import { factFields, Grade, Hand, Id, Initials, IsoDate, Line, Note, Side, ZeroToTen } from './common.ts';

/** One answer of the intake screen. `item` is an item code of the rule table; one answer per visit, item and side. */
export const IntakeAnswer = z.object({
  ...factFields,
  clientId: Id,
  visitId: Id,
  item: z.string().max(60),
  side: Side,
  state: z.enum(['graded', 'not-indicated', 'not-tested']),
  /** Present only when graded. */
  grade: Grade.nullable(),
  /** Why it was not tested; '' otherwise. */
  reason: Line,
  /** Extra choice that an item asks for (tremor type, hand used …), a code of the item. */
  detail: z.string().max(60).nullable(),
  /** Ratings 0 to 10 before and after the writing block, where the item asks for them. */
  before: ZeroToTen.nullable(),
  after: ZeroToTen.nullable(),
  note: Note,
});
export type IntakeAnswer = z.infer<typeof IntakeAnswer>;

/** An answer to one red-flag question. Unanswered questions are not clear. */
export const RedFlagAnswer = z.object({
  ...factFields,
  clientId: Id,
  visitId: Id,
  flag: z.string().max(60),
  present: z.boolean(),
  /** Known and medically reviewed: who reviewed it, when, and what was said. Null = open. */
  review: z.object({ reviewer: Line.min(1), on: IsoDate, outcome: Note, recordedBy: Initials }).nullable(),
  note: Note,
});
export type RedFlagAnswer = z.infer<typeof RedFlagAnswer>;

/** Measured for the set-up calculator, all mm; null = not measured. Ranges refuse slips of the tape, not people. */
export const SetupMeasures = z.object({
  ...factFields,
  clientId: Id,
  visitId: Id,
  /** Underside of the knee to the floor, barefoot. */
  popliteal: z.number().min(200).max(650).nullable(),
  /** Underside of the elbow above the seat while sitting on it (cushion compressed). */
  elbow: z.number().min(80).max(450).nullable(),
  /** Sole thickness. */
  shoe: z.number().min(0).max(120).nullable(),
  /** Height of the seat there is, the client sitting on it; a set-up measured before it was asked has none. */
  chair: z.number().min(200).max(900).nullable().optional(),
  /** Whether that seat can be set; absent = it can. */
  chairAdjustable: z.boolean().optional(),
  /** Table top above the floor. */
  table: z.number().min(300).max(1300).nullable(),
  tableAdjustable: z.boolean(),
  /** Table top with apron. */
  tableThickness: z.number().min(0).max(300).nullable(),
  /** Thickest part of the thigh above the seat. */
  thigh: z.number().min(60).max(350).nullable(),
  /** Slant surface: height of the raised edge and sloping length. */
  slantRise: z.number().min(0).max(300).nullable(),
  slantLength: z.number().min(50).max(900).nullable(),
  hand: Hand.nullable(),
  purpose: z.enum(['writing', 'support', 'shoulder-pain']),
  units: z.enum(['mm', 'in']),
  note: Note,
});
export type SetupMeasures = z.infer<typeof SetupMeasures>;
