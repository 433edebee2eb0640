import { z } from 'zod';
import { GoalRung, OccasionRung } from './goal.ts';
import { ItemTable, RedFlagTable, SetupTable } from './items.ts';
import { RuleTable } from './rules.ts';
import { SampleTexts } from './rule-table/sample-texts.ts';
import { TextLibrary } from './rule-table/text-frames.ts';

/** Everything the clinic knows, as the window and the logic get it: the rule table, the intake screen, set-up constants, sample texts. */
/** Shipped texts of one language by their keys, each with the digest of the English that it was made from. */
export const Translations = z.record(
  z.string(),
  z.strictObject({ english: z.string().regex(/^[0-9a-f]{16}$/), text: z.string().min(1) }),
);

const Count = z.object({ right: z.number().min(0), words: z.number().positive() });

/** Two samples of one hand within days, words right of words written: numbers only, nothing says whose. */
export const RepeatPairs = z.array(
  z.object({ task: z.string().nullish(), kind: z.string().nullish(), first: Count, second: Count }),
);

export const RulesInUse = z.object({
  ...RuleTable.shape,
  intake: ItemTable,
  redFlagTable: RedFlagTable,
  setup: SetupTable,
  sampleTexts: SampleTexts,
  /** Frames and word lists of texts that are made. */
  texts: TextLibrary,
  /** By language code; English is the table's own. */
  translations: z.record(z.string(), Translations),
  /** Rungs of goals, lowest first. */
  goalLadder: z.array(GoalRung).min(1),
  /** Rungs of each writing occasion, lowest first. */
  occasionRungs: z.array(OccasionRung).min(1),
  /** Repeat samples of the whole clinic, which every verdict about change asks; left out where only one client is known. */
  repeatPairs: RepeatPairs.readonly().optional(),
});
export type RulesInUse = z.infer<typeof RulesInUse>;
