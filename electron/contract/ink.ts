/** Pen motion: kept in pieces while it is written, finished into one blob, measured anew from it each time. */
import { z } from 'zod';
import { Id } from '../../db/types/common.ts';
import { InkDevice, InkRecording, InkSurface, Sample, SamplePage } from '../../db/types/sample.ts';
import { nothing, read, save, write } from './request.ts';

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
  /** Measures a finished recording anew, in a worker, and keeps what the engine told with its method. */
  'ink.measure': write(z.object({ recordingId: Id }).strict(), InkRecording),
  /** Saves the recording as InkML where the therapist chooses; nothing in it names the client. */
  'ink.export': read(z.object({ recordingId: Id }).strict(), z.object({ saved: z.boolean() })),
} as const;
