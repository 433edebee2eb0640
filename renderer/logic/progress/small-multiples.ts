import type { Telling } from '../texts/screens/telling.ts';
import type { ClientRecord } from '../../../db/types/record.ts';
import { MEASURES } from '../../measure/index.ts';
import { ordinaryRange } from '../sample/measured/drawn-measures.ts';
import { measureName, showMeasure } from '../sample/measured/show-measure.ts';
import { handScaleOf } from '../../change/index.ts';
import { sampleValues } from '../record/measure-values.ts';
import type { SeriesPoint } from './series.ts';

/** Which way a measure should move; 'own' = compare with this client's goal only, no direction is better by itself. */
type Better = 'higher' | 'lower' | 'own';

const betterOf = { more: 'higher', less: 'lower', none: 'own' } as const;
const measureOf = new Map(MEASURES.map((measure) => [measure.code, measure]));

export interface SmallMultiple {
  code: string;
  label: string;
  unit: string;
  better: Better;
  /** What a reader should know besides name and direction (common practice, no source). */
  note: string;
  points: SeriesPoint[];
  /**
   * Where each point lies, in steps of this hand's own spread from the first value: 2 steps = the range in which this
   * hand lies from page to page, 95 of 100. Null where that spread is not known.
   */
  steps: number[] | null;
}

/** Steps of half the half-range of the first value that has one, on the scale on which the measure is compared. */
function stepsOf(unit: string, points: readonly SeriesPoint[]): number[] | null {
  const scale = (value: number): number => (handScaleOf(unit) === 'ratio' ? Math.log(value) : value);
  const known = points.find((point) => point.low !== null && point.high !== null);
  if (!known) return null;
  const step = (scale(known.high!) - scale(known.low!)) / 4;
  const steps = points.map((point) => (scale(point.value) - scale(points[0]!.value)) / step);
  return step > 0 && steps.every(Number.isFinite) ? steps : null;
}

/** Steps on a chart of 4 up and 4 down whose whole height is where ordinary writing lies; null without such a range. */
export function ordinarySteps(code: string, points: readonly SeriesPoint[]): number[] | null {
  const range = ordinaryRange(code);
  if (!range) return null;
  const [low, high] = range;
  return points.map(({ value }) => ((value - low) / (high - low)) * 8 - 4);
}

type Facts = Pick<ClientRecord, 'visits' | 'samples' | 'pageMeasurements'> & Partial<Pick<ClientRecord, 'samplePages'>>;

/**
 * One small chart for each measure that was ever computed or typed, oldest value first. Low and high are those of this
 * hand, from page to page: the page's own interval says nothing about change.
 */
export function smallMultiples(record: Facts, telling: Telling): SmallMultiple[] {
  const words = telling.told.measures;
  const found = new Map<string, SmallMultiple>();
  for (const { sample, day, code, unit, value, handLow, handHigh } of sampleValues(record)) {
    const known = found.get(code) ?? {
      code,
      label: measureName(code, words),
      unit,
      better: betterOf[measureOf.get(code)?.direction ?? 'none'],
      note: (words.notes as Readonly<Record<string, string>>)[code] ?? '',
      points: [],
      steps: null,
    };
    // A measure keeps its unit over time; a value in another one is not drawn on the same scale.
    if (known.unit !== unit) continue;
    const said = showMeasure({ value, unit }, telling);
    known.points.push({ at: Date.parse(sample.takenAt), day, value, low: handLow, high: handHigh, words: said });
    found.set(code, known);
  }
  return [...found.values()].map((one) => ({ ...one, steps: stepsOf(one.unit, one.points) }));
}
