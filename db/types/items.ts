/**
 * Shapes of the intake screen's shipped data: screening items, red flags, set-up constants.
 * The data lie in db/rules/{items,red-flags,setup}.json; logic takes them as arguments.
 */
import { z } from 'zod';
import { SourceTag } from './common.ts';

const Code = z
  .string()
  .regex(/^[a-z][a-z0-9-]*$/)
  .max(60);
const Text = z.string().trim().min(1).max(600);

/** One way in which an item opens; any one is enough. `because` is the reason shown. */
export const OpensWhen = z.discriminatedUnion('when', [
  z.object({ when: z.literal('grade-at-most'), item: Code, grade: z.number().int().min(0).max(3), because: Text }),
  z.object({ when: z.literal('brain-diagnosis'), because: Text }),
  z.object({ when: z.literal('measure-at-most'), measure: Code, value: z.number(), because: Text }),
  z.object({ when: z.literal('measure-at-least'), measure: Code, value: z.number(), because: Text }),
  z.object({ when: z.literal('home-program'), because: Text }),
  z.object({ when: z.literal('goal-talk'), because: Text }),
]);
export type OpensWhen = z.infer<typeof OpensWhen>;

/** A choice asked beside the grade, for example the type of tremor. `below` = asked when the grade is under it. */
const ItemDetail = z.object({
  question: Text,
  below: z.number().int().min(1).max(4),
  /** `said`: the choice as a sentence of a page, where its title is none by itself; '' = nothing to say. */
  choices: z.array(z.object({ code: Code, title: Text, said: z.string().max(200).optional() })).min(2),
});

/** Client's own rating 0 to 10. `level` grades the higher rating, `rise` after minus before. */
const ItemRatings = z.object({
  question: Text,
  grades: z.enum(['level', 'rise']),
  /** Highest value that still earns grade 3, 2 and 1. */
  atMost: z.tuple([z.number(), z.number(), z.number()]),
});

export const IntakeItem = z.object({
  code: Code,
  title: Text,
  /** One of the eight that everyone is asked. */
  short: z.boolean(),
  group: z.enum(['hand', 'body', 'feeling', 'seeing', 'thinking', 'wish']),
  /** Scored together in the one five-minute writing block. */
  writingBlock: z.boolean(),
  observe: z.array(Text).min(1),
  anchors: z.object({ 3: Text, 2: Text, 1: Text, 0: Text }),
  /** An anchor as a sentence of a page, where it only makes sense beside its item. */
  said: z.object({ 3: Text, 2: Text, 1: Text, 0: Text }).partial().optional(),
  asksSide: z.boolean(),
  /** What the side means: the hand it was tested on, or the side of the page that is missed. */
  sideOf: z.enum(['hand', 'page']).default('hand'),
  ratings: ItemRatings.nullable(),
  detail: ItemDetail.nullable(),
  opensWhen: z.array(OpensWhen),
  caution: Text.nullable(),
  source: SourceTag,
  sourceNote: z.string().max(400),
  drawing: Code,
});
export type IntakeItem = z.infer<typeof IntakeItem>;

/** A finding that comes from the set-up calculator instead of an item. */
const SetupFinding = z.object({ code: Code, title: Text, source: SourceTag });

/** An area of work and the least grade of each item that it needs; untested never suffices. */
const StartArea = z.object({
  area: z.enum(['sample', 'hand-work', 'resistance', 'stretch', 'home']),
  title: Text,
  needs: z.array(z.object({ item: Code, grade: z.number().int().min(0).max(3) })),
  source: SourceTag,
});

export const ItemTable = z.object({
  version: z.string(),
  /** Diagnosis kinds that open the items on vision, language and attention. */
  brainDiagnoses: z.array(Code),
  items: z.array(IntakeItem).min(1),
  mayStart: z.array(StartArea),
  setupFindings: z.array(SetupFinding),
});
export type ItemTable = z.infer<typeof ItemTable>;

const FlagGrade = z.enum(['emergency', 'same-day']);
export const RedFlag = z.object({
  code: Code,
  /** Short name for lists and the referral page. */
  title: Text,
  group: z.enum(['emergency', 'safety-talk', 'new-change', 'hand-and-skin', 'mind']),
  grade: FlagGrade,
  /** `self-harm` has its own actions and never prints its words on a family page. */
  path: z.enum(['medical', 'self-harm']),
  /** Asked on the screen; the others only arise from answers, measures or visits. */
  asked: z.boolean(),
  question: Text,
  doNow: z.array(Text).min(1),
  call: z.enum(['emergency-number', 'crisis-service', 'doctor-today', 'referrer-today', 'neurology']),
  source: SourceTag,
  sourceNote: z.string().max(400),
});
export type RedFlag = z.infer<typeof RedFlag>;

/** How a flag arises from an intake answer. */
export const FlagFromAnswer = z.object({
  flag: Code,
  item: Code,
  /** Any one of these is enough; `details` alone needs no grade. */
  gradeAtMost: z.number().int().min(0).max(3).nullable(),
  ratingAtLeast: z.number().nullable(),
  riseAtLeast: z.number().nullable(),
  details: z.array(Code),
  because: Text,
  source: SourceTag,
  sourceNote: z.string().max(400),
});
export type FlagFromAnswer = z.infer<typeof FlagFromAnswer>;

/** The flag that the model of change raises, and that an explanation holds back. */
export const STEADY_LOSS = 'steady-loss';

export const RedFlagTable = z.object({
  version: z.string(),
  groups: z.array(z.object({ code: Code, title: Text, help: Text })),
  flags: z.array(RedFlag).min(1),
  fromAnswers: z.array(FlagFromAnswer),
  /** Steady loss, as the model of change finds it. */
  steadyLoss: z.object({ flag: z.literal(STEADY_LOSS), source: SourceTag, sourceNote: z.string() }),
});
export type RedFlagTable = z.infer<typeof RedFlagTable>;

const Constant = z.object({ value: z.number(), unit: z.enum(['mm', 'deg']), source: SourceTag, note: z.string() });
const Band = z.object({
  min: z.number(),
  max: z.number(),
  unit: z.enum(['mm', 'deg']),
  source: SourceTag,
  note: z.string(),
});

export const SetupTable = z.object({
  version: z.string(),
  shoeDefault: Constant,
  seatBelowKnee: Band,
  tableAboveElbow: z.object({ writing: Band, support: Band, 'shoulder-pain': Band }),
  thighRoom: Constant,
  tableThicknessDefault: Constant,
  /** A step smaller than this is within what a tape can tell: it is computed and not asked for. */
  leastChange: Constant,
  footrestHighest: Constant,
  /** A firm cushion on a chair that cannot be set. */
  cushionHighest: Constant,
  /** Hip precautions: the seat lies at knee height in shoes or up to this much higher. */
  seatAboveKneeHip: Constant,
  footrestSize: z.object({ width: Constant, depth: Constant }),
  paperTilt: z.object({ right: Band, left: Band }),
  slant: z.object({ suggested: Band, writingHighest: Constant, readingHighest: Constant }),
  eyeToPaper: Band,
  seatDepthGap: Band,
  bodyToTable: Band,
  elbowForward: Band,
});
export type SetupTable = z.infer<typeof SetupTable>;
