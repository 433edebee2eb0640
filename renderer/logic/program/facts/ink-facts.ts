/** What pen recordings say to the rules: of the latest bout of each task without help, never of one that is unsure. */
import type { ClientRecord } from '../../../../db/types/record.ts';
import type { InkRecording, InkTold } from '../../../../db/types/sample.ts';
import { countedBouts } from '../../record/ink-values.ts';

type Measure = { code: string; value: number | null; unit: string };

/** A reliable value; null where there is none. */
function valueOf(told: InkTold, code: string): number | null {
  const row = told.measures.find((each) => each.code === code);
  return row?.reliable ? row.value : null;
}

/** A trend whose interval leaves zero out; 0 where it does not: measured, and nothing seen. Null where not told. */
function clearTrend(told: InkTold, code: string): number | null {
  const row = told.measures.find((each) => each.code === code);
  if (!row?.reliable || row.value === null || row.low === null || row.high === null) return null;
  return row.low * row.high > 0 ? row.value : 0;
}

/** A rhythm that was looked for and not found is 0; one that could not be looked for is not known. */
function rhythmOf({ tremor }: InkTold): number | null {
  if (tremor.reason === null) return tremor.amplitudeRmsMm;
  return tremor.reason === 'no-clear-peak' || tremor.reason === 'below-noise' ? 0 : null;
}

/** Measures under the codes of the rule table. Rhythm: of the hand that writes, the largest of its three tasks. */
export function inkMeasures(record: ClientRecord): Measure[] {
  const bouts = countedBouts(record).filter(({ recording }) => recording.cues === null);
  const hand = record.client.handNow;
  const latest = (...tasks: InkRecording['task'][]): InkTold | null =>
    bouts.findLast(({ recording }) => tasks.includes(recording.task) && (hand === null || recording.hand === hand))
      ?.recording.measured?.told ?? null;
  const [loops, writing, any] = [latest('loops'), latest('writing'), latest('writing', 'loops')];
  const rhythms = (['line', 'spiral', 'hold'] as const).flatMap((task) => latest(task) ?? []);
  const largest = rhythms.reduce<InkTold | null>(
    (most, each) => ((rhythmOf(each) ?? -1) > ((most && rhythmOf(most)) ?? -1) ? each : most),
    null,
  );
  return [
    { code: 'ink-size-decrement', value: loops && clearTrend(loops, 'size-decrement'), unit: '%/10 strokes' },
    { code: 'ink-stops', value: any && valueOf(any, 'stops'), unit: 'count' },
    { code: 'ink-lifts-per-word', value: writing && valueOf(writing, 'lifts-per-word'), unit: '1' },
    { code: 'ink-pressure-drift', value: any && clearTrend(any, 'pressure-drift'), unit: '%/min' },
    { code: 'ink-rhythm', value: largest && rhythmOf(largest), unit: 'mm' },
    { code: 'ink-rhythm-frequency', value: largest?.tremor.frequencyHz ?? null, unit: 'Hz' },
  ];
}
