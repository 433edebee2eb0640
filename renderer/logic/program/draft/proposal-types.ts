/** What rules ask for, before safety and room are looked at. */
import type { LibraryItem, Rule } from '../../../../db/types/rules.ts';

/** An item in one of its wordings. */
export type WordedItem = LibraryItem & { version: string | null };

export interface LineReason {
  rule: Rule;
  /** Codes of the facts that make the rule hold. */
  uses: readonly string[];
}

export interface Proposal {
  item: LibraryItem | WordedItem;
  reasons: LineReason[];
  at: number;
}
