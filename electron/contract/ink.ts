/** Pen motion: kept in pieces while it is written, finished into one blob, measured anew from it each time. */
import { z } from 'zod';
import { Id } from '../../db/types/common.ts';
import { InkDevice, InkRecording, InkSurface, InkTaskKind, Sample, SamplePage } from '../../db/types/sample.ts';
import { nothing, read, save, write } from './request.ts';

const Span = z.object({ fromS: z.number(), toS: z.number() });

/** What the engine tells of a recording (renderer/ink); derived, never stored. */
export const InkAnswer = z.looseObject({
  source: z.looseObject({ task: InkTaskKind, contacts: z.number(), samples: z.number() }),
  quality: z.looseObject({ verdict: z.enum(['good', 'limited', 'unusable']), rateHz: z.number().nullable() }),
  measures: z.array(
    z.looseObject({
      code: z.string(),
      value: z.number().nullable(),
      unit: z.string(),
      n: z.number(),
      low: z.number().nullable(),
      high: z.number().nullable(),
      method: z.string(),
      reliable: z.boolean(),
      why: z.string().nullable(),
    }),
  ),
  tremor: z.looseObject({
    frequencyHz: z.number().nullable(),
    amplitudeRmsMm: z.number().nullable(),
    reason: z.string().nullable(),
  }),
  stops: z.array(Span),
  pauses: z.array(Span),
  warnings: z.array(z.object({ code: z.string(), message: z.string() })),
});
export type InkAnswer = z.infer<typeof InkAnswer>;

export const inkRequests = {
  /** The pen device of this computer; null before it was set up. */
  'ink.device': read(nothing, z.object({ device: InkDevice.nullable() })),
  'ink.setDevice': write(z.object({ device: InkDevice }).strict(), z.object({ device: InkDevice })),
  /** Begins a recording, or changes what is noted of it; its samples are never touched by this. */
  'ink.save': save('inkRecording'),
  /** The next samples, packed as renderer/ink packs them, in base64: about one second of writing. */
  'ink.append': write(
    z.object({ recordingId: Id, seq: z.number().int().min(0).max(100_000), bytes: z.base64().max(1_400_000) }).strict(),
    z.object({}).strict(),
  ),
  /** Closes a recording: samples into one blob, the ink drawn as a page of the sample where there is a scale. */
  'ink.finish': write(
    z.object({ recordingId: Id, palmTouches: z.number().int().min(0), cancelled: z.number().int().min(0) }).strict(),
    z.object({ recording: InkRecording, page: SamplePage.nullable(), sample: Sample }),
  ),
  /** Brings an InkML file in as a recording of a sample. */
  'ink.import': write(
    z
      .object({ id: Id, sampleId: Id, token: z.string().max(80), surface: InkSurface, device: z.string().max(300) })
      .strict(),
    z.object({ recording: InkRecording, page: SamplePage.nullable(), sample: Sample }),
  ),
  'ink.measure': read(z.object({ recordingId: Id }).strict(), InkAnswer),
  /** Saves the recording as InkML where the therapist chooses; nothing in it names the client. */
  'ink.export': read(z.object({ recordingId: Id }).strict(), z.object({ saved: z.boolean() })),
} as const;
