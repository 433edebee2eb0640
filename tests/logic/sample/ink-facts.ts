/** Pen recordings with what the engine tells of invented motion, for tests of what is made of them. */
import { inkOf, strokesUpAndDown } from '../../../build/demo/ink/pen-model.ts';
import type { PenPlan } from '../../../build/demo/ink/pen-model.ts';
import type { InkRecording, InkTold } from '../../../db/types/sample.ts';
import { INK_METHOD, measureInk } from '../../../renderer/ink/index.ts';
import { nothingWritten } from '../../../renderer/logic/record/nothing-written.ts';
import { seedOf } from '../../../renderer/logic/sample/seeded-choice.ts';

const from = { x: 20, y: 60 };

/** Loops that shrink by a share a stroke, with so many long stops. */
export const loops = (share: number, stops = 0, heightMm = 6): PenPlan => ({
  task: 'loops',
  from,
  steps: [
    ...strokesUpAndDown(20, (n) => heightMm * (1 - share) ** n, 0.22, 'sine'),
    ...Array.from({ length: stops }, () => [
      { kind: 'rest' as const, seconds: 1.6 },
      ...strokesUpAndDown(10, (n) => heightMm * (1 - share) ** (n + 20), 0.22, 'sine'),
    ]).flat(),
  ],
  pressure: (s) => 0.4 + 0.01 * Math.sin(3 * s),
});

export const line = (tremor?: PenPlan['tremor']): PenPlan => ({
  task: 'line',
  from,
  steps: [{ kind: 'stroke', dx: 130, dy: 2, seconds: 8, law: 'sine' }],
  ...(tremor && { tremor }),
});

let made = 0;

/** A finished recording of a plan. */
export function recordingOf(
  plan: PenPlan,
  of: Pick<InkRecording, 'clientId' | 'visitId' | 'sampleId' | 'startedAt'> & Partial<InkRecording>,
): InkRecording {
  made += 1;
  // By what the bout is, not by how many were made before it: other files of the same worker make some too.
  const seed = seedOf(`${of.startedAt} ${of.hand ?? ''} ${plan.task}`);
  const ink = inkOf(plan, { rateHz: 200, noiseMm: 0.02, seed });
  return {
    ...nothingWritten(),
    id: `018f7c1e-0000-4000-9000-${String(made).padStart(12, '0')}`,
    at: of.startedAt,
    by: 'AB',
    order: 0,
    task: plan.task,
    hand: 'right',
    blob: '018f7c1e-0000-4000-a000-000000000001',
    mime: 'application/x-pen-samples',
    pointerType: 'pen',
    surface: 'screen',
    device: 'Test pen',
    screen: { width: 1366, height: 768, devicePixelRatio: 1 },
    scale: { pxPerMmX: 5, pxPerMmY: 5, source: 'card', at: of.startedAt },
    measured: { method: INK_METHOD, told: measureInk(ink) as unknown as InkTold },
    ...of,
  };
}
