/** The client's facts as rules see them (made by program-facts.ts). */
import type { Grade } from '../../../../db/types/common.ts';
import type { Tier } from '../../../../db/types/program.ts';
import type { Thresholds } from '../../../../db/types/rule-table/threshold.ts';

/** What is known of a finding; a code that the map lacks was not asked. */
export type KnownFinding =
  | {
      state: 'graded';
      /** Lowest grade seen. */
      grade: Grade;
      /** False when a part of it was not tested. */
      whole: boolean;
      source: string;
    }
  | {
      state: 'not-tested';
      /** '' = none was given. */
      reason: string;
      source: string;
    };

export interface Facts {
  hand: 'right' | 'left' | null;
  findings: ReadonlyMap<string, KnownFinding>;
  details: ReadonlyMap<string, ReadonlySet<string>>;
  measures: ReadonlyMap<string, number>;
  /** Of the hand that writes and of the whole body. */
  cautions: ReadonlySet<string>;
  /** Red flags named, open or reviewed. */
  flags: ReadonlySet<string>;
  /** Caution -> words that come with it, said where the version that it brings says {words}. */
  cautionWords: ReadonlyMap<string, readonly string[]>;
  otherHand: { cautions: ReadonlySet<string>; grades: ReadonlyMap<string, Grade> };
  /** Kinds and the groups they belong to. */
  diagnoses: ReadonlySet<string>;
  /** Occasion -> the client's own words. */
  occasions: ReadonlyMap<string, readonly string[]>;
  /** Side of the page that is missed. */
  pageSide: 'left' | 'right' | 'none';
  /** True = a pen can be held and may be used, false = not, null = grasp was not tested. */
  penHeld: boolean | null;
  /** Set once the tier is known. */
  tier: Tier;
  thresholds: Thresholds;
  /** Letters that readers took for others most often, most frequent first. */
  lettersMisread: readonly string[];
}
