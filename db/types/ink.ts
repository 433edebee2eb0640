import { z } from 'zod';
import { factFields, Hand, Id, IsoDateTime, Line } from './common.ts';

export const InkTaskKind = z.enum(['writing', 'loops', 'line', 'spiral', 'hold']);
export type InkTaskKind = z.infer<typeof InkTaskKind>;

/** What the pen wrote on; ink of one surface is never compared with ink of another, nor with paper. */
export const InkSurface = z.enum(['screen', 'screen-film', 'tablet-paper', 'tablet-blind']);
export type InkSurface = z.infer<typeof InkSurface>;

/** Millimeters of the surface, told by a card, a ruler or the maker's size of a tablet, set twice. */
export const InkScale = z.object({
  pxPerMmX: z.number().positive().max(200),
  pxPerMmY: z.number().positive().max(200),
  source: z.enum(['card', 'ruler', 'tablet-area', 'file']),
  at: IsoDateTime,
});
export type InkScale = z.infer<typeof InkScale>;

export const InkScreen = z.object({
  width: z.number().positive(),
  height: z.number().positive(),
  devicePixelRatio: z.number().positive(),
});
export type InkScreen = z.infer<typeof InkScreen>;

/** The pen device of this computer, as it was set up last: a setting of the clinic, not of a client. */
export const InkDevice = z.object({ device: Line, surface: InkSurface, screen: InkScreen, scale: InkScale });
export type InkDevice = z.infer<typeof InkDevice>;

/** Help that was shown while writing; a cued line is practice, never a retest. */
export const InkCues = z.object({
  bandMm: z.number().min(1).max(40).nullable(),
  stopMarks: z.boolean(),
  paceHz: z.number().min(0.3).max(2).nullable(),
  sound: z.boolean(),
  sizes: z.boolean(),
});
export type InkCues = z.infer<typeof InkCues>;

/** One bout of pen motion. Raw samples lie in `blob`, unchanged; `blob` is null while it is being written. */
export const InkRecording = z.object({
  ...factFields,
  clientId: Id,
  visitId: Id,
  sampleId: Id,
  order: z.number().int().min(0).max(50),
  task: InkTaskKind,
  /** Tremor tasks are done with either hand. */
  hand: Hand,
  blob: Id.nullable(),
  sha256: z
    .string()
    .regex(/^[0-9a-f]{64}$/)
    .nullable(),
  mime: z.enum(['application/x-pen-samples', 'application/inkml+xml']),
  startedAt: IsoDateTime,
  pointerType: z.enum(['pen', 'touch', 'mouse', 'unknown']),
  surface: InkSurface,
  /** The device as the therapist calls it: a part of what is compared. */
  device: Line,
  screen: InkScreen,
  scale: InkScale.nullable(),
  cues: InkCues.nullable(),
  palmTouches: z.number().int().min(0),
  cancelled: z.number().int().min(0),
  /** Started over: kept, never measured against others. */
  abandoned: z.boolean(),
  /** What the therapist noted without stopping, ms from the start. */
  notes: z
    .array(z.object({ atMs: z.number().min(0), kind: z.enum(['cue', 'slipped', 'tired', 'pain', 'line']) }))
    .max(500),
});
export type InkRecording = z.infer<typeof InkRecording>;
