/**
 * Shapes that every stored fact shares. Units are in the names or noted beside them;
 * dates are ISO 8601, stored as text.
 */
import { z } from 'zod';
import { NOTE_LENGTH } from './note-length.ts';

export const Id = z.uuid();
export type Id = z.infer<typeof Id>;

/** Calendar date, YYYY-MM-DD. */
export const IsoDate = z.iso.date();
/** Instant with offset, for example 2026-03-04T09:12:00.000Z. */
export const IsoDateTime = z.iso.datetime({ offset: true });
/** Clock time, HH:MM. */
export const ClockTime = z.string().regex(/^([01]\d|2[0-3]):[0-5]\d$/);

export const Initials = z.string().trim().min(1).max(8);

/** Languages that Fairhand's own words stand in, on pages for the family and on the screens. */
export const Language = z.enum(['en', 'es', 'de']);
export type Language = z.infer<typeof Language>;

/** Of the screens; 'long' is no language: English, stretched, for tests of what a longer one does to a screen. */
export const ScreenLanguage = z.enum([...Language.options, 'long']);
export type ScreenLanguage = z.infer<typeof ScreenLanguage>;

/** Free text of one line or a short paragraph; never parsed. */
export const Line = z.string().max(300);
export const Note = z.string().max(NOTE_LENGTH);

export const Hand = z.enum(['right', 'left']);
export type Hand = z.infer<typeof Hand>;
export const Side = z.enum(['right', 'left', 'both', 'none']);
export type Side = z.infer<typeof Side>;

/** Screening scale: 3 no difficulty, 2 mild, 1 marked, 0 cannot. */
export const Grade = z.union([z.literal(0), z.literal(1), z.literal(2), z.literal(3)]);
export type Grade = z.infer<typeof Grade>;

/** Numeric rating 0 to 10 said by the client (fatigue, pain). */
export const ZeroToTen = z.number().int().min(0).max(10);

/** Where a value or rule comes from; printed and shown beside it. */
export const SourceTag = z.enum([
  'published', // abstract, table, standard summary or independent public reproduction seen
  'published-from-memory', // published, citation or number from memory
  'common-practice', // common practice, no source
  'from-memory',
  'computed', // computed for this program
  'clinic', // set by this clinic
]);
export type SourceTag = z.infer<typeof SourceTag>;

/** Recorded by an assistant or student: waits until somebody else co-signs it. */
export const CoSign = z.object({
  recordedBy: Initials,
  signedBy: Initials.nullable(),
  signedAt: IsoDateTime.nullable(),
});
export type CoSign = z.infer<typeof CoSign>;

/** What every stored fact carries besides its own content. */
export const factFields = {
  id: Id,
  /** When it was last changed. */
  at: IsoDateTime,
  /** Initials of the therapist who changed it. */
  by: Initials,
};
