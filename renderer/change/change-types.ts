/** What the model is asked, and what it answers. */

/** A count of words; `right` lies between 0 and `words`. */
export interface Count {
  right: number;
  words: number;
}

/** One reading of one sample. Conditions that were not noted are left out, null or ''. */
export interface ReadSample extends Count {
  /** Calendar day, YYYY-MM-DD. */
  day: string;
  reader?: string | null;
  /** unfamiliar, family or therapist; unfamiliar when left out. */
  kind?: string | null;
  /** A task family (copy, own, digits) or a kind of task. */
  task: string;
  cue?: string | null;
  dose?: string | null;
  hand?: string | null;
  /** What was written on; paper when left out. For ink: surface and device. */
  surface?: string | null;
  /** Enlargement at which it was read; true-size when left out. */
  view?: string | null;
  baseline?: boolean | null;
}

/** Two samples of one client within days, from any client of the clinic. */
export interface RepeatPair {
  first: Count;
  second: Count;
  /** Family or kind of task; copy when left out. */
  task?: string | null;
  /** Kind of reader; counted for every kind when left out. */
  kind?: string | null;
}

/** What makes two visits comparable. */
export const CONDITIONS = ['task', 'cue', 'dose', 'hand', 'surface', 'view'] as const;
export type ConditionName = (typeof CONDITIONS)[number];

export type Verdict = 'nothing' | 'not-comparable' | 'cannot-tell' | 'up' | 'down' | 'steady';
export type Direction = 'up' | 'down';
export type ChangeNote =
  'break' | 'one-visit' | 'comparable-part' | 'readers-change' | 'readers-differ' | 'all-right' | 'none-right';
export type LossSign = 'ask-repeat' | 'flag';

/** Chances of the same posterior, 0 to 1. */
export interface ChangeChances {
  /** That there is more now than before. */
  up: number;
  /** That the change is smaller than what counts as steady. */
  steady: number;
  /** Of a gain, of a loss, of so many points (`ChangeLimits.provenPoints`) or more. */
  gain10: number;
  loss10: number;
  /** That the level now is high enough to go on (`ChangeLimits.readyLevel`). */
  now85: number;
}

/** Percentage points. */
export interface ChangeInterval {
  low: number;
  mid: number;
  high: number;
}

/** The one answer to "has it changed?". */
export interface ChangeVerdict {
  verdict: Verdict;
  /** Of the larger side; with steady: of steady; null where nothing was compared. */
  probability: number | null;
  change: ChangeInterval | null;
  /** Levels, percent of words right. */
  before: number | null;
  now: number | null;
  leaning: Direction | null;
  /** With up and down: words of `perWords` that the change has at least, with 9 of 10 chances. */
  atLeastWords: number | null;
  /** Lower median of the words of a visit. */
  perWords: number | null;
  /** Spread from visit to visit, logit. */
  visitSd: number | null;
  /** Visits compared, and visits left out as not comparable. */
  compared: number;
  leftOut: number;
  /** Conditions that are not the same in all visits. */
  differs: ConditionName[];
  notes: ChangeNote[];
  /** Further visits like the latest that would tell; null when told already, or when more would hardly help. */
  moreSamples: number | null;
  /** First day of the series. */
  sinceDay: string | null;
  /** Chance of up at least as high as a proposal to go on needs. */
  better: boolean;
  loss: LossSign | null;
  chances: ChangeChances | null;
}
