import type { InkDocument, InkTrace } from './ink-types.ts';

/**
 * Pen events as the window got them, packed without loss: 56 bytes a sample, little-endian. Nothing is smoothed,
 * rounded or left out. Events of hovering are kept too.
 */

/** What an event says of the pen: hovering, first touch, touching, lifted, taken away by the system. */
const RAW_PHASES = ['hover', 'down', 'contact', 'up', 'cancel'] as const;
export type RawPhase = (typeof RAW_PHASES)[number];

const RAW_POINTERS = ['pen', 'touch', 'mouse'] as const;
export type RawPointer = (typeof RAW_POINTERS)[number];

/** One pointer event (Pointer Events 3). */
export interface RawSample {
  /** ms, the window's clock. */
  timeStamp: number;
  /** CSS pixels, with fractions. */
  clientX: number;
  clientY: number;
  pressure: number;
  tiltX: number;
  tiltY: number;
  twist: number;
  altitudeAngle: number;
  azimuthAngle: number;
  buttons: number;
  phase: RawPhase;
  pointer: RawPointer;
}

export const RAW_BYTES = 56;

export function packSamples(samples: readonly RawSample[]): Uint8Array {
  const bytes = new Uint8Array(samples.length * RAW_BYTES);
  const view = new DataView(bytes.buffer);
  for (const [i, sample] of samples.entries()) {
    const at = i * RAW_BYTES;
    const doubles = [sample.timeStamp, sample.clientX, sample.clientY, sample.altitudeAngle, sample.azimuthAngle];
    for (const [k, value] of doubles.entries()) view.setFloat64(at + 8 * k, value, true);
    view.setFloat32(at + 40, sample.pressure, true);
    view.setInt16(at + 44, sample.tiltX, true);
    view.setInt16(at + 46, sample.tiltY, true);
    view.setUint16(at + 48, sample.twist, true);
    view.setUint16(at + 50, sample.buttons, true);
    view.setUint8(at + 52, RAW_PHASES.indexOf(sample.phase));
    view.setUint8(at + 53, RAW_POINTERS.indexOf(sample.pointer));
  }
  return bytes;
}

/** Samples that came in whole; a piece that breaks off in the middle of one loses that one. */
export function unpackSamples(bytes: Uint8Array): RawSample[] {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  return Array.from({ length: Math.floor(bytes.byteLength / RAW_BYTES) }, (_, i) => {
    const at = i * RAW_BYTES;
    const double = (k: number): number => view.getFloat64(at + 8 * k, true);
    return {
      timeStamp: double(0),
      clientX: double(1),
      clientY: double(2),
      altitudeAngle: double(3),
      azimuthAngle: double(4),
      pressure: view.getFloat32(at + 40, true),
      tiltX: view.getInt16(at + 44, true),
      tiltY: view.getInt16(at + 46, true),
      twist: view.getUint16(at + 48, true),
      buttons: view.getUint16(at + 50, true),
      phase: RAW_PHASES[view.getUint8(at + 52)] ?? 'hover',
      pointer: RAW_POINTERS[view.getUint8(at + 53)] ?? 'pen',
    };
  });
}

export interface RawScale {
  pxPerMmX: number;
  pxPerMmY: number;
}

export interface RawAbout {
  scale: RawScale | null;
  task: string;
  text: string | null;
  /** Unix time of the first sample, ms. */
  startedAtMs: number | null;
}

const touches = (phase: RawPhase): boolean => phase === 'down' || phase === 'contact';

/** The stretches between touching and lifting, each begun by the event that says so. */
function stretchesOf(samples: readonly RawSample[]): { begins: RawSample | null; moves: RawSample[] }[] {
  const stretches: { begins: RawSample | null; moves: RawSample[] }[] = [{ begins: null, moves: [] }];
  for (const sample of samples)
    if (sample.phase !== 'hover' && sample.phase !== 'contact') stretches.push({ begins: sample, moves: [] });
  const begins = (k: number): number => stretches[k]?.begins?.timeStamp ?? (k === 0 ? -Infinity : Infinity);
  let here = 0;
  for (const sample of samples) {
    if (stretches[here + 1]?.begins === sample) {
      here += 1;
      continue;
    }
    let k = here;
    while (begins(k + 1) < sample.timeStamp) k += 1;
    while (begins(k) > sample.timeStamp) k -= 1;
    stretches[k]!.moves.push(sample);
  }
  return stretches;
}

/**
 * Moves where they belong in time. A browser that is kept waiting gathers moves over the next touch or lift and tells
 * them before it; taken in that order they would join two contacts into one. Moves keep their order among themselves.
 */
function inOrder(samples: readonly RawSample[]): RawSample[] {
  return stretchesOf(samples).flatMap(({ begins, moves }) => {
    const isDown = begins?.phase === 'down';
    const told = moves.map((move) => {
      const phase: RawPhase = isDown || (!begins && touches(move.phase)) ? 'contact' : 'hover';
      return move.phase === phase ? move : { ...move, phase };
    });
    return begins ? [begins, ...told] : told;
  });
}

/**
 * The recording as ink. Times count from its start. The point of lifting belongs to the way through the air; what the
 * system took away ends its contact.
 */
export function documentOfRaw(heard: readonly RawSample[], about: RawAbout): InkDocument {
  const samples = inOrder(heard);
  const { scale } = about;
  const [mmX, mmY] = scale ? [1 / scale.pxPerMmX, 1 / scale.pxPerMmY] : [1, 1];
  const start = samples[0]?.timeStamp ?? 0;
  const runs: { kind: 'down' | 'up'; samples: RawSample[] }[] = [];
  for (const sample of samples) {
    const kind = touches(sample.phase) ? 'down' : 'up';
    if (sample.phase === 'down' || runs.at(-1)?.kind !== kind) runs.push({ kind, samples: [] });
    runs.at(-1)!.samples.push(sample);
  }
  const column = (run: readonly RawSample[], of: (sample: RawSample) => number): Float64Array =>
    Float64Array.from(run, of);
  const traces = runs.map(({ kind, samples: run }): InkTrace => ({
    kind,
    x: column(run, ({ clientX }) => clientX * mmX),
    y: column(run, ({ clientY }) => clientY * mmY),
    t: column(run, ({ timeStamp }) => timeStamp - start),
    force: column(run, ({ pressure }) => pressure),
    tiltX: column(run, ({ tiltX }) => tiltX),
    tiltY: column(run, ({ tiltY }) => tiltY),
    rotation: column(run, ({ twist }) => twist),
  }));
  const { task, text, startedAtMs } = about;
  return { traces, lines: [], words: [], task, text, startedAtMs, calibrated: scale !== null, forceIsShare: true };
}
