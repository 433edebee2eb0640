/** Everything that a client's pen recordings tell, one value at a time; never mixed with what paper tells. */
import { latestOfPage } from '../sample/measured/latest-measurements.ts';
import type { ClientRecord } from '../../../db/types/record.ts';
import type { InkRecording, InkTold, Sample } from '../../../db/types/sample.ts';

/** One value of one bout. */
export interface InkValue {
  recording: InkRecording;
  sample: Sample;
  /** Calendar day of the visit, YYYY-MM-DD. */
  day: string;
  /** Code of the ink engine, `tremor-frequency`, `tremor-amplitude`, or `page-` and a code of the page engine. */
  code: string;
  value: number;
  unit: string;
  n: number;
  low: number | null;
  high: number | null;
  /** With its version, as `ink-3`. */
  method: string;
  /** Of the page drawn from the bout, not of the motion. */
  ofPage: boolean;
  /** False where the device scatters too much for it: shown with its reason, never compared. */
  reliable: boolean;
}

type Facts = Pick<ClientRecord, 'visits' | 'samples'> &
  Partial<Pick<ClientRecord, 'inkRecordings' | 'samplePages' | 'pageMeasurements'>>;

function toldValues(told: InkTold): Pick<InkValue, 'code' | 'value' | 'unit' | 'n' | 'low' | 'high' | 'reliable'>[] {
  const measures = told.measures.flatMap(({ code, value, unit, n, low, high, reliable }) =>
    value === null || !Number.isFinite(value) ? [] : [{ code, value, unit, n, low, high, reliable }],
  );
  const { frequencyHz, amplitudeRmsMm } = told.tremor;
  const rest = { n: 1, low: null, high: null, reliable: true };
  return [
    ...measures,
    ...(frequencyHz === null ? [] : [{ code: 'tremor-frequency', value: frequencyHz, unit: 'Hz', ...rest }]),
    ...(amplitudeRmsMm === null ? [] : [{ code: 'tremor-amplitude', value: amplitudeRmsMm, unit: 'mm', ...rest }]),
  ];
}

/** Bouts that count: finished, measured, not started over; oldest first. */
export function countedBouts(record: Facts): { recording: InkRecording; sample: Sample; day: string }[] {
  const dayOf = new Map(record.visits.map((visit) => [visit.id, visit.date]));
  const sampleOf = new Map(record.samples.map((sample) => [sample.id, sample]));
  return (record.inkRecordings ?? [])
    .flatMap((recording) => {
      const sample = sampleOf.get(recording.sampleId);
      if (!sample || recording.abandoned || !recording.measured || sample.task.kind === 'signature') return [];
      return [{ recording, sample, day: dayOf.get(recording.visitId) ?? recording.startedAt.slice(0, 10) }];
    })
    .sort((a, b) => (a.recording.startedAt < b.recording.startedAt ? -1 : 1));
}

/** Every value of every bout that counts, those of the page drawn from it included; oldest first. */
export function inkValues(record: Facts): InkValue[] {
  return countedBouts(record).flatMap((bout) => {
    const { method, told } = bout.recording.measured!;
    const pages = (record.samplePages ?? []).filter((page) => page.ink?.recordingId === bout.recording.id);
    const drawn = pages.flatMap((page) => {
      const latest = latestOfPage(record.pageMeasurements ?? [], page.id);
      return (latest?.result.measures ?? []).flatMap(({ code, value, unit, n, low, high }): InkValue[] =>
        value === null || !Number.isFinite(value)
          ? []
          : [
              {
                ...bout,
                code: `page-${code}`,
                value,
                unit,
                n,
                low,
                high,
                method: latest!.version,
                reliable: true,
                ofPage: true,
              },
            ],
      );
    });
    return [...toldValues(told).map((each): InkValue => ({ ...bout, ...each, method, ofPage: false })), ...drawn];
  });
}

/** What must be the same for two bouts to stand in one series. */
export const inkSeriesKey = ({ recording, sample }: Pick<InkValue, 'recording' | 'sample'>): string =>
  JSON.stringify([
    recording.task,
    recording.hand,
    recording.surface,
    recording.device.trim().toLowerCase(),
    ['on', 'off'].includes(sample.conditions.doseState ?? '') ? sample.conditions.doseState : '',
  ]);

/** Surface and device of a sample written with a pen in the window, for the change of words; null for paper. */
export function inkSurfaceOf(recordings: readonly InkRecording[], sampleId: string): string | null {
  const first = recordings.find((each) => each.sampleId === sampleId && each.task === 'writing' && !each.abandoned);
  return first ? `${first.surface}, ${first.device.trim().toLowerCase()}` : null;
}
