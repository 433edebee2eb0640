/** Numbers of the clinical notes, each with the place where it is written: what the threshold table has to say. */
import { z } from 'zod';
import type { RuleTable } from '../../../../db/types/rules.ts';
import { threshold } from '../../../../db/types/rule-table/threshold.ts';

export const ThresholdCase = z.strictObject({ code: z.string(), value: z.number(), source: z.string().min(3) });
export type ThresholdCase = z.infer<typeof ThresholdCase>;

export function wrongWithThreshold({ code, value }: ThresholdCase, rules: Pick<RuleTable, 'thresholds'>): string[] {
  const has = threshold(rules.thresholds, code);
  return has === value ? [] : [`${code} is ${has}, the notes say ${value}`];
}
