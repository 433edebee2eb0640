/** Writing samples: facts, pages, scale, measuring. Picture bytes travel by /blob, never in a request. */
import { z } from 'zod';
import { Id } from '../../db/types/common.ts';
import { PageMeasurement, SamplePage, ScaleSource } from '../../db/types/sample.ts';
import { nothing, read, save, write } from './request.ts';

const Correction = z.looseObject({ kind: z.string().max(40) });

export const sampleRequests = {
  'sample.save': save('sample'),
  /** Adds a page whose bytes were put to /blob before (`token`), or that the open dialog gave. */
  'sample.addPage': write(
    z.object({ id: Id, sampleId: Id, token: z.string().max(80), pdfPage: z.number().int().min(1).max(500) }).strict(),
    SamplePage,
  ),
  'sample.setScale': write(
    z.object({ pageId: Id, pxPerMm: z.number().positive().max(200), source: ScaleSource }).strict(),
    SamplePage,
  ),
  /** Turns the picture by quarters so that the writing stands upright. */
  'sample.turn': write(
    z.object({ pageId: Id, quarterTurns: z.union([z.literal(0), z.literal(1), z.literal(2), z.literal(3)]) }).strict(),
    SamplePage,
  ),
  /** Measures in a worker; takes a second or two. */
  'sample.measure': write(
    z.object({ id: Id, pageId: Id, corrections: z.array(Correction).max(500) }).strict(),
    PageMeasurement,
  ),
  /** Grants the camera for the next picture, which the therapist asked for by a button. */
  'camera.allowOnce': read(nothing, nothing),
  'sample.cancelMeasure': read(z.object({ pageId: Id }).strict(), nothing),
} as const;
