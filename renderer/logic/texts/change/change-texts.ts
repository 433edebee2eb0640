/** Words of the verdict about change: one set a language. */
import type { ChangeNote, ConditionName, Direction } from '../../../change/index.ts';

/** "12" of "24", both rounded to whole words. */
interface WordsNow {
  from: number;
  to: number;
  of: number;
}

export interface ChangeTexts {
  headline: {
    nothing: string;
    'not-comparable': string;
    'cannot-tell': string;
    steady: string;
    sure: Record<Direction, string>;
    probable: Record<Direction, string>;
  };
  /** "Eight visits". */
  visits: (n: number) => string;
  nothing: string;
  oneVisit: (right: string, of: number, low: number, high: number) => string;
  afterBreak: string;
  sinceBreak: (day: string) => string;
  onlyBaseline: string;
  /** With up and down. */
  moved: (direction: Direction, words: WordsNow, chances: string, least: number | null, leastChances: string) => string;
  steady: (words: WordsNow, largest: number, chances: string) => string;
  unclear: (words: WordsNow, low: number, high: number) => string;
  probably: (direction: Direction, chances: string) => string;
  more: (samples: number) => string;
  moreHardly: string;
  notes: Partial<Record<ChangeNote, string>>;
  allRight: (visits: number) => string;
  noneRight: (visits: number) => string;
  notComparable: (first: string, later: string) => string;
  /** Conditions of visits, as they are joined in `notComparable`. */
  condition: (name: ConditionName, value: string) => string;
  /** How a visit's task is named beside a count. */
  visitsOf: (n: number, conditions: string) => string;
  partly: (compared: string, leftOut: string) => string;
  /** Nobody else has read. */
  readByTherapist: string;
  askRepeat: string;
  chances: (part: number, of: number) => string;
  and: (items: readonly string[]) => string;
}
