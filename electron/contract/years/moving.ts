/** From one laptop to another: everything as one encrypted file, and an old laptop that says that it was moved. */
import { z } from 'zod';
import { IsoDate, Note } from '../../../db/types/common.ts';
import { AppStatus, Passphrase } from '../app.ts';
import { nothing, write } from '../request.ts';

export const movingRequests = {
  /** Writes the file into a folder, reads it back, and the sheet of what to do beside it; then marks this caseload. */
  'moving.write': write(
    z.object({ folder: z.string().max(1000), sheet: Note }).strict(),
    z.object({
      file: z.string(),
      bytes: z.number().int(),
      clients: z.number().int(),
      lastVisit: IsoDate.nullable(),
      entries: z.number().int(),
    }),
  ),
  /** The work goes on here after all: the mark is taken back. */
  'moving.stay': write(nothing, AppStatus),
  /** Deletes the caseload of a laptop that was moved, with its backups, copies and exports. */
  'moving.eraseHere': write(z.object({ passphrase: Passphrase }).strict(), AppStatus),
} as const;
