import type { ClientRecord } from '../../../db/types/record.ts';
import type { Sample } from '../../../db/types/sample.ts';
import { inkSurfaceOf } from './ink-values.ts';
import { unread } from '../sample/next-text.ts';
import { sampleLegibility, type SampleLegibility } from './sample-legibility.ts';

/** One sample with what readers made of it. */
export interface Occasion {
  sample: Sample;
  /** Calendar day of the visit, YYYY-MM-DD. */
  day: string;
  /** Null while nobody has read it. */
  legibility: SampleLegibility | null;
  /** One uncued line on plain paper, charted apart. */
  probe: boolean;
  /** Surface and device of a sample written with a pen in the window; null for paper. */
  surface: string | null;
}

type Facts = Pick<ClientRecord, 'visits' | 'samples' | 'readings'> & Partial<Pick<ClientRecord, 'inkRecordings'>>;

/** Samples in order of time with their legibility. Readings whose sample is gone count for nothing. */
export function occasionsOf(record: Facts): Occasion[] {
  const dayOf = new Map(record.visits.map((visit) => [visit.id, visit.date]));
  const time = (sample: Sample) => Date.parse(sample.takenAt) || 0;
  return [...record.samples]
    .filter((sample) => !unread.has(sample.task.kind))
    .sort((a, b) => time(a) - time(b))
    .map((sample) => ({
      sample,
      day: dayOf.get(sample.visitId) ?? sample.takenAt.slice(0, 10),
      legibility: sampleLegibility(
        record.readings.filter((reading) => reading.sampleId === sample.id),
        sample.task.spellings,
      ),
      probe: sample.task.kind === 'transfer-probe',
      surface: inkSurfaceOf(record.inkRecordings ?? [], sample.id),
    }))
    .sort((a, b) => (a.day < b.day ? -1 : a.day > b.day ? 1 : time(a.sample) - time(b.sample)));
}

/** Readings whose sample was removed: named on the screen, counted nowhere. */
export function orphanReadings(record: Facts): number {
  const known = new Set(record.samples.map((sample) => sample.id));
  return record.readings.filter((reading) => !known.has(reading.sampleId)).length;
}
