/** Strokes within the target band of practice with help, and when the help may fade. */
import type { Told } from '../texts/screens/en/screens-en.ts';
import type { Telling } from '../texts/screens/telling.ts';
import type { InkRecording } from '../../../db/types/sample.ts';
import { wilson } from '../../statistics/wilson.ts';

/** A stroke lies in the band within this share of its height (common practice, no source). */
const BAND_SHARE = 0.15;

export interface Hits {
  inBand: number;
  strokes: number;
  /** Wilson, 95 %, 0 to 1. */
  low: number;
  high: number;
}

/** @param heightsMm of all strokes of a bout @param bandMm the height that was to be filled */
export function hitsInBand(heightsMm: readonly number[], bandMm: number): Hits {
  const strokes = heightsMm.length;
  const inBand = heightsMm.filter((height) => Math.abs(height - bandMm) <= BAND_SHARE * bandMm + 1e-9).length;
  if (strokes === 0) return { inBand, strokes, low: 0, high: 1 };
  const { low, high } = wilson(inBand, strokes);
  return { inBand, strokes, low, high };
}

export const hitsWords = ({ inBand, strokes, low, high }: Hits, bandMm: number, { told, decimals }: Telling): string =>
  told.pen.hits(inBand, strokes, decimals(bandMm, 2, 0), decimals(100 * low), decimals(100 * high));

/** A line counts as hit when this share of its strokes lay in the band; fading is proposed at 3 lines of 4 (INK 5). */
const LINE_HIT = 0.75;
const LINES = 4;
const HIT_LINES = 3;

/** One line written with help: strokes in the band, of all. */
export type CuedLine = Pick<Hits, 'inBand' | 'strokes'>;

export interface Fading {
  hit: number;
  lines: number;
  /** Less help may be tried: the therapist decides. */
  propose: boolean;
}

/** @param lines the lines with help in the order of writing; the last four count */
export function fading(lines: readonly CuedLine[]): Fading {
  const last = lines.filter(({ strokes }) => strokes > 0).slice(-LINES);
  const hit = last.filter(({ inBand, strokes }) => inBand / strokes >= LINE_HIT).length;
  return { hit, lines: last.length, propose: last.length === LINES && hit >= HIT_LINES };
}

/** Strokes in the band, line by line: a line ends where the therapist went on to the next one. */
export function hitsByLine(
  strokes: readonly { atS: number; heightMm: number }[],
  notes: InkRecording['notes'],
  bandMm: number,
): CuedLine[] {
  const turns = notes.filter(({ kind }) => kind === 'line').map(({ atMs }) => atMs / 1000);
  return [0, ...turns].flatMap((fromS, i, starts) => {
    const own = strokes.filter(({ atS }) => atS >= fromS && atS < (starts[i + 1] ?? Infinity));
    const { inBand } = hitsInBand(
      own.map(({ heightMm }) => heightMm),
      bandMm,
    );
    return own.length === 0 ? [] : [{ inBand, strokes: own.length }];
  });
}

/** Lines written with a height to fill, over all bouts of a client, in the order of writing. */
export const linesWithHelp = (recordings: readonly InkRecording[]): CuedLine[] =>
  recordings
    .filter(({ cues, abandoned }) => cues?.bandMm != null && !abandoned)
    .toSorted((a, b) => (a.startedAt < b.startedAt ? -1 : 1))
    .flatMap(({ measured }) => measured?.lines ?? []);

type Cues = NonNullable<InkRecording['cues']>;

/** One help less, the most shown first: sizes, pace, marks, and last the band (common practice, no source). */
export function lessHelp(cues: Cues): { cues: Cues | null; without: keyof Told['pen']['lessHelp'] } {
  if (cues.sizes) return { cues: { ...cues, sizes: false }, without: 'sizes' };
  if (cues.paceHz !== null) return { cues: { ...cues, paceHz: null, sound: false }, without: 'pace' };
  if (cues.stopMarks) return { cues: { ...cues, stopMarks: false }, without: 'marks' };
  return { cues: null, without: 'none' };
}
