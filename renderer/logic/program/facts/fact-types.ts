/** The client's facts as rules see them (made by program-facts.ts). */
import type { Grade } from '../../../../db/types/common.ts';

export interface KnownFinding {
  /** Lowest grade seen; null = not tested. */
  grade: Grade | null;
  /** False when any part of it was not tested. */
  tested: boolean;
  source: string;
}

export interface Facts {
  hand: 'right' | 'left' | null;
  findings: ReadonlyMap<string, KnownFinding>;
  details: ReadonlyMap<string, ReadonlySet<string>>;
  measures: ReadonlyMap<string, number>;
  cautions: ReadonlySet<string>;
  /** Kinds and the groups they belong to. */
  diagnoses: ReadonlySet<string>;
  /** True = a pen can be held, false = it cannot, null = grasp was not tested. */
  penHeld: boolean | null;
  /** Set once the tier is known. */
  tier: 0 | 1 | 2 | 3 | 4;
  thresholds: ReadonlyMap<string, number>;
}
