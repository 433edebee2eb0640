/** Measures in the unit that thresholds use. A measure in a unit that is not understood is left out, never guessed. */
import type { ProgramInput } from '../../../../db/types/program-input.ts';
import type { RuleTable } from '../../../../db/types/rules.ts';
import { byCode } from '../../../../db/types/rule-table/once-for.ts';
import { changeLimits, fatigueOnset } from '../../../change/index.ts';

const isDigit = (text: string): boolean => /^[0-9]$/.test(text);

/** Value in the table's own unit, or null where it cannot be known. Shares of 1 become percent. */
function inTableUnit(
  code: string,
  value: number,
  unit: string,
  table: string,
  xHeightMm: number | undefined,
): number | null {
  if (unit === table) return value;
  if (table === '%' && unit === '1') return value * 100;
  if (table === 'xh' && unit === 'mm') return xHeightMm === undefined ? null : value / xHeightMm;
  // Written another way, the same unit: 1/min, ln per word, points.
  return unit === '%' || unit === 'mm' ? null : value;
}

/** One tired afternoon must not shorten the dose: several bouts are looked at together. */
function onsetOf(bouts: ProgramInput['bouts'], rules: RuleTable): number | null {
  const limits = changeLimits(rules.thresholds);
  return bouts.length < limits.onsetBouts ? null : fatigueOnset(bouts, limits).onsetLine;
}

/** Measures by code, with the counts of confused letters and digits and the line where quality falls. */
export function normalMeasures(input: ProgramInput, rules: RuleTable): Map<string, number> {
  const known = byCode(rules.vocabulary.measures);
  const xHeight = input.measures.find((each) => each.code === 'x-height' && each.unit === 'mm')?.value ?? undefined;
  const measures = new Map<string, number>();
  for (const { code, value, unit } of input.measures) {
    const units = known.get(code)?.units;
    const table = units?.[0];
    if (value === null || table === undefined || !units?.includes(unit)) continue;
    const normal = inTableUnit(code, value, unit, table, xHeight);
    if (normal !== null) measures.set(code, normal);
  }
  if (input.confusions.length > 0) {
    const count = (digits: boolean): number =>
      input.confusions
        .filter((each) => isDigit(each.intended) === digits && each.intended !== each.read)
        .reduce((sum, each) => sum + each.count, 0);
    measures.set('confusion-count', count(false));
    measures.set('digit-confusion-count', count(true));
  }
  const onset = onsetOf(input.bouts, rules);
  if (onset !== null) measures.set('onset-line', onset);
  return measures;
}
