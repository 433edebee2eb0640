import { z } from 'zod';
import { GoalRung } from './goal.ts';
import { ItemTable, RedFlagTable, SetupTable } from './items.ts';
import { RuleTable } from './rules.ts';
import { SampleTexts } from './sample-texts.ts';
import { TextLibrary } from './rule-table/text-frames.ts';

/** Everything the clinic knows, as the window and the logic get it: the rule table, the intake screen, set-up constants, sample texts. */
export const RulesInUse = z.object({
  ...RuleTable.shape,
  intake: ItemTable,
  redFlagTable: RedFlagTable,
  setup: SetupTable,
  sampleTexts: SampleTexts,
  /** Frames and word lists of texts that are made. */
  texts: TextLibrary,
  /** Rungs of goals, lowest first. */
  goalLadder: z.array(GoalRung).min(1),
});
export type RulesInUse = z.infer<typeof RulesInUse>;
