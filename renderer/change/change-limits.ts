/** The model's numbers: rows of the rule table, each with its source. Nothing here has a value of its own. */
import { onceFor } from '../../db/types/rule-table/once-for.ts';
import { threshold, thresholdsOf } from '../../db/types/rule-table/threshold.ts';
import type { Threshold } from '../../db/types/rules.ts';

/** Code of each number's row. Chances and shares 0 to 1, spreads on the logit scale, points of words right. */
const codes = {
  /** Chance from which up or down is said, and from which it is called probable. */
  sure: 'change-sure',
  leaning: 'change-leaning',
  /** Less than so many points counts as steady, from this chance. */
  steadyPoints: 'change-steady-points',
  steadyChance: 'change-steady-chance',
  /** Share of the posterior beyond each end of the interval, and the chance behind "at least so many words". */
  intervalTail: 'change-interval-tail',
  atLeastChance: 'change-at-least-chance',
  /** A longer break starts a new series, days. */
  breakDays: 'progress-break-days',
  moreSamplesMost: 'more-samples-most',
  /** Weight that a later visit keeps for each visit after it. */
  decay: 'change-decay',
  /** Leniency of one reader; a clinic's usual pair, how clinics and clients differ around it; visits against pairs. */
  readerSpread: 'change-reader-spread',
  pairSpread: 'change-pair-spread',
  betweenClinics: 'change-between-clinics',
  withinClinic: 'change-within-clinic',
  visitsApart: 'change-visits-apart',
  /** Steady loss. */
  lossAsk: 'loss-ask-chance',
  lossFlagLast: 'loss-flag-last-two',
  lossFlagTwice: 'loss-flag-twice',
  /** Proposals. */
  betterChance: 'step-better-chance',
  provenPoints: 'step-proven-points',
  backChance: 'step-back-chance',
  readyLevel: 'step-ready-level',
  readyChance: 'step-ready-chance',
  readyRetests: 'step-ready-retests',
  plateauChance: 'plateau-chance',
  plateauRetests: 'plateau-retests',
  plateauDays: 'plateau-days',
  /** Fatigue onset: spread of a line, and what the statistic must reach for 4 to 10 lines. */
  lineSpread: 'onset-line-spread',
  onset4: 'onset-least-4',
  onset5: 'onset-least-5',
  onset6: 'onset-least-6',
  onset7: 'onset-least-7',
  onset8: 'onset-least-8',
  onset9: 'onset-least-9',
  onset10: 'onset-least-10',
  onsetBouts: 'onset-bouts',
  /** Page and ink measures: pages that the figure of other writers counts for, chance, own repeats without a figure. */
  knownPages: 'hand-known-pages',
  handSure: 'hand-sure',
  handRepeats: 'hand-repeats',
} as const;

export type ChangeLimits = Readonly<Record<keyof typeof codes, number>>;

/**
 * Reads the model's numbers from the thresholds in force.
 * @throws RuleTableError naming a threshold that the table lacks
 */
export const changeLimits = onceFor((thresholds: readonly Pick<Threshold, 'code' | 'value'>[]): ChangeLimits => {
  const values = thresholdsOf(thresholds);
  const entries = Object.entries(codes).map(([name, code]) => [name, threshold(values, code)] as const);
  return Object.fromEntries(entries) as ChangeLimits;
});

/**
 * Standard deviation between pages of ordinary writers, on the measure's scale (relative, or in its unit).
 * @returns null where no figure is known
 */
export function knownHandSpread(
  thresholds: readonly Pick<Threshold, 'code' | 'value'>[],
  measure: string,
): number | null {
  return thresholds.find((row) => row.code === `hand-sd-${measure}`)?.value ?? null;
}
