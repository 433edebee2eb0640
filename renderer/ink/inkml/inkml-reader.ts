import { angleFactor, lengthFactor, tiltOf, timeFactor } from './channels.ts';
import type { InkChannel, Resolution } from './channels.ts';
import { InkElements } from './inkml-elements.ts';
import type { RawTrace } from './inkml-elements.ts';
import { InkRefusal, INK_LIMITS } from './ink-refusal.ts';
import { readTraceData } from './trace-data.ts';
import type { ColumnState } from './trace-data.ts';
import { readXml } from './xml-events.ts';
import type { InkDocument, InkTrace } from '../ink-types.ts';

/** One decoded trace with what its format tells about it. */
interface DecodedTrace {
  trace: InkTrace;
  isMm: boolean;
  forceIsShare: boolean;
  state: ColumnState[];
}

const scaled = (values: Float64Array, factor: number, offset = 0): Float64Array =>
  values.map((value) => (value + offset) * factor);

/** Pressure as a share of its range, where the range is told or the values stay within 0 to 1; newtons are no share. */
function share(values: Float64Array, channel: InkChannel): { values: Float64Array; isShare: boolean } {
  const [low, high] = [channel.min ?? 0, channel.max];
  if (high !== null && high > low) return { values: values.map((v) => (v - low) / (high - low)), isShare: true };
  if (channel.units === '%') return { values: values.map((v) => v / 100), isShare: true };
  if (channel.units === 'N') return { values, isShare: false };
  return { values, isShare: values.every((v) => Number.isNaN(v) || (v >= 0 && v <= 1)) };
}

function decode(
  raw: RawTrace,
  {
    format,
    resolutions,
  }: { format: { regular: InkChannel[]; intermittent: InkChannel[] }; resolutions: ReadonlyMap<string, Resolution> },
  room: number,
  before: readonly ColumnState[] | null,
  laterMs: number,
): DecodedTrace {
  const channels = [...format.regular, ...format.intermittent];
  const channel = (name: string): InkChannel | undefined => channels.find((each) => each.name === name);
  const [x, y, t] = [channel('X'), channel('Y'), channel('T')];
  if (!x || !y) throw new InkRefusal('no-position');
  const { columns, length, state } = readTraceData(raw.text, format.regular.length, channels.length, room, before);
  const all = (each: InkChannel): Float64Array => columns[channels.indexOf(each)]!;
  const [xFactor, yFactor] = [x, y].map((each) => lengthFactor(each, resolutions.get(each.name)));
  const tFactor = t ? timeFactor(t, resolutions.get('T')) : null;
  const isMm = xFactor !== null && yFactor !== null;
  const angle = (name: string): Float64Array | null => {
    const each = channel(name);
    return each ? scaled(all(each), angleFactor(each)) : null;
  };
  let [tiltX, tiltY] = [angle('OTx'), angle('OTy')];
  const [azimuth, altitude] = [angle('OA'), angle('OE')];
  if (!tiltX && !tiltY && azimuth && altitude) {
    const tilts = Array.from(azimuth, (each, i) => tiltOf(each, altitude[i]!));
    tiltX = Float64Array.from(tilts, (tilt) => tilt.tiltX);
    tiltY = Float64Array.from(tilts, (tilt) => tilt.tiltY);
  }
  const f = channel('F');
  const force = f ? share(all(f), f) : null;
  const trace: InkTrace = {
    kind: raw.kind,
    x: scaled(all(x), (isMm ? xFactor! : 1) * x.sense),
    y: scaled(all(y), (isMm ? yFactor! : 1) * y.sense),
    t: t && tFactor !== null ? scaled(all(t), tFactor, raw.timeOffset + laterMs / tFactor) : null,
    force: force?.values ?? null,
    tiltX,
    tiltY,
    rotation: angle('OR'),
  };
  // A sample without a place or a time is none.
  const isWhole = (i: number): boolean =>
    !Number.isNaN(trace.x[i]!) && !Number.isNaN(trace.y[i]!) && !(trace.t && Number.isNaN(trace.t[i]!));
  const kept = Array.from({ length }, (_, i) => i).filter(isWhole);
  return {
    trace: kept.length === length ? trace : picked(trace, kept),
    isMm,
    forceIsShare: force?.isShare ?? true,
    state,
  };
}

const COLUMNS = ['x', 'y', 't', 'force', 'tiltX', 'tiltY', 'rotation'] as const;

function picked(trace: InkTrace, kept: readonly number[]): InkTrace {
  const copy = { ...trace };
  for (const key of COLUMNS) {
    const column = trace[key];
    if (column) copy[key] = Float64Array.from(kept, (i) => column[i]!);
  }
  return copy;
}

/** The second trace set behind the first; a column that one of them lacks is lost for both. */
function joined(first: InkTrace, second: InkTrace): InkTrace {
  const copy = { ...first };
  for (const key of COLUMNS) {
    const [a, b] = [first[key], second[key]];
    if (!a || !b) {
      if (key !== 'x' && key !== 'y') copy[key] = null;
      continue;
    }
    const both = new Float64Array(a.length + b.length);
    both.set(a);
    both.set(b, a.length);
    copy[key] = both;
  }
  return copy;
}

const WEST_EUROPEAN = /^<\?xml[^>]*encoding\s*=\s*["'](?:iso-8859-1|latin1|us-ascii|windows-1252)["']/i;

const named = (bytes: Uint8Array): 'windows-1252' | null =>
  WEST_EUROPEAN.test(String.fromCharCode(...bytes.subarray(0, 200))) ? 'windows-1252' : null;

/** UTF-8, UTF-16 where its mark says so, or the West European bytes that its first line names. @throws InkRefusal for bytes that are neither */
function decodedText(bytes: Uint8Array): string {
  const mark =
    bytes[0] === 0xff && bytes[1] === 0xfe
      ? 'utf-16le'
      : bytes[0] === 0xfe && bytes[1] === 0xff
        ? 'utf-16be'
        : (named(bytes) ?? 'utf-8');
  try {
    return new TextDecoder(mark, { fatal: true }).decode(bytes);
  } catch {
    throw new InkRefusal('not-well-formed');
  }
}

/**
 * Reads an InkML file (W3C 2011): any order of channels, lengths in mm cm m in pt pc or device steps with a
 * resolution, times in ms or s, differences, continued traces, nested groups, tilt by angle pairs of either kind.
 * Nothing is smoothed or left out, samples without a place or time excepted.
 * @throws InkRefusal with a sentence
 */
export function readInkml(bytes: Uint8Array): InkDocument {
  if (bytes.length > INK_LIMITS.bytes) throw new InkRefusal('file-too-large');
  const elements = new InkElements();
  readXml(decodedText(bytes), elements);
  const { definitions, annotations } = elements;

  const decoded: (DecodedTrace | null)[] = [];
  /** Where each trace of the file went: a continued one is part of another. */
  const place: number[] = [];
  const byId = new Map<string, number>();
  let samples = 0;
  let startedAtMs: number | null = null;
  for (const [index, raw] of elements.traces.entries()) {
    const context = (raw.contextRef === null ? null : definitions.contexts.get(raw.contextRef)) ?? raw.context;
    const resolved = definitions.resolve(context);
    startedAtMs ??= resolved.timestampMs;
    // Times of another clock zero are told on the first one's.
    const laterMs = (resolved.timestampMs ?? startedAtMs ?? 0) - (startedAtMs ?? 0);
    const into =
      raw.continues === undefined ? undefined : raw.continues === null ? place[index - 1] : byId.get(raw.continues);
    const before = into === undefined ? undefined : decoded[into];
    const one = decode(raw, resolved, INK_LIMITS.samples - samples, before?.state ?? null, laterMs);
    samples += one.trace.x.length;
    if (before && into !== undefined && before.trace.kind === one.trace.kind) {
      decoded[into] = { ...one, trace: joined(before.trace, one.trace), isMm: one.isMm && before.isMm };
      place.push(into);
    } else {
      place.push(decoded.length);
      decoded.push(one);
    }
    if (raw.id !== null) byId.set(raw.id, place[index]!);
  }

  const all = decoded.filter((each) => each !== null);
  const groupsOf = (kind: string): number[][] =>
    elements.groups
      .filter((group) => group.kind === kind)
      .map(({ traces }) => [...new Set(traces.map((index) => place[index]!))])
      .filter((traces) => traces.length > 0);
  return {
    traces: all.map(({ trace }) => trace),
    lines: groupsOf('line'),
    words: groupsOf('word'),
    task: annotations.get('task') ?? null,
    text: annotations.get('text') ?? null,
    startedAtMs,
    calibrated: all.every(({ isMm }) => isMm),
    forceIsShare: all.every((each) => each.forceIsShare),
  };
}
