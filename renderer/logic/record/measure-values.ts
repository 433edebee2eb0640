import { latestMeasurements } from '../sample/measured/latest-measurements.ts';
import { median } from '../../statistics/order-statistics.ts';
import type { ClientRecord } from '../../../db/types/record.ts';
import type { Sample, TaskKind } from '../../../db/types/sample.ts';

/** One value of one measure of one sample, with what stands behind it. */
export interface SampleValue {
  sample: Sample;
  /** Calendar day of the visit, YYYY-MM-DD. */
  day: string;
  code: string;
  value: number;
  unit: string;
  /** How many readings it rests on. */
  n: number;
  /** This page: what the ruler leaves open. */
  low: number | null;
  high: number | null;
  /** This hand: what it varies from page to page; what is compared over time uses this one. */
  handLow: number | null;
  handHigh: number | null;
  method: string;
  /** Version of the method; '' for readings typed from a ruler. */
  version: string;
  source: 'page' | 'ruler';
  /** The therapist changed lines, words or letters by hand. */
  corrected: boolean;
  /** When it was measured or typed, ISO 8601. */
  at: string;
}

type Facts = Pick<ClientRecord, 'visits' | 'samples' | 'pageMeasurements'> & Partial<Pick<ClientRecord, 'samplePages'>>;

/** Typed readings are millimeters of paper (the ruler path), whatever their code. */
const RULER_UNIT = 'mm';

/**
 * Every value of every sample, oldest sample first: of each page the latest measurement, several pages averaged
 * (then without an interval), and the medians of ruler readings. Values that are not numbers are left out, as is
 * whatever belongs to a sample that was removed. Signatures are never measured against other writing, and pages drawn
 * from pen recordings (ink-values.ts) never against paper.
 */
export function sampleValues(record: Facts): SampleValue[] {
  const dayOf = new Map(record.visits.map((visit) => [visit.id, visit.date]));
  const latest = latestMeasurements(record.pageMeasurements);
  const drawn = new Set((record.samplePages ?? []).flatMap(({ id, ink }) => (ink ? [id] : [])));
  return record.samples
    .filter((sample) => sample.task.kind !== 'signature')
    .sort((a, b) => Date.parse(a.takenAt) - Date.parse(b.takenAt))
    .flatMap((sample) => {
      const day = dayOf.get(sample.visitId) ?? sample.takenAt.slice(0, 10);
      const pages = [...latest.values()].filter((page) => page.sampleId === sample.id && !drawn.has(page.pageId));
      return [...pageValues(sample, day, pages), ...rulerValues(sample, day)];
    });
}

/** A row of one letter tells its own shrinking and nothing else; of other tasks that number says little. */
export function isOfTask(kind: TaskKind, measure: string): boolean {
  return (kind === 'repeated-letter') === (measure === 'first-last-five');
}

function pageValues(sample: Sample, day: string, pages: readonly ClientRecord['pageMeasurements'][number][]) {
  const found = new Map<string, SampleValue[]>();
  for (const page of pages) {
    for (const m of page.result.measures) {
      if (m.value === null || !Number.isFinite(m.value) || !isOfTask(sample.task.kind, m.code)) continue;
      const value: SampleValue = {
        sample,
        day,
        code: m.code,
        value: m.value,
        unit: m.unit,
        n: m.n,
        low: m.low,
        high: m.high,
        handLow: m.handLow ?? null,
        handHigh: m.handHigh ?? null,
        method: m.method,
        version: page.version,
        source: 'page',
        corrected: page.corrections.length > 0,
        at: page.at,
      };
      found.set(m.code, [...(found.get(m.code) ?? []), value]);
    }
  }
  return [...found.values()].map((list): SampleValue => {
    const [first] = list as [SampleValue];
    if (list.length === 1) return first;
    return {
      ...first,
      value: list.reduce((sum, one) => sum + one.value, 0) / list.length,
      n: list.reduce((sum, one) => sum + one.n, 0),
      low: null,
      high: null,
      // The mean of several pages varies less than each: no narrower range is claimed.
      handLow: meanOf(list.map((one) => one.handLow)),
      handHigh: meanOf(list.map((one) => one.handHigh)),
      corrected: list.some((one) => one.corrected),
    };
  });
}

/** Null where one is unknown. */
function meanOf(values: readonly (number | null)[]): number | null {
  const known = values.filter((value) => value !== null);
  return known.length < values.length ? null : known.reduce((a, b) => a + b, 0) / known.length;
}

const rulerValues = (sample: Sample, day: string): SampleValue[] =>
  Object.entries(sample.typed).flatMap(([code, readings]) =>
    readings.length === 0
      ? []
      : [
          {
            sample,
            day,
            code,
            value: median(readings)!,
            unit: RULER_UNIT,
            n: readings.length,
            low: null,
            high: null,
            handLow: null,
            handHigh: null,
            method: 'median of readings from a ruler, typed by hand',
            version: '',
            source: 'ruler',
            corrected: false,
            at: sample.at,
          },
        ],
  );
