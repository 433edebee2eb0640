import { randomUUID } from 'node:crypto';
import type { Caseload, Doing } from '../../../db/index.ts';
import type { InkRecording, InkTold, Sample } from '../../../db/types/sample.ts';
import { INK_METHOD, measureInk, packSamples } from '../../../renderer/ink/index.ts';
import { noConditions } from '../../../renderer/logic/sample/carried-conditions.ts';
import type { DemoVisit } from '../types.ts';
import { penEvents } from './pen-events.ts';
import { inkOf, strokesUpAndDown } from './pen-model.ts';
import type { PenPlan } from './pen-model.ts';
import { nothingWritten } from '../../../renderer/logic/record/nothing-written.ts';

const PX_PER_MM = 5;
const HEIGHT_MM = 6;
const from = { x: 20, y: 60 };

interface Bout {
  hand: 'right' | 'left';
  plan: PenPlan;
}

/** Loops that shrink by a share a stroke, with one long stop. */
const loops = (shrink: number, heightMm: number): Bout => ({
  hand: 'right',
  plan: {
    task: 'loops',
    from,
    steps: [
      ...strokesUpAndDown(22, (n) => heightMm * (1 - shrink) ** n, 0.2, 'sine'),
      { kind: 'rest', seconds: 1.7 },
      ...strokesUpAndDown(18, (n) => heightMm * (1 - shrink) ** (n + 22), 0.2, 'sine'),
    ],
    pressure: (seconds) => 0.5 * 0.985 ** seconds,
  },
});

/** A line with each hand, one of them with a rhythm in it. */
const lines: Bout[] = (['right', 'left'] as const).map((hand) => ({
  hand,
  plan: {
    task: 'line',
    from,
    steps: [{ kind: 'stroke', dx: 130, dy: 2, seconds: 8, law: 'sine' }],
    pressure: (seconds) => 0.4 + 0.02 * Math.sin(seconds),
    ...(hand === 'right' ? { tremor: { hz: 4.8, amplitudeMm: 0.5 } } : {}),
  },
}));

/** Three rows of loops, because repeats tell how much a hand varies. */
const boutsOf = ({ shrinkPerStroke, rhythmToo }: NonNullable<DemoVisit['ink']>): Bout[] => [
  ...[1, 0.97, 1.02].map((size) => loops(shrinkPerStroke, HEIGHT_MM * size)),
  ...(rhythmToo ? lines : []),
];

/** One sample taken with a pen in the window, all of it invented: our own pen model moved the pen. */
export function inventedInk(
  caseload: Caseload,
  clientId: string,
  visitId: string,
  doing: Doing,
  of: NonNullable<DemoVisit['ink']>,
): void {
  const takenAt = new Date(Date.parse(doing.at) - 10 * 60_000).toISOString();
  const sample: Omit<Sample, 'at' | 'by'> = {
    id: randomUUID(),
    clientId,
    visitId,
    takenAt,
    task: { kind: 'repeated-letter', textCodes: [], text: '', spellingNoted: false },
    conditions: {
      ...noConditions,
      hand: 'right',
      pen: 'pen of the screen',
      paper: 'On the glass of a screen',
      cue: 'none',
    },
    fatigueBefore: null,
    fatigueAfter: null,
    painBefore: null,
    painAfter: null,
    seconds: null,
    baseline: false,
    typed: {},
    note: 'Invented pen motion, made by the pen model of this program.',
  };
  caseload.put('sample', sample, doing);
  for (const [order, { hand, plan }] of boutsOf(of).entries()) {
    const ink = inkOf(plan, { rateHz: 200, noiseMm: 0.02, seed: 40 + order });
    const blob = caseload.putBlob(clientId, 'application/x-pen-samples', packSamples(penEvents(ink, PX_PER_MM)), doing);
    const recording: Omit<InkRecording, 'at' | 'by'> = {
      ...nothingWritten(),
      id: randomUUID(),
      clientId,
      visitId,
      sampleId: sample.id,
      order,
      task: plan.task,
      hand,
      blob: blob.id,
      sha256: blob.sha256,
      mime: 'application/x-pen-samples',
      startedAt: new Date(Date.parse(takenAt) + order * 60_000).toISOString(),
      pointerType: 'pen',
      surface: 'screen',
      device: 'Invented pen',
      screen: { width: 1366, height: 768, devicePixelRatio: 1 },
      scale: { pxPerMmX: PX_PER_MM, pxPerMmY: PX_PER_MM, source: 'card', at: takenAt },
      measured: { method: INK_METHOD, told: measureInk({ ...ink, task: plan.task }) as unknown as InkTold },
    };
    caseload.put('inkRecording', recording, doing);
  }
}
