/** One answer to "what are the rules now": the merged rule table with the shipped screen, set-up constants and sample texts, with the clinic's values in place. */
import { type RulesInUse, Translations } from '../types/rules-in-use.ts';
import type { ClinicRules } from '../types/rules.ts';
import { SampleTexts } from '../types/rule-table/sample-texts.ts';
import { goalLadder } from './table/ladder-thresholds.ts';
import { RuleTableError, rulesCurrent } from './index.ts';
import { TextLibraryError, textLibrary } from './library/text-library.ts';
import { screenTables } from './screen/items-schema.ts';
import { OccasionRung } from '../types/goal.ts';
import occasionRungs from './table/occasion-rungs.json' with { type: 'json' };
import sampleTexts from './screen/sample-texts.json' with { type: 'json' };
import german from './texts/de.json' with { type: 'json' };
import spanish from './texts/es.json' with { type: 'json' };

const translations = { es: Translations.parse(spanish), de: Translations.parse(german) };
const shippedOccasionRungs = occasionRungs.map((row) => OccasionRung.parse(row));
const shippedSampleTexts = SampleTexts.parse(sampleTexts);

/** @throws RuleTableError when the clinic's changes do not fit */
export function rulesInUse(clinic: ClinicRules | null): RulesInUse {
  const rules = rulesCurrent(clinic);
  return {
    ...rules,
    ...screenTables(rules.thresholds),
    sampleTexts: shippedSampleTexts,
    texts: textsOf(clinic, rules.thresholds),
    translations,
    goalLadder: goalLadder(rules.thresholds),
    occasionRungs: shippedOccasionRungs,
  };
}

/** @throws RuleTableError, so that a wrong frame is refused like any other row */
function textsOf(clinic: ClinicRules | null, limits: RulesInUse['thresholds']): RulesInUse['texts'] {
  try {
    return textLibrary(clinic, limits);
  } catch (error) {
    if (error instanceof TextLibraryError) throw new RuleTableError(error.problems);
    throw error;
  }
}
