import type { ClientRecord } from '../../db/types/record.ts';
import type { SeriesPoint } from './series.ts';

/** Which way a measure should move; 'own' = compare with this client's goal only, no direction is better by itself. */
export type Better = 'higher' | 'lower' | 'own';

export interface MeasureMeaning {
  label: string;
  better: Better;
  note: string;
}

/**
 * Common practice, no source: which direction helps reading. Size and slant are the client's own; smoothness that
 * worsens while small writing grows is no setback (Nackaerts 2017, PLoS One).
 */
export const measureMeanings: Readonly<Record<string, MeasureMeaning>> = {
  'x-height': { label: 'Height of small letters', better: 'own', note: 'larger helps where writing had become small' },
  'x-height-cv': { label: 'Unevenness of letter size', better: 'lower', note: '' },
  'ascender-ratio': { label: 'Tall letters to small letters', better: 'own', note: 'near 2 reads well' },
  'descender-ratio': { label: 'Hanging letters to small letters', better: 'own', note: 'near 1 reads well' },
  'line-decrement': { label: 'Shrinking along the line, per word', better: 'own', note: 'nearer 0 is steadier' },
  'line-decrement-letter': {
    label: 'Shrinking along the line, per letter',
    better: 'own',
    note: 'nearer 0 is steadier',
  },
  'page-decrement': { label: 'Shrinking down the page', better: 'own', note: 'nearer 0 is steadier' },
  'word-gap': { label: 'Gap between words', better: 'own', note: 'about one letter width reads well' },
  'letter-gap': { label: 'Gap between letters', better: 'own', note: '' },
  'word-gap-cv': { label: 'Unevenness of word gaps', better: 'lower', note: '' },
  'gap-ratio': { label: 'Word gaps to letter gaps', better: 'higher', note: 'from 3 on, words stand apart' },
  'closed-loops': { label: 'Closed letters', better: 'higher', note: '' },
  slant: { label: 'Slant', better: 'own', note: 'evenness counts, not the angle' },
  'slant-sd': { label: 'Unevenness of slant', better: 'lower', note: '' },
  'stroke-width': { label: 'Stroke width', better: 'own', note: 'depends on the pen' },
  'baseline-angle': { label: 'Rise or fall of the line', better: 'own', note: 'nearer 0 is level' },
  'baseline-rms': { label: 'Waviness of the line', better: 'lower', note: '' },
};

export interface SmallMultiple {
  code: string;
  label: string;
  unit: string;
  better: Better;
  note: string;
  points: SeriesPoint[];
}

type Facts = Pick<ClientRecord, 'visits' | 'samples' | 'pageMeasurements'>;

/** One small chart for each measure that was ever computed, oldest value first; several pages of a sample averaged. */
export function smallMultiples(record: Facts, unscored: ReadonlySet<string> = new Set()): SmallMultiple[] {
  const samples = new Map(record.samples.map((sample) => [sample.id, sample]));
  const dayOf = new Map(record.visits.map((visit) => [visit.id, visit.date]));
  const values = new Map<string, { unit: string; bySample: Map<string, number[]> }>();
  for (const page of record.pageMeasurements) {
    if (!samples.has(page.sampleId) || unscored.has(page.sampleId)) continue;
    for (const { code, value, unit } of page.result.measures) {
      if (value === null || !Number.isFinite(value)) continue;
      const known = values.get(code) ?? { unit, bySample: new Map<string, number[]>() };
      known.bySample.set(page.sampleId, [...(known.bySample.get(page.sampleId) ?? []), value]);
      values.set(code, known);
    }
  }
  return [...values].map(([code, { unit, bySample }]) => {
    const meaning = measureMeanings[code] ?? { label: code, better: 'own' as const, note: '' };
    const points = [...bySample].map(([sampleId, list]): SeriesPoint => {
      const sample = samples.get(sampleId)!;
      const value = list.reduce((sum, v) => sum + v, 0) / list.length;
      const day = dayOf.get(sample.visitId) ?? sample.takenAt.slice(0, 10);
      return {
        at: Date.parse(sample.takenAt),
        day,
        value,
        low: null,
        high: null,
        words: `${showNumber(value)} ${unitWords(unit)}`,
      };
    });
    return { code, unit, ...meaning, points: points.sort((a, b) => a.at - b.at) };
  });
}

/** Three digits that count, without a tail of zeros. */
export const showNumber = (value: number): string => String(Number(value.toPrecision(3)));

/** Units as shown on the screen. */
export function unitWords(unit: string): string {
  const known: Record<string, string> = { '1': '', deg: '°', xh: 'letter heights', count: '' };
  return known[unit] ?? unit;
}
