import type { InkBox, InkDocument, InkQuality, InkResult, InkSpan, InkTask, InkWarning } from './ink-types.ts';
import { INK_TASKS } from './ink-types.ts';
import { groupedWords, wordsByBoxes, wordsTold } from './measures/ink-words.ts';
import type { InkCode } from './measures/measure-rows.ts';
import { INK_CODES, MeasureRows } from './measures/measure-rows.ts';
import { strokesOf } from './measures/ink-strokes.ts';
import { pressureOf } from './measures/pen-pressure.ts';
import { AIR_PAUSE_S, inTime, timesOf } from './measures/pen-times.ts';
import type { PenTimes } from './measures/pen-times.ts';
import { powerLaw } from './measures/power-law.ts';
import { restsOf } from './measures/stillness.ts';
import { speedsAreDoubtful, STROKE_CODES, strokeRows } from './measures/stroke-rows.ts';
import { logTrend } from './measures/trends.ts';
import { contactsOf } from './prepare/contacts.ts';
import type { Contact, Contacts } from './prepare/contacts.ts';
import type { Motion } from './prepare/motion.ts';
import { motionOf } from './prepare/motion.ts';
import { noiseOf } from './prepare/noise.ts';
import type { Noise } from './prepare/noise.ts';
import { LIMITED, qualityOf } from './quality.ts';
import { TREMOR_TASKS, tremorOf } from './tremor/tremor.ts';
import { median, quantile } from '../statistics/order-statistics.ts';
import { inkWarnings } from './ink-warnings.ts';

export interface InkOptions {
  /** What was to be done; goes before what the file says. */
  task?: InkTask;
  /** What was meant to be written; goes before the text in the file. */
  text?: string;
  /** Words of the drawn page and where its corner lies, for ink that is not grouped by words. */
  page?: { boxes: readonly InkBox[]; origin: { x: number; y: number } } | null;
}

const PAUSE = { reachMm: 0.5, seconds: 0.3 };
const STOP = { reachMm: 1, seconds: 1 };

const TIME_CODES: readonly InkCode[] = [
  'writing-time',
  'paper-time',
  'air-time',
  'air-share',
  'lifts',
  'lifts-per-word',
];
const PRESSURE_CODES: readonly InkCode[] = ['pressure-mean', 'pressure-cv', 'pressure-drift'];
const REST_CODES: readonly InkCode[] = ['pauses', 'pause-time', 'stops', 'stop-time'];
const SPEED_CODES: readonly InkCode[] = ['path-length', 'speed-mean', 'speed-peak'];
/** What needs to know how the pen moved, not only when it touched. */
const MOVEMENT_CODES = INK_CODES.filter(
  (code) => !TIME_CODES.includes(code) && !PRESSURE_CODES.includes(code) && code !== 'letters-per-minute',
);

/** Letters and digits of a text. */
export const lettersIn = (text: string): number => text.match(/[\p{L}\p{N}]/gu)?.length ?? 0;

const taskOf = (document: InkDocument, options: InkOptions): InkTask =>
  options.task ?? INK_TASKS.find((task) => task === document.task?.trim().toLowerCase()) ?? 'writing';

function timeRows(rows: MeasureRows, times: PenTimes, contacts: readonly Contact[], letters: number | null): void {
  const n = contacts.length;
  rows.set('writing-time', times.writing, n);
  rows.set('paper-time', times.paper, n);
  rows.set('air-time', times.air, times.lifts);
  rows.set('air-share', times.writing > 0 ? (100 * times.air) / times.writing : null, times.lifts);
  rows.set('lifts', times.lifts, n);
  if (letters === null) rows.leave(['letters-per-minute'], 'no-text');
  else rows.set('letters-per-minute', times.writing > 0 ? (letters * 60) / times.writing : null, letters);
}

function pressureRows(rows: MeasureRows, contacts: readonly Contact[], quality: InkQuality, isShare: boolean): void {
  if (!quality.pressure) return rows.leave(PRESSURE_CODES, 'no-pressure');
  const pressure = pressureOf(contacts);
  if (!pressure) return;
  rows.set('pressure-mean', pressure.mean, pressure.n);
  if (!isShare) rows.leave(['pressure-mean'], 'no-scale');
  rows.set('pressure-cv', pressure.cv, pressure.n);
  const { medians } = pressure;
  const trend = logTrend(
    medians.map(({ atS }) => atS),
    medians.map(({ value }) => value),
    60,
  );
  rows.trend('pressure-drift', trend, medians.length);
}

/** Pauses on paper and in the air, and stops on paper. Seconds from the first sample. */
function restRows(
  rows: MeasureRows,
  motions: readonly Motion[],
  times: PenTimes,
  startMs: number,
): { pauses: InkSpan[]; stops: InkSpan[] } {
  const span = ({ fromMs, toMs }: { fromMs: number; toMs: number }): InkSpan => ({
    fromS: (fromMs - startMs) / 1000,
    toS: (toMs - startMs) / 1000,
  });
  const long = times.gaps.filter(({ seconds }) => seconds >= AIR_PAUSE_S - 1e-9);
  const onPaper = restsOf(motions, PAUSE.reachMm, PAUSE.seconds).map(span);
  const stops = restsOf(motions, STOP.reachMm, STOP.seconds).map(span);
  const lasting = (spans: readonly InkSpan[]): number => spans.reduce((sum, { fromS, toS }) => sum + toS - fromS, 0);
  const inAir = long.reduce((sum, { seconds }) => sum + seconds, 0);
  const count = onPaper.length + long.length;
  rows.set('pauses', count, count);
  rows.set('pause-time', lasting(onPaper) + inAir, count);
  rows.set('stops', stops.length, stops.length);
  rows.set('stop-time', lasting(stops), stops.length);
  const air = long.map(({ fromMs, toMs, seconds }) =>
    span({ fromMs: toMs - seconds * 1000, toMs: Math.max(fromMs, toMs) }),
  );
  return { pauses: inTime([...onPaper, ...air]), stops };
}

function speedRows(rows: MeasureRows, motions: readonly Motion[]): number | null {
  let path = 0;
  let seconds = 0;
  for (const { x, y } of motions) {
    for (let i = 1; i < x.length; i += 1) path += Math.hypot(x[i]! - x[i - 1]!, y[i]! - y[i - 1]!);
    seconds += (x.length - 1) / 200;
  }
  const all = new Float64Array(motions.reduce((sum, { speed }) => sum + speed.length, 0));
  let next = 0;
  for (const { speed } of motions) {
    all.set(speed, next);
    next += speed.length;
  }
  const peak = quantile(all, 0.99);
  rows.set('path-length', motions.length === 0 ? null : path, motions.length);
  rows.set('speed-mean', seconds > 0 ? path / seconds : null, all.length);
  rows.set('speed-peak', peak, all.length);
  return peak;
}

function movementRows(
  rows: MeasureRows,
  motions: readonly Motion[],
  noise: Noise | null,
  quality: InkQuality,
  task: InkTask,
): void {
  let typicalPeak = speedRows(rows, motions);
  if (!TREMOR_TASKS.includes(task)) {
    const strokes = strokesOf(motions);
    strokeRows(rows, strokes, noise, quality);
    typicalPeak = median(strokes.map(({ peakVy }) => peakVy)) ?? typicalPeak;
    const law = powerLaw(motions);
    rows.set('power-law', law?.exponent ?? null, law?.n ?? 0);
    if (quality.rateHz! < LIMITED.rateHz) rows.leave(['power-law'], 'rate');
  }
  if (speedsAreDoubtful(typicalPeak, noise)) rows.doubt([...SPEED_CODES, 'stroke-peak-speed'], 'noise');
}

/** A recording nobody can time: what it is, and why everything is null. */
function untimed(document: InkDocument, read: Contacts, rows: MeasureRows): void {
  const hasInk = read.samples > 0;
  rows.leave(INK_CODES, hasInk && document.traces.some(({ kind, t }) => kind === 'down' && !t) ? 'no-time' : 'few');
}

/**
 * All measures of a recording, with intervals, and with a reason where one cannot be told. Pure: the same ink and
 * options give the same result.
 */
export function measureInk(document: InkDocument, options: InkOptions = {}): InkResult {
  const task = taskOf(document, options);
  const text = options.text ?? document.text;
  const letters = text === null || lettersIn(text) === 0 ? null : lettersIn(text);
  const read = contactsOf(document);
  const { contacts, intervalMs } = read;
  const rows = new MeasureRows();
  const interval = intervalMs ?? 0;
  const canMove = document.calibrated && intervalMs !== null;
  const motions = canMove ? contacts.map((each) => motionOf(each, interval)).filter((each) => each !== null) : [];
  const noise = intervalMs === null ? null : noiseOf(motions, 1000 / intervalMs);
  const quality = qualityOf(document, read, noise?.positionMm ?? null);
  const warnings: InkWarning[] = inkWarnings(document, read, quality);
  let told: { pauses: InkSpan[]; stops: InkSpan[] } = { pauses: [], stops: [] };
  let words: InkResult['words'] = [];

  if (contacts.length === 0) untimed(document, read, rows);
  else {
    const startMs = contacts[0]!.t[0]!;
    const times = timesOf(contacts, interval);
    if (TREMOR_TASKS.includes(task)) rows.leave([...STROKE_CODES, ...REST_CODES], 'task');
    if (!quality.calibrated) rows.leave(MOVEMENT_CODES, 'no-scale');
    else if (quality.verdict === 'unusable') rows.leave(MOVEMENT_CODES, 'quality');
    timeRows(rows, times, contacts, letters);
    pressureRows(rows, contacts, quality, document.forceIsShare);
    const groups =
      groupedWords(document, contacts) ??
      (options.page ? wordsByBoxes(contacts, options.page.boxes, options.page.origin) : null);
    if (groups && groups.length > 0) {
      words = wordsTold(groups, startMs, interval, options.page?.origin ?? null);
      rows.set('lifts-per-word', words.reduce((sum, { lifts }) => sum + lifts, 0) / words.length, words.length);
    } else rows.leave(['lifts-per-word'], 'no-words');
    if (quality.calibrated && quality.verdict !== 'unusable') {
      movementRows(rows, motions, noise, quality, task);
      if (!TREMOR_TASKS.includes(task)) told = restRows(rows, motions, times, startMs);
    }
    if (quality.verdict === 'unusable') rows.doubt([...TIME_CODES, ...PRESSURE_CODES, 'letters-per-minute'], 'quality');
  }
  return {
    source: {
      format: 'InkML',
      contacts: document.traces.filter(isContact).length,
      samples: read.samples,
      task,
      letters,
    },
    quality,
    measures: rows.all(),
    tremor: tremorOf(motions, task, quality),
    ...told,
    words,
    warnings,
  };
}

const isContact = ({ kind, x }: InkDocument['traces'][number]): boolean => kind === 'down' && x.length > 0;
