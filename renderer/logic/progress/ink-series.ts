/** Pen motion over time: one series for each measure, task, hand, surface, device and dose state; judged by the change model. */
import { smallFirst } from '../texts/en.ts';
import { threeDigits } from '../texts/decimals.ts';
import type { ClientRecord } from '../../../db/types/record.ts';
import { mean } from '../../statistics/order-statistics.ts';
import { handChange, handScaleOf, handSpread, type ChangeLimits } from '../../change/index.ts';
import { inkSeriesKey, inkValues, type InkValue } from '../record/ink-values.ts';
import { inkBetter, inkMeasureName } from '../sample/ink-names.ts';
import type { Telling } from '../texts/screens/telling.ts';
import { measureName } from '../sample/measured/show-measure.ts';
import type { SmallMultiple } from './small-multiples.ts';

interface InkSeries extends SmallMultiple {
  /** Whether it has changed, in a sentence. */
  verdict: string;
}

/** All series of one task, hand, surface and device. */
export interface InkSeriesGroup {
  key: string;
  title: string;
  series: InkSeries[];
}

/** What is charted of each task; everything else stands with the bout and in exports. */
const CHARTED: Readonly<Record<InkValue['recording']['task'], readonly string[]>> = {
  writing: [
    'letters-per-minute',
    'air-share',
    'lifts-per-word',
    'stops',
    'pauses',
    'stroke-height',
    'velocity-peaks',
    'pressure-mean',
    'pressure-drift',
    'page-x-height',
    'page-line-decrement',
    'page-gap-ratio',
  ],
  loops: ['size-decrement', 'speed-decrement', 'stroke-height', 'stroke-height-cv', 'stops', 'pressure-drift'],
  line: ['tremor-frequency', 'tremor-amplitude', 'speed-mean'],
  spiral: ['tremor-frequency', 'tremor-amplitude', 'speed-mean'],
  hold: ['tremor-frequency', 'tremor-amplitude'],
};

const better = { more: 'higher', less: 'lower', none: 'own' } as const;
function shown(value: number, unit: string, { told, decimals }: Telling): string {
  const digits = threeDigits(value, decimals);
  if (unit === '%/10 strokes') return told.pen.series.per10Strokes(digits);
  return unit === '1' || unit === 'count' ? digits : `${digits} ${unit}`;
}

type Facts = Pick<ClientRecord, 'visits' | 'samples' | 'inkRecordings' | 'samplePages' | 'pageMeasurements'>;

/** The first bout with a device is for getting used to it: shown, never compared. */
function firstTries(values: readonly InkValue[]): Set<string> {
  const seen = new Set<string>();
  const first = new Set<string>();
  for (const { recording } of values) {
    const device = `${recording.surface} ${recording.device.trim().toLowerCase()}`;
    if (!seen.has(device)) first.add(recording.id);
    seen.add(device);
  }
  return first;
}

/** Values by day, oldest first: a visit counts once however many bouts it has. */
function byDay(values: readonly InkValue[]): Map<string, InkValue[]> {
  const days = new Map<string, InkValue[]>();
  for (const each of values) days.set(each.day, [...(days.get(each.day) ?? []), each]);
  return days;
}

/**
 * Has it changed? Baseline days against later ones, with the spread that this hand's own repeats on this device show:
 * nothing is known of other hands on it.
 */
function inkVerdict(counted: readonly InkValue[], unit: string, limits: ChangeLimits, telling: Telling): string {
  const words = telling.told.pen.series;
  const days = byDay(counted);
  if (days.size === 0) return words.firstTry;
  if (days.size < 2) return words.oneVisit;
  const all = [...days.values()];
  const marked = all.filter((day) => day.some(({ sample }) => sample.baseline)).length;
  const before = all.slice(0, Math.max(1, Math.min(marked, all.length - 1)));
  const now = all.slice(before.length);
  const scale = handScaleOf(unit);
  const numbers = (day: readonly InkValue[]): number[] => day.map(({ value }) => value);
  const spread = handSpread(null, all.map(numbers), scale, limits);
  if (!spread) {
    const repeats = all.reduce((sum, day) => sum + day.length - 1, 0);
    const more = limits.handRepeats - repeats;
    return more > 0 ? words.moreRepeats(more) : words.doNotVary;
  }
  const dayMean = (day: readonly InkValue[]): number => mean(numbers(day))!;
  const change = handChange(before.map(dayMean), now.map(dayMean), spread, limits);
  if (!change) return words.missing;
  const said = change.beyond === null ? words.within : change.beyond === 'up' ? words.higher : words.lower;
  return said(shown(change.before, unit, telling), shown(change.now, unit, telling));
}

function titleOf({ recording, sample }: InkValue, told: Telling['told']): string {
  const { doseState } = sample.conditions;
  return told.pen.series.title(
    told.pen.tasks[recording.task],
    told.conditions.hand[recording.hand],
    doseState === 'on' || doseState === 'off' ? told.conditions.dose[doseState] : '',
    smallFirst(told.pen.surfaces[recording.surface]),
    recording.device.trim(),
  );
}

/** Groups in the order in which they were first written; bouts with help are practice and stand in none. */
export function inkSeries(record: Facts, limits: ChangeLimits, telling: Telling): InkSeriesGroup[] {
  const { told } = telling;
  const all = inkValues(record).filter(({ reliable }) => reliable);
  const first = firstTries(all);
  const groups = new Map<string, InkValue[]>();
  for (const each of all.filter(({ recording }) => recording.cues === null)) {
    const key = inkSeriesKey(each);
    groups.set(key, [...(groups.get(key) ?? []), each]);
  }
  return [...groups].flatMap(([key, values]) => {
    const charted = CHARTED[values[0]!.recording.task];
    const series = charted.flatMap((code): InkSeries[] => {
      const own = values.filter((each) => each.code === code);
      if (own.length === 0) return [];
      const { unit } = own[0]!;
      const isPage = own[0]!.ofPage;
      return [
        {
          code,
          label: isPage
            ? told.measures.drawnPage(measureName(code.slice(5), told.measures))
            : inkMeasureName(code, told.pen),
          unit,
          better: isPage ? 'own' : better[inkBetter(code)],
          note: '',
          steps: null,
          points: own.map(({ recording, day, value }) => ({
            at: Date.parse(recording.startedAt),
            day,
            value,
            low: null,
            high: null,
            words: first.has(recording.id)
              ? told.pen.series.first(shown(value, unit, telling))
              : shown(value, unit, telling),
          })),
          verdict: inkVerdict(
            own.filter(({ recording }) => !first.has(recording.id)),
            unit,
            limits,
            telling,
          ),
        },
      ];
    });
    return series.length === 0 ? [] : [{ key, title: titleOf(values[0]!, told), series }];
  });
}
