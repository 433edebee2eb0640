/** What an item of the library stands for: an item of its own, a paper or a text. Codes are never taken apart. */
import { byCode } from '../../../db/types/rule-table/once-for.ts';
import type { ItemRef, LibraryItem, RuleTable } from '../../../db/types/rules.ts';

/** Reference behind an item code; null where the table knows no such item (a line of the therapist's own). */
export function refOf(code: string | null, rules: Pick<RuleTable, 'items'>): ItemRef | null {
  const item = code === null ? undefined : byCode(rules.items).get(code);
  return item ? (item.ref ?? { kind: 'item', code: item.code }) : null;
}

/** The item that stands for a paper or a text, or is the item itself. */
export const itemFor = (ref: ItemRef, rules: Pick<RuleTable, 'items'>): LibraryItem | undefined =>
  ref.kind === 'item'
    ? byCode(rules.items).get(ref.code)
    : rules.items.find((each) => each.ref?.kind === ref.kind && each.ref.code === ref.code);
