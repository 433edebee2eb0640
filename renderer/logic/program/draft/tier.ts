/** Where the client stands on the ladder of tiers. */
import type { ProgramInput } from '../../../../db/types/program-input.ts';
import type { Tier } from '../../../../db/types/program.ts';
import type { Facts } from '../facts/fact-types.ts';

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
  const grade = (code: string): number => facts.findings.get(code)?.grade ?? 3;
  const small = grade('small-writing') <= 2 || (grade('shrinking') <= 2 && facts.diagnoses.has('parkinson'));
  // A hand that learns anew has no size of its own yet.
  return (
    small && grade('hand-choice') >= 2 && ['closure', 'copying', 'crowding', 'tremor'].every((code) => grade(code) >= 2)
  );
};

/**
 * Tier of the next program: 0 until a pen trial is possible and seating is safe, 1 while a hand item is 0 or 1, then
 * by the words that a reader could read (under 75 % letters, or lines where only size is to blame; under 90 % copied
 * lines; else own words).
 * Where the client already stands on the ladder, only an accepted proposal moves the tier between 2 and 4.
 */
export function tierOf(input: ProgramInput, facts: Facts): Tier {
  const grade = (code: string): number => facts.findings.get(code)?.grade ?? 3;
  if (facts.penHeld === null || grade('seating') === 0) return 0;
  if (!facts.penHeld || handItems.some((code) => grade(code) <= 1)) return 1;
  const current = input.current?.tier ?? 0;
  if (current >= 2) return current;
  const read = facts.measures.get('legibility-copy') ?? facts.measures.get('legibility');
  if (read === undefined) return letterFindings.some((code) => grade(code) <= 1) || grade('tremor') <= 1 ? 2 : 3;
  if (read < (facts.thresholds.get('legibility-hold') ?? 75)) return sizeLimits(facts) ? 3 : 2;
  return read < (facts.thresholds.get('legibility-good') ?? 90) ? 3 : 4;
}
