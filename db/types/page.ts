import { z } from 'zod';
import { factFields, Id, IsoDate, IsoDateTime, Line, Note } from './common.ts';

export const PageKind = z.enum([
  'family-summary',
  'visit-note',
  'home-program',
  'practice-pages',
  'referral',
  'letter',
  'progress-report',
  'discharge',
  'initial-evaluation',
  'caregiver',
  'spiral-sheet',
]);
export type PageKind = z.infer<typeof PageKind>;

/** A page as it was issued: its model as shown, and the PDF's blob where one was made. Never changed afterwards. */
export const IssuedPage = z.object({
  ...factFields,
  clientId: Id,
  visitId: Id,
  kind: PageKind,
  issuedAt: IsoDateTime,
  /** The page model as shown, with rule ids and versions. */
  model: z.json(),
  pdf: Id.nullable(),
});
export type IssuedPage = z.infer<typeof IssuedPage>;

/** What the therapist typed or chose for the pages of a visit that is no fact elsewhere; '' where nothing was. */
export const PageWords = z.object({
  family: z.object({
    /** Hours of the day. */
    when: Line,
    /** Printed instead of the standard line. */
    bring: Line,
    /** A sentence of the therapist's own about this visit. */
    ownWords: Note,
  }),
  letter: z.object({
    to: Line,
    question: Note,
    /** What the therapist makes of it. */
    opinion: Note,
    falls: Line,
    lastInjection: z.union([IsoDate, z.literal('')]),
  }),
  report: z.object({
    /** First day of the interval; '' = the day of the last report. */
    from: z.union([IsoDate, z.literal('')]),
    skilled: Note,
    plan: Note,
    coSign: z.boolean(),
  }),
  referral: z.object({ to: Line, lastWell: Line, ownWords: Note }),
  /** At the top of the home program. */
  programWords: Note,
});
export type PageWords = z.infer<typeof PageWords>;

/** A page whose words were changed in place: its model as changed, and a digest of what it was made from. */
const ChangedPage = z.object({ model: z.json(), builtFrom: z.string().max(20) });

/** Words for the pages of one visit that are not issued yet. */
export const PageDraft = z.object({
  ...factFields,
  clientId: Id,
  visitId: Id,
  words: PageWords,
  changed: z.partialRecord(PageKind, ChangedPage),
});
export type PageDraft = z.infer<typeof PageDraft>;

/** What is printed on a practice page to write on. */
export type RulingKind =
  'squares' | 'dashed' | 'ruled' | 'plain' | 'guide' | 'boxes' | 'signature' | 'dots' | 'lean' | 'check';
