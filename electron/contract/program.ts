/** Home programs, the practice logs that come back, and pages of ours that are read from a scan or photo. */
import { z } from 'zod';
import { Id, IsoDate } from '../../db/types/common.ts';
import { PracticePage, Program } from '../../db/types/program.ts';
import { read, save, write } from './request.ts';

const Picture = z.object({ clientId: Id, token: z.string().max(80), pdfPage: z.number().int().min(1).max(500) });

/** A field of a log: what is marked, null = nothing; doubtful ones with their picture, a PNG as base64. */
const SeenField = z.object({
  row: z.number().int(),
  field: z.enum(['done', 'minutes', 'before', 'after', 'pain', 'felt']),
  value: z.number().nullable(),
  doubt: z.boolean(),
  picture: z.string().max(400_000).nullable(),
});

/** What a picture of one of our pages holds. Nothing of it is kept before it is confirmed. */
const ReturnedPage = z.discriminatedUnion('kind', [
  z.object({
    kind: z.literal('not-read'),
    why: z.enum(['edge-cut', 'mirrored', 'no-marks', 'no-code', 'unreadable', 'other-layout']),
  }),
  /** Of another client, by the code that the therapist gave; '' = of nobody in this caseload. */
  z.object({ kind: z.literal('of-another'), code: z.string() }),
  z.object({ kind: z.literal('log'), firstDay: IsoDate, few: z.boolean(), fields: z.array(SeenField) }),
  z.object({
    kind: z.literal('practice'),
    madeOn: IsoDate,
    sheet: z.number().int(),
    title: z.string(),
    /** The page is kept as issued, so that its print can be told from writing. */
    known: z.boolean(),
    /** It was read in before, for this day. */
    keptFor: IsoDate.nullable(),
    lines: z.number().int(),
    words: z.number().int(),
  }),
]);

export const programRequests = {
  /** Saves a draft; an approved program is frozen. */
  'program.save': save('program'),
  /** Re-derives open flags and vetoes from the stored facts before it freezes the program. */
  'program.approve': write(z.object({ id: Id }).strict(), Program),
  'practice.save': save('practiceLog'),
  /** Whose page a picture shows, which, and what is marked or written on it. Keeps nothing. */
  'practice.recognize': read(Picture.strict(), ReturnedPage),
  /** Keeps a practice page with what was measured on it, as practice. */
  'practice.keepPage': write(Picture.extend({ id: Id, date: IsoDate }).strict(), PracticePage),
} as const;
