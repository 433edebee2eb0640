/** Printed pages. The preview in the window is what prints. */
import { z } from 'zod';
import { Id } from '../../db/types/common.ts';
import { IssuedPage, PageKind } from '../../db/types/page.ts';
import { nothing, read, save, write } from './request.ts';

const PaperSize = z.enum(['A4', 'Letter']);

export const pageRequests = {
  /** Words typed for the pages of a visit. */
  'pages.draft': save('pageDraft'),
  /** Saves what the window's print view shows as PDF, where the user chooses. Nothing is kept. */
  'pages.savePdf': read(
    z.object({ name: z.string().max(80), paper: PaperSize }).strict(),
    z.object({ saved: z.boolean() }),
  ),
  /** The print dialog of the system. */
  'pages.print': read(nothing, nothing),
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
