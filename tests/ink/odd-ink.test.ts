/** Recordings that go wrong: a still pen, one point, times that stand or go back, half an hour of ink. */
import { expect, it } from 'vitest';
import { inkOf, strokesUpAndDown } from '../../build/demo/ink/pen-model.ts';
import { INK_CODES, drawInk, measureInk } from '../../renderer/ink/index.ts';
import type { InkDocument, InkResult } from '../../renderer/ink/index.ts';

const device = { rateHz: 200, noiseMm: 0.01, seed: 3 };
const from = { x: 20, y: 60 };
const row = (result: InkResult, code: string) => result.measures.find((each) => each.code === code)!;

function drawn(points: [x: number, y: number, t: number][]): InkDocument {
  const [x, y, t] = [0, 1, 2].map((c) => Float64Array.from(points, (point) => point[c]!)) as [
    Float64Array,
    Float64Array,
    Float64Array,
  ];
  const none = { force: null, tiltX: null, tiltY: null, rotation: null };
  return {
    traces: [{ kind: 'down', x, y, t, ...none }],
    lines: [],
    words: [],
    task: null,
    text: null,
    startedAtMs: null,
    calibrated: true,
    forceIsShare: true,
  };
}

it('always answers every code, a null with its reason, and JSON without a hole', () => {
  for (const points of [
    [],
    [[1, 1, 0]],
    [
      [1, 1, 0],
      [1, 1, 0],
    ],
    [
      [1, 1, 5],
      [2, 2, 4],
    ],
    [
      [0, 0, 0],
      [1e7, 0, 1e7],
    ],
  ] as [number, number, number][][]) {
    const result = measureInk(drawn(points));
    expect(result.measures.map(({ code }) => code)).toEqual(INK_CODES);
    for (const { value, why, reliable } of result.measures)
      expect(value === null ? why !== null && !reliable : Number.isFinite(value)).toBe(true);
    expect(JSON.parse(JSON.stringify(result))).toEqual(result);
  }
});

it('takes a pen that rests for a pause, not for a loss', () => {
  const steps = strokesUpAndDown(6, () => 5, 0.3);
  const whole = inkOf({ task: 'writing', from, steps: [...steps, { kind: 'rest', seconds: 2 }, ...steps] }, device);
  // The device is silent while nothing moves.
  const trace = whole.traces[0]!;
  const kept = Array.from(trace.t!, (_, i) => i).filter((i) => trace.t![i]! < 2050 || trace.t![i]! > 3950);
  const pick = (column: Float64Array): Float64Array => Float64Array.from(kept, (i) => column[i]!);
  const silent = {
    ...whole,
    traces: [{ ...trace, x: pick(trace.x), y: pick(trace.y), t: pick(trace.t!), force: null }],
  };
  const result = measureInk(silent);
  expect(result.quality).toMatchObject({ verdict: 'good', droppedShare: 0 });
  expect([row(result, 'pauses').value, row(result, 'stops').value]).toEqual([1, 1]);
  expect(row(result, 'stop-time').value! - 2).toBeLessThan(0.2);
});

it('calls moving gaps a loss: limited above 2 %, unusable above 10 %', () => {
  const ink = inkOf({ task: 'writing', from, steps: strokesUpAndDown(40, () => 8, 0.25) }, device);
  const trace = ink.traces[0]!;
  const without = (share: number) => {
    const kept = Array.from(trace.t!, (_, i) => i).filter((i) => i % 100 < 20 || i % 100 >= 20 + 100 * share);
    const pick = (column: Float64Array): Float64Array => Float64Array.from(kept, (i) => column[i]!);
    return measureInk({
      ...ink,
      traces: [{ ...trace, x: pick(trace.x), y: pick(trace.y), t: pick(trace.t!), force: null }],
    });
  };
  expect(without(0).quality.verdict).toBe('good');
  expect(without(0.04).quality.verdict).toBe('limited');
  const most = without(0.14);
  expect(most.quality.verdict).toBe('unusable');
  expect(row(most, 'stroke-height')).toMatchObject({ value: null, why: 'quality' });
  expect(row(most, 'writing-time')).toMatchObject({ reliable: false, why: 'quality' });
});

it('without a scale tells times and pressure, no lengths; nothing can be drawn', () => {
  const ink = inkOf(
    { task: 'writing', text: 'on', from, steps: strokesUpAndDown(8, () => 5, 0.3), pressure: (s) => 0.3 + s / 20 },
    device,
  );
  const result = measureInk({ ...ink, calibrated: false });
  expect(result.quality.verdict).toBe('limited');
  for (const code of ['writing-time', 'letters-per-minute', 'pressure-mean'])
    expect(row(result, code).value).not.toBeNull();
  for (const code of ['stroke-height', 'speed-mean', 'pauses', 'sparc', 'power-law'])
    expect(row(result, code).why).toBe('no-scale');
  expect(drawInk({ ...ink, calibrated: false })).toBeNull();
  expect(
    drawInk(
      drawn([
        [0, 0, 0],
        [9e6, 0, 10],
      ]),
    ),
  ).toBeNull();
});

it('measures half an hour at 240 Hz', () => {
  const steps = Array.from({ length: 600 }, () => [
    ...strokesUpAndDown(10, () => 4, 0.25),
    { kind: 'lift' as const, dx: 1, dy: 0, seconds: 0.5 },
  ]).flat();
  const ink = inkOf({ task: 'writing', from, steps }, { rateHz: 240, noiseMm: 0.02, seed: 9 });
  expect(ink.traces.reduce((sum, { t }) => sum + t!.length, 0)).toBeGreaterThan(430_000);
  const began = performance.now();
  const result = measureInk(ink);
  expect(row(result, 'strokes').value).toBe(6000);
  expect(performance.now() - began).toBeLessThan(60_000);
});
