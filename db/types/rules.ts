/** Shapes of the rule table (db/rules). Units are in the names; minutes are of one session unless said otherwise. */
import { z } from 'zod';
import { Line, SourceTag } from './common.ts';
import { Condition, RuleCode } from './conditions.ts';
import { RedFlag, FlagFromAnswer } from './items.ts';
import { Dose, LineKind, Tier } from './program.ts';
import { TextFrame, TextTopic, WordList } from './rule-table/text-frames.ts';

const Text = z.string().trim().min(1).max(600);
const sourced = { source: SourceTag, sourceNote: z.string().max(400) };

/** Every code that a rule may name, with its plain name: one place. */
const Vocabulary = z.strictObject({
  findings: z.array(
    z.strictObject({
      code: RuleCode,
      name: Text,
      /** Where it comes from: an intake item, the set-up page, a measure, or the therapist's eye. */
      from: z.enum(['item', 'setup', 'measure', 'observed']),
      /** The grade counts for one hand or side only. */
      sided: z.boolean(),
      /** Its side is a side of the page, not a hand: it counts for every writer. */
      pageSide: z.boolean(),
      details: z.array(z.strictObject({ code: RuleCode, name: Text })),
    }),
  ),
  cautions: z.array(
    z.strictObject({
      code: RuleCode,
      name: Text,
      group: z.enum(['caution', 'circumstance', 'derived']),
      /** Something the client wants to write. */
      wish: z.boolean().default(false),
    }),
  ),
  /** What the client wants to write: asked once, drives main writing line, sample and practice pages. */
  occasions: z.array(z.strictObject({ code: RuleCode, name: Text })),
  diagnoses: z.array(z.strictObject({ code: RuleCode, name: Text, groups: z.array(RuleCode) })),
  /** Group of diagnoses -> plain name. */
  diagnosisGroups: z.record(RuleCode, Text),
  /** `units` are all that are understood; the first is the unit of thresholds. */
  measures: z.array(z.strictObject({ code: RuleCode, name: Text, units: z.array(z.string().max(30)).min(1) })),
});

/** What an item does to a body: vetoes speak of these. */
export const Hazard = z.enum([
  'brisk',
  'putty',
  'pinch',
  'resistance',
  'weight-bearing',
  'stretch',
  'neck-stretch',
  'angled',
  'opposition',
  'finger-work',
  'weights',
  'speed',
  'standing',
  'eyes-closed',
  'textures',
  'small-objects',
  'sleeve',
  'slant',
  'seat-raise',
  'dictation',
  'letters',
  'transfer',
  'flat-slide',
  'wrist-drill',
  'in-hand-work',
  'grasp-work',
  'aim-work',
  'hand-use',
  'elbow-pressure',
  'guessing',
]);
export type Hazard = z.infer<typeof Hazard>;

/** What a line names: an item of the library, a rung of the papers, or a text. */
export const ItemRef = z.strictObject({ kind: z.enum(['item', 'paper', 'content']), code: RuleCode });
export type ItemRef = z.infer<typeof ItemRef>;

/** Other words of an item where a condition holds: the first that holds and that no veto forbids is printed. */
const ItemVersion = z.strictObject({
  code: RuleCode,
  when: Condition,
  text: Text,
  hazards: z.array(Hazard).default([]),
  cautions: z.array(RuleCode).default([]),
});

export const LibraryItem = z.strictObject({
  code: RuleCode,
  /** Set where the item stands for a paper or a text. */
  ref: ItemRef.optional(),
  kind: LineKind,
  tier: Tier,
  title: Line.min(1),
  /** What client and family read: grade 6 or below. */
  text: Text,
  dose: RuleCode,
  /** Intake items and observed findings that must have been tested before it may be given. */
  dependsOn: z.array(RuleCode),
  hazards: z.array(Hazard),
  cautions: z.array(RuleCode),
  /** Line drawing, or null. */
  drawing: RuleCode.nullable(),
  /** Harder item that follows it; null = last of its chain. */
  next: RuleCode.nullable(),
  /** Where there are any, `text` is what stands in the library and one of these is printed; none holds = not given. */
  versions: z.array(ItemVersion).default([]),
  /** Sentences that follow the text where they hold. */
  additions: z.array(z.strictObject({ code: RuleCode, when: Condition, text: Text })).default([]),
  /** 'program': the line stands on the tier of the program, not on its own. */
  onTier: z.enum(['own', 'program']).default('own'),
  /** What the client wants to write that this practices; its words stand where the text says {words}. */
  occasion: RuleCode.nullable().default(null),
  /** Belongs to the slow opening of the hand: no drill of its own (part c). */
  opening: z.boolean().default(false),
  /** It is written in its own box, and no paper of the ladder is needed for it. */
  ownPlace: z.boolean().default(false),
  /** Speaks of the pen in the hand: silent where no hand holds one and nothing is written. */
  penInHand: z.boolean().default(false),
  /** Holds the pen for a hand that cannot: what speaks of the pen in the hand is said again. */
  holdsPen: z.boolean().default(false),
  ...sourced,
});
export type LibraryItem = z.infer<typeof LibraryItem>;

export const Rule = z.strictObject({
  id: z.string().regex(/^[A-Z]{1,2}[0-9]{2,3}[a-z]?$/, 'a rule id is one or two capitals, digits, perhaps a letter'),
  when: Condition,
  /**
   * main-writing: the day's main writing, which takes the dose of part c first. manner: how to write, silent without a
   * line of writing. other: everything else.
   */
  role: z.enum(['main-writing', 'manner', 'other']),
  gives: z.array(RuleCode).min(1),
  /** Instead of the item's own. */
  dose: RuleCode.nullable(),
  /** One sentence for the therapist. */
  because: Text,
  /** What moves the line up, and what moves it back or removes it. */
  advance: Text,
  stepBack: z.string().max(300),
  ...sourced,
});
export type Rule = z.infer<typeof Rule>;

export const Veto = z.strictObject({
  id: z.string().regex(/^V[0-9]{2,3}$/),
  when: Condition,
  hazards: z.array(Hazard),
  kinds: z.array(LineKind),
  items: z.array(RuleCode),
  because: Text,
  ...sourced,
});
export type Veto = z.infer<typeof Veto>;

export const Threshold = z.strictObject({
  code: RuleCode,
  name: Text,
  value: z.number(),
  unit: z.string().max(30),
  min: z.number(),
  max: z.number(),
  /** Smallest change that matters: `npm run mutate` moves the value by it. */
  step: z.number().positive().optional(),
  /** What was shipped, where the clinic has a value of its own. */
  shipped: z.number().optional(),
  ...sourced,
});
export type Threshold = z.infer<typeof Threshold>;

/** How a measure becomes a finding: the first grade whose condition holds; grade 3 where measured and none holds. */
const MeasureFinding = z.strictObject({
  finding: RuleCode,
  /** Measured at all when any of these is present. */
  from: z.array(RuleCode).min(1),
  grades: z
    .array(z.strictObject({ grade: z.union([z.literal(0), z.literal(1), z.literal(2)]), when: Condition }))
    .min(1),
  ...sourced,
});

/** A caution that follows from other facts. Read in the order of the table, before every rule and veto. */
const DerivedCaution = z.strictObject({ caution: RuleCode, when: Condition, because: Text, ...sourced });

/**
 * Items that would contradict each other on one page. The first alternative of which an item may be given stays, the
 * items of the others go.
 */
const ClashGroup = z.strictObject({
  code: RuleCode,
  name: Text,
  alternatives: z.array(z.array(RuleCode).min(1)).min(2),
  ...sourced,
});

/** A red flag that arises from findings and measures, beside those of the intake table. */
const FlagRule = z.strictObject({
  id: z.string().max(10),
  flag: RuleCode,
  when: Condition,
  because: Text,
  ...sourced,
});

/** One rung of the ladder of papers. `rowMm`: square, line pair with midline, or ruling; 0 = no ruling. */
export const Paper = z.strictObject({
  code: RuleCode,
  /** Code of the ruling that practice pages are drawn with. */
  ruling: z.string().max(20),
  family: z.enum(['graph', 'dashed-midline', 'ruled', 'plain-guided', 'plain']),
  rowMm: z.number().min(0).max(40),
  tier: z.array(Tier).min(1),
  title: Line.min(1),
  text: Text,
  /** Largest x-height that fits its rows, mm; null = any. */
  xHeightToMm: z.number().nullable(),
  ...sourced,
});
export type Paper = z.infer<typeof Paper>;

/** What may be written: texts of our own, by language. */
export const Content = z.strictObject({
  code: RuleCode,
  kind: z.enum(['words', 'copy', 'dictation', 'prompt', 'numbers', 'pictures']),
  tier: z.array(Tier).min(1),
  interests: z.array(RuleCode),
  language: z.string().min(2).max(10),
  title: Line.min(1),
  text: Text,
  /** The lines to copy or hear; for prompts, the questions. */
  lines: z.array(Line.min(1)).min(1),
  ...sourced,
});
export type Content = z.infer<typeof Content>;

/** A sentence that prints with an item, where its condition holds (null = always); `with` names one whose items it joins. */
const CautionText = z.strictObject({
  code: RuleCode,
  text: Text.max(400),
  when: Condition.nullable(),
  /** item: with the items that name it. page: once for the whole page. hand: with every timed line. screen: for the therapist. */
  on: z.enum(['item', 'page', 'hand', 'screen']).default('item'),
  /** Of a page's sentences: without practice there is nothing to say. */
  ofPractice: z.literal(true).optional(),
  with: RuleCode.optional(),
  ...sourced,
});

const TierText = z.strictObject({ tier: Tier, name: Text, entry: Text, exit: Text, ...sourced });
const DoseRow = z.strictObject({ code: RuleCode, dose: Dose, ...sourced });

/** The whole table, merged. */
export const RuleTable = z.strictObject({
  format: z.literal('fairhand-rules'),
  version: z.string().regex(/^[0-9]{4}\.[0-9]+(\+clinic\.[0-9]+)?$/, 'a version is year.number'),
  vocabulary: Vocabulary,
  thresholds: z.array(Threshold),
  measureFindings: z.array(MeasureFinding),
  redFlags: z.array(RedFlag),
  flagsFromAnswers: z.array(FlagFromAnswer),
  flagRules: z.array(FlagRule),
  derivedCautions: z.array(DerivedCaution),
  clashes: z.array(ClashGroup),
  tiers: z.array(TierText).length(5),
  items: z.array(LibraryItem),
  rules: z.array(Rule),
  vetoes: z.array(Veto),
  doses: z.array(DoseRow),
  papers: z.array(Paper),
  contents: z.array(Content),
  cautionTexts: z.array(CautionText),
});
export type RuleTable = z.infer<typeof RuleTable>;

/** The clinic's own changes, kept in the database; shipped rows stay restorable because they are only covered. */
export const ClinicRules = z.strictObject({
  format: z.literal('fairhand-clinic-rules'),
  formatVersion: z.literal(2),
  /** Counts the clinic's changes. */
  revision: z.number().int().min(0),
  /** Version of the shipped table that it was made for. */
  basedOn: z.string().max(40),
  items: z.array(LibraryItem),
  rules: z.array(Rule),
  /** Threshold code -> value. */
  thresholds: z.record(RuleCode, z.number()),
  /** Shipped rules, frames of texts and topics (`topic LANGUAGE CODE`) that the clinic switched off. */
  off: z.array(z.string().max(60)),
  /** Frames, word lists and topics of its own, or in place of shipped ones; absent = none. */
  frames: z.array(TextFrame).max(2000).optional(),
  wordLists: z.array(WordList).max(500).optional(),
  topics: z.array(TextTopic).max(300).optional(),
});
export type ClinicRules = z.infer<typeof ClinicRules>;
