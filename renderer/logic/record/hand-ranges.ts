/** How far a hand itself varies from page to page, beside every measure of a page. */
import { MEASURES } from '../../measure/index.ts';
import { latestMeasurements } from '../sample/measured/latest-measurements.ts';
import type { ClientRecord } from '../../../db/types/record.ts';
import type { Threshold } from '../../../db/types/rules.ts';
import type { MeasureValue, PageResult, Sample } from '../../../db/types/sample.ts';
import { changeLimits, familyOf, handInterval, handScaleOf, handSpread, knownHandSpread } from '../../change/index.ts';
import { isOfTask } from './measure-values.ts';

type Facts = Pick<ClientRecord, 'samples' | 'pageMeasurements'>;
type Thresholds = readonly Pick<Threshold, 'code' | 'value'>[];

/** Pages that may be repeats of each other: one visit, one family of tasks, the same hand, medicine state, cue, paper. */
function sessionOf({ visitId, task, conditions }: Sample): string {
  const { hand, doseState, cue, paper, instruction } = conditions;
  return JSON.stringify([visitId, familyOf(task.kind) ?? task.kind, hand, doseState, cue, paper, instruction]);
}

/**
 * The client's own repeats of one measure: values of the pages of each session, by one version of the method, in one
 * unit. A session of one page tells nothing of the spread and is left out. Of each page the latest measurement counts.
 */
export function ownRepeats(record: Facts, version: string): (code: string, unit: string) => number[][] {
  const latest = latestMeasurements(record.pageMeasurements);
  const samples = new Map(record.samples.map((sample) => [sample.id, sample]));
  const sessions = new Map<string, { sample: Sample; result: PageResult }[]>();
  for (const one of latest.values()) {
    const sample = samples.get(one.sampleId);
    if (!sample || one.version !== version || sample.task.kind === 'signature') continue;
    const key = sessionOf(sample);
    sessions.set(key, [...(sessions.get(key) ?? []), { sample, result: one.result }]);
  }
  const repeated = [...sessions.values()].filter((pages) => pages.length > 1);
  return (code, unit) =>
    repeated
      .map((pages) =>
        pages.flatMap(({ sample, result }) => {
          const found = result.measures.find((m) => m.code === code);
          return found && found.unit === unit && found.value !== null && isOfTask(sample.task.kind, code)
            ? [found.value]
            : [];
        }),
      )
      .filter((values) => values.length > 1);
}

/**
 * Measures with the interval of this hand beside that of this page.
 * @param repeats the client's own; none where only one page is known
 */
export function withHand<M extends Pick<MeasureValue, 'code' | 'value' | 'unit'>>(
  measures: readonly M[],
  repeats: (code: string, unit: string) => number[][],
  thresholds: Thresholds,
): (M & Required<Pick<MeasureValue, 'handLow' | 'handHigh' | 'handPages'>>)[] {
  const limits = changeLimits(thresholds);
  return measures.map((measure) => {
    const { code, value, unit } = measure;
    const own = repeats(code, unit);
    const spread = handSpread(knownHandSpread(thresholds, code), own, handScaleOf(unit), limits);
    const hand = spread && value !== null ? handInterval(value, spread) : null;
    const least = MEASURES.find((each) => each.code === code)?.least ?? -Infinity;
    return {
      ...measure,
      handLow: hand ? Math.max(least, hand.low) : null,
      handHigh: hand?.high ?? null,
      handPages: hand ? own.reduce((sum, values) => sum + values.length, 0) : 0,
    };
  });
}
