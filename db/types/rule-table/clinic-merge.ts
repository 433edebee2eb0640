import type { ClinicRules, RuleTable } from '../rules.ts';

/**
 * The shipped table with the clinic's rows laid over it: a clinic's item or rule of the same name covers the shipped
 * one. Vetoes, red flags and cautions cannot be changed by a clinic file.
 */
export function mergeClinicRules(shipped: RuleTable, clinic: ClinicRules | null): RuleTable {
  if (!clinic) return shipped;
  const own = new Set(clinic.items.map((each) => each.code));
  const shippedItems = new Map(shipped.items.map((each) => [each.code, each]));
  const ownRules = new Set(clinic.rules.map((each) => each.id));
  const off = new Set(clinic.off);
  return {
    ...shipped,
    version: `${shipped.version}+clinic.${clinic.revision}`,
    items: [
      ...shipped.items.filter((each) => !own.has(each.code)),
      ...clinic.items.map((each) => keepSafety(each, shippedItems.get(each.code))),
    ],
    rules: [...shipped.rules.filter((each) => !ownRules.has(each.id) && !off.has(each.id)), ...clinic.rules],
    thresholds: shipped.thresholds.map((each) => {
      const value = clinic.thresholds[each.code];
      return value === undefined ? each : { ...each, value, shipped: each.value, source: 'clinic' as const };
    }),
  };
}

/** A clinic may reword a shipped item, never strip it of what vetoes and cautions hang on. */
function keepSafety(own: RuleTable['items'][number], shipped?: RuleTable['items'][number]): RuleTable['items'][number] {
  if (!shipped) return own;
  const both = <T>(a: readonly T[], b: readonly T[]): T[] => [...new Set([...a, ...b])];
  return {
    ...own,
    kind: shipped.kind,
    hazards: both(shipped.hazards, own.hazards),
    dependsOn: both(shipped.dependsOn, own.dependsOn),
    cautions: both(shipped.cautions, own.cautions),
  };
}
