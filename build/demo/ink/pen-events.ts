import type { InkDocument, RawSample } from '../../../renderer/ink/index.ts';

/** The events that a window would have got of this ink: the first of a way through the air is the lifting. */
export function penEvents(ink: InkDocument, pxPerMm: number): RawSample[] {
  return ink.traces.flatMap((trace) =>
    Array.from(trace.x, (x, i): RawSample => {
      const isDown = trace.kind === 'down';
      return {
        timeStamp: 1000 + trace.t![i]!,
        clientX: x * pxPerMm,
        clientY: trace.y[i]! * pxPerMm,
        pressure: Math.fround(trace.force?.[i] ?? 0),
        tiltX: 30,
        tiltY: -12,
        twist: 0,
        altitudeAngle: 1,
        azimuthAngle: 2,
        buttons: isDown ? 1 : 0,
        phase: isDown ? (i === 0 ? 'down' : 'contact') : i === 0 ? 'up' : 'hover',
        pointer: 'pen',
      };
    }),
  );
}
