import { z } from 'zod';
import { factFields, Hand, Id, IsoDateTime } from './common.ts';
import { SamplePage } from './sample.ts';

const Told = z.number().nullable();

const DrawnSpiral = z.object({
  turns: Told,
  radialRmsMm: Told,
  radialRmsPercent: Told,
  swingsPerTurn: Told,
  swingsPerCm: Told,
  frequencyHz: Told,
  lengthMm: Told,
  fromPrintedRmsMm: Told,
  followed: z.array(z.number()).max(20_000),
  offsetsMm: z.array(z.number()).max(20_000),
  warnings: z.array(z.object({ code: z.string(), message: z.string() })),
});

/** Seconds of drawing, by stopwatch. */
export const SpiralTime = z.number().positive().max(600).nullable();

/** A printed sheet of two spirals as it came back: its picture, and what was measured with the method's version. */
export const SpiralSheet = z.object({
  ...factFields,
  clientId: Id,
  visitId: Id,
  sampleId: Id,
  takenAt: IsoDateTime,
  hand: Hand,
  tracedSeconds: SpiralTime,
  freeSeconds: SpiralTime,
  ...SamplePage.pick({
    blob: true,
    view: true,
    pdfPage: true,
    sha256: true,
    mime: true,
    bytes: true,
    widthPx: true,
    heightPx: true,
    fileDpi: true,
  }).shape,
  /** Answer of the engine (renderer/measure/spiral). */
  result: z.object({
    version: z.string().max(20),
    dpi: Told,
    scaleSource: z.string().nullable(),
    traced: DrawnSpiral.nullable(),
    free: DrawnSpiral.nullable(),
    warnings: z.array(z.object({ code: z.string(), message: z.string() })),
  }),
});
export type SpiralSheet = z.infer<typeof SpiralSheet>;
