import type { GrayImage, PageWarning } from '../types.ts';
import { fitSpiral, thinned } from './spiral-fit.ts';
import type { SpiralInk, SpiralShape } from './spiral-fit.ts';
import { spiralInk } from './spiral-ink.ts';
import { lineAlong } from './spiral-line.ts';
import type { SpiralLine } from './spiral-line.ts';
import type { SpiralResult } from './spiral-types.ts';
import { quickPart, strongestRhythm, swingsPerTurn } from './wobble.ts';

/** Version of the spiral's method: raise it when a change can move a value. */
export const SPIRAL_VERSION = 'spiral-1';

/** Points looked at while the spiral is sought. */
const SOUGHT = 1500;
/** Below this concentration the ink is no spiral; a turn and a half are needed. */
const LEAST_CONCENTRATION = 0.35;
const LEAST_TURNS = 1.5;
/** A swing reaches this share of the wobble's own spread to both sides. */
const REACHES = 0.5;
/** Below this wobble, mm, swings are those of the picture's pixels. */
const LEAST_MM = 0.08;
/** Share of the line without ink from which the numbers are called rough. */
const BROKEN_SHARE = 0.15;

const warning = (code: string, message: string): PageWarning => ({ code, message });
const NO_SPIRAL = warning(
  'no-spiral',
  'No spiral was found in this picture. Scan the sheet whole and straight, with nothing else drawn on it.',
);
const FEW_TURNS = warning('few-turns', 'The spiral has too few turns to judge its wobble by: two or more are needed.');
const BROKEN = warning('spiral-broken', 'Parts of the line are missing or crossed, so the numbers are rough.');

const NOTHING = {
  turns: null,
  radialRmsMm: null,
  radialRmsPercent: null,
  swingsPerTurn: null,
  swingsPerCm: null,
  frequencyHz: null,
  lengthMm: null,
};

/** A measured spiral with what it was read from; null where the ink is none. */
export interface ReadSpiral {
  result: SpiralResult;
  read: { shape: SpiralShape; line: SpiralLine; wobble: number[] } | null;
}

/**
 * Measures a spiral on paper.
 * @param pxPerMm scale of the picture
 * @param seconds time it took to draw, or null
 * @throws RangeError where the scale or the time is not above 0
 */
export function measureSpiral(image: GrayImage, pxPerMm: number, seconds: number | null): SpiralResult {
  if (!(pxPerMm > 0) || (seconds !== null && !(seconds > 0))) throw new RangeError('Scale and time must be above 0.');
  return readSpiral(spiralInk(image, pxPerMm).ink, seconds).result;
}

/** @param ink the pen's ink, mm */
export function readSpiral(ink: SpiralInk, seconds: number | null): ReadSpiral {
  const shape = fitSpiral(thinned(ink, SOUGHT));
  if (!shape || shape.concentration < LEAST_CONCENTRATION)
    return { result: { ...NOTHING, warnings: [NO_SPIRAL] }, read: null };
  const line = lineAlong(ink, shape);
  if (!line || line.turns < LEAST_TURNS) return { result: { ...NOTHING, warnings: [FEW_TURNS] }, read: null };
  const wobble = quickPart(line);
  const rms = rmsOf(wobble);
  const even = rms < LEAST_MM;
  const result: SpiralResult = {
    turns: line.turns,
    radialRmsMm: rms,
    radialRmsPercent: (100 * rms) / shape.pitch,
    swingsPerTurn: even ? 0 : swingsPerTurn(wobble, line.turnsAt, REACHES * rms),
    swingsPerCm: even ? null : strongestRhythm(wobble),
    frequencyHz: null,
    lengthMm: line.lengthMm,
    warnings: line.missing > BROKEN_SHARE ? [BROKEN] : [],
  };
  return { result: timedSpiral(result, seconds), read: { shape, line, wobble } };
}

/** The result with the swings a second that a time of drawing gives; none without it. */
export function timedSpiral<R extends SpiralResult>(result: R, seconds: number | null): R {
  const { swingsPerTurn: swings, turns } = result;
  const known = seconds !== null && swings !== null && turns !== null;
  return { ...result, frequencyHz: known ? (swings * turns) / seconds : null };
}

export const rmsOf = (values: readonly number[]): number =>
  Math.sqrt(values.reduce((sum, value) => sum + value * value, 0) / values.length);
