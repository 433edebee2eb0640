/** Where the client stands on the ladder of tiers. */
import type { ProgramInput } from '../../../../db/types/program-input.ts';
import type { Tier } from '../../../../db/types/program.ts';
import { threshold } from '../../../../db/types/rule-table/threshold.ts';
import type { Facts } from '../facts/fact-types.ts';
import { isLow } from '../facts/program-facts.ts';

/** A 0 or 1 in any of these keeps precursors in the program (entry of tier 1). */
const handItems = ['grasp', 'in-hand', 'opposition', 'wrist', 'strength', 'tone'];

/** Whether a grade of a finding decides the tier, beside or instead of giving a line. */
export const setsTier = (code: string, grade: number): boolean =>
  code === 'low-legibility' || (grade <= 1 && handItems.includes(code));

/** Findings on letters that send writing back to squares where nobody has read it yet. */
const letterFindings = ['confusions', 'closure', 'size-zones', 'crowding', 'copying'];

/**
 * Writing that is hard to read because it is small or shrinks, while the letters themselves are well made: size is
 * practiced on lines, not on squares.
 */
export const sizeLimits = (facts: Facts): boolean => {
  const small = isLow(facts, 'small-writing', 2) || (isLow(facts, 'shrinking', 2) && facts.diagnoses.has('parkinson'));
  // A hand that learns anew has no size of its own yet.
  const other = isLow(facts, 'hand-choice', 1);
  return small && !other && !['closure', 'copying', 'crowding', 'tremor'].some((code) => isLow(facts, code, 1));
};

/** By the words that a reader could read: letters, copied lines, own words. Unread letters that fail start on squares. */
function byLegibility(facts: Facts): 2 | 3 | 4 {
  const read = facts.measures.get('legibility-copy') ?? facts.measures.get('legibility');
  if (read === undefined) {
    return letterFindings.some((code) => isLow(facts, code, 1)) || isLow(facts, 'tremor', 1) ? 2 : 3;
  }
  if (read < threshold(facts.thresholds, 'legibility-hold')) return sizeLimits(facts) ? 3 : 2;
  return read < threshold(facts.thresholds, 'legibility-good') ? 3 : 4;
}

/**
 * Tier of the next program: 0 until a pen trial is possible and seating is safe, 1 while a hand item is 0 or 1, then
 * by the words that a reader could read (under 75 % letters, or lines where only size is to blame; under 90 % copied
 * lines; else own words).
 * Where the client already stands on the ladder, only an accepted proposal moves the tier between 2 and 4, and a draft
 * moves it by one at most.
 */
export function tierOf(input: ProgramInput, facts: Facts): Tier {
  if (facts.penHeld === null || isLow(facts, 'seating', 0)) return 0;
  if (!facts.penHeld) return 1;
  const current = input.current?.tier;
  const low = handItems.some((code) => isLow(facts, code, 1));
  if (current !== undefined && current >= 2) return low ? ((current - 1) as Tier) : current;
  if (low) return 1;
  const next = byLegibility(facts);
  return current === 1 ? 2 : next;
}
