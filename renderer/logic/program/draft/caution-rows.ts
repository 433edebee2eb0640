/** Caution sentences by where they stand: with their item, with all work of the hand, or once for the page. */
import { onceFor } from '../../../../db/types/rule-table/once-for.ts';
import type { RuleTable } from '../../../../db/types/rules.ts';

type Cautions = RuleTable['cautionTexts'];

const byPlace = onceFor((rows: Cautions) => Map.groupBy(rows, (row) => row.on));

export const cautionsOn = (place: Cautions[number]['on'], rules: RuleTable): Cautions =>
  byPlace(rules.cautionTexts).get(place) ?? [];

const byName = onceFor((rows: Cautions) => Map.groupBy(rows, (row) => row.with ?? row.code));

/** The caution that an item names, and what goes with it for some clients. */
export const cautionsNamed = (code: string, rules: RuleTable): Cautions => byName(rules.cautionTexts).get(code) ?? [];
