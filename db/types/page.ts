import { z } from 'zod';
import { factFields, Id, IsoDateTime } from './common.ts';

export const PageKind = z.enum([
  'family-summary',
  'visit-note',
  'home-program',
  'practice-pages',
  'referral',
  'letter',
  'progress-report',
  'discharge',
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
