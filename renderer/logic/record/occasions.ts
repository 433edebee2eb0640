import type { ClientRecord } from '../../../db/types/record.ts';
import type { Sample } from '../../../db/types/sample.ts';
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
}

type Facts = Pick<ClientRecord, 'visits' | 'samples' | 'readings'>;

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
    }))
    .sort((a, b) => (a.day < b.day ? -1 : a.day > b.day ? 1 : time(a.sample) - time(b.sample)));
}

/** Readings whose sample was removed: named on the screen, counted nowhere. */
export function orphanReadings(record: Facts): number {
  const known = new Set(record.samples.map((sample) => sample.id));
  return record.readings.filter((reading) => !known.has(reading.sampleId)).length;
}
