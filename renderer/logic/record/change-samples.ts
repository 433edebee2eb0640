/** A record's readings as the model of change takes them, and what the model says of a record. */
import { STEADY_LOSS } from '../../../db/types/items.ts';
import type { ClientRecord } from '../../../db/types/record.ts';
import type { InkRecording } from '../../../db/types/sample.ts';
import {
  examineChange,
  smallestChange,
  type ChangeExamination,
  type ReadSample,
  type RepeatPair,
} from '../../change/index.ts';
import { inkSurfaceOf } from './ink-values.ts';
import type { Limits } from '../rules/limits.ts';
import { viewOf } from '../readback/true-size.ts';
import type { Told } from '../texts/screens/en/screens-en.ts';
import { conditionDifferences, differencesSentence } from './condition-changes.ts';
import { occasionsOf, type Occasion } from './occasions.ts';
import { repeatPairs } from './repeat-pairs.ts';

export type ChangeFacts = Pick<ClientRecord, 'visits' | 'samples' | 'readings' | 'programs'> &
  Partial<Pick<ClientRecord, 'inkRecordings' | 'redFlags'>>;

/** Every reading of every sample by itself; the line on plain paper without cues is charted apart. */
export function changeSamples(occasions: readonly Occasion[], ink: readonly InkRecording[] = []): ReadSample[] {
  return occasions.flatMap(({ day, sample, legibility, probe }) =>
    probe || !legibility
      ? []
      : legibility.readings.map(({ reading, wordsRight, wordsIntended }) => ({
          day,
          words: wordsIntended,
          right: wordsRight,
          reader: reading.readerInitials.toLowerCase(),
          kind: reading.reader,
          task: sample.task.kind,
          cue: sample.conditions.cue,
          dose: sample.conditions.doseState,
          hand: sample.conditions.hand,
          surface: inkSurfaceOf(ink, sample.id),
          view: viewOf(reading),
          baseline: sample.baseline,
        })),
  );
}

export interface ChangeSpan {
  /** First and last day that count, YYYY-MM-DD. */
  from?: string;
  to?: string;
}

/** Repeat pairs that every question about this record rests on: the clinic's, or as long as they are unknown its own. */
export const pairsFor = (record: ChangeFacts, limits: Limits): readonly RepeatPair[] =>
  limits.repeatPairs ?? repeatPairs(record, limits);

/**
 * An explanation noted for a steady loss: no to its flag, in words. It covers the samples taken before it, and holds
 * back the flag alone.
 */
function lossExplained({ redFlags = [] }: ChangeFacts, occasions: readonly Occasion[]): boolean {
  const last = occasions.at(-1)?.sample.takenAt ?? '';
  return redFlags.some(
    ({ flag, present, note, at }) =>
      flag === STEADY_LOSS && !present && note.trim() !== '' && Date.parse(at) >= Date.parse(last),
  );
}

/** Asks the model about a record. */
export function changeOf(record: ChangeFacts, limits: Limits, span: ChangeSpan = {}): ChangeExamination {
  const { from, to } = span;
  const occasions = occasionsOf(record).filter(({ day }) => (!from || day >= from) && (!to || day <= to));
  return examineChange(
    {
      samples: changeSamples(occasions, record.inkRecordings),
      pairs: pairsFor(record, limits),
      explained: lossExplained(record, occasions),
    },
    limits.change,
  );
}

/**
 * The same with the retests since a day only: what a step is judged by. The start stays what it was.
 * @param since first day of the retests that count, YYYY-MM-DD
 */
export function changeSince(record: ChangeFacts, since: string, limits: Limits): ChangeExamination {
  const samples = changeSamples(occasionsOf(record), record.inkRecordings);
  const pairs = pairsFor(record, limits);
  const start = new Set(examineChange({ samples, pairs }, limits.change).before.map(({ day }) => day));
  const counted = samples.filter(({ day }) => day >= since || start.has(day));
  return examineChange({ samples: counted, pairs }, limits.change);
}

/** Other conditions that differ between the first and the last sample of the series: said beside the verdict, '' if none. */
export function otherConditions(
  record: ChangeFacts,
  { visits }: ChangeExamination,
  limits: Limits,
  words: Told['conditions'],
): string {
  const days = new Set(visits.map(({ day }) => day));
  const read = occasionsOf(record).filter(({ day, legibility, probe }) => legibility && !probe && days.has(day));
  const [first, last] = [read[0], read.at(-1)];
  return first && last && first !== last
    ? differencesSentence(conditionDifferences(first.sample, last.sample, limits, words), words)
    : '';
}

/**
 * Smallest change that would count, percentage points: of as many visits as there are before, and so many now.
 * @param now visits together
 * @returns null while nothing is compared
 */
export function smallestRealChange({ answer, before }: ChangeExamination, now: number, limits: Limits): number | null {
  if (answer.now === null || answer.perWords === null || answer.visitSd === null) return null;
  const question = { p: answer.now / 100, words: answer.perWords, n1: before.length, n2: now, sd: answer.visitSd };
  return smallestChange(question, limits.change).mdc95;
}
