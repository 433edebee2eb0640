/** Printed pages. The preview in the window is what prints. */
import { z } from 'zod';
import { Id } from '../../db/types/common.ts';
import { IssuedPage, PageKind } from '../../db/types/page.ts';
import { nothing, read, save, write } from './request.ts';

/** The page that the print view shows, for the print gate; null = a view without practice (picture, chart, referral). */
const ShownPage = z.object({ clientId: Id, visitId: Id, model: z.json() }).strict().nullable();

const PaperSize = z.enum(['A4', 'Letter']);

export const pageRequests = {
  /** Words typed for the pages of a visit. */
  'pages.draft': save('pageDraft'),
  /** Saves what the window's print view shows as PDF, where the user chooses. Nothing is kept. */
  'pages.savePdf': read(
    z.object({ name: z.string().max(80), paper: PaperSize, page: ShownPage }).strict(),
    z.object({ saved: z.boolean() }),
  ),
  /** The print dialog of the system. */
  'pages.print': read(z.object({ page: ShownPage }).strict(), nothing),
  /** Freezes a page: its model as shown and the PDF of the print view. */
  'pages.issue': write(
    z.object({ id: Id, clientId: Id, visitId: Id, kind: PageKind, model: z.json(), paper: PaperSize }).strict(),
    IssuedPage,
  ),
  /** Saves a text (note, CSV) where the user chooses. */
  'pages.saveText': read(
    z.object({ name: z.string().max(80), text: z.string().max(2_000_000) }).strict(),
    z.object({ saved: z.boolean() }),
  ),
} as const;
