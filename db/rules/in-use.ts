/** One answer to "what are the rules now": the merged rule table with the shipped screen, set-up constants and sample texts, with the clinic's values in place. */
import type { RulesInUse } from '../types/rules-in-use.ts';
import type { ClinicRules } from '../types/rules.ts';
import { SampleTexts } from '../types/sample-texts.ts';
import { goalLadder } from './table/ladder-thresholds.ts';
import { rulesCurrent } from './index.ts';
import { screenTables } from './screen/items-schema.ts';
import sampleTexts from './screen/sample-texts.json' with { type: 'json' };

const shippedSampleTexts = SampleTexts.parse(sampleTexts);

/** @throws RuleTableError when the clinic's changes do not fit */
export function rulesInUse(clinic: ClinicRules | null): RulesInUse {
  const rules = rulesCurrent(clinic);
  return {
    ...rules,
    ...screenTables(rules.thresholds),
    sampleTexts: shippedSampleTexts,
    goalLadder: goalLadder(rules.thresholds),
  };
}
