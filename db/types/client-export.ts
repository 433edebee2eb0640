/** One client's record as it leaves the program: the published shape (client-export.schema.json is made of it). */
import { z } from 'zod';
import { Id, IsoDateTime } from './common.ts';
import { ClientRecord } from './record.ts';

export const ExportedPicture = z.object({
  id: Id,
  sha256: z.string().regex(/^[0-9a-f]{64}$/),
  mime: z.string().regex(/^[a-z]+\/[a-z0-9.+-]+$/),
  /** Size of the original bytes. */
  bytes: z.number().int().positive(),
});
export type ExportedPicture = z.infer<typeof ExportedPicture>;

export const ClientExport = z.object({
  format: z.literal('fairhand-client'),
  version: z.literal(1),
  exportedAt: IsoDateTime,
  record: ClientRecord,
  /** Pictures and PDFs that the record names; their bytes lie beside this file as pictures/<id>. */
  pictures: z.array(ExportedPicture).max(5000),
});
export type ClientExport = z.infer<typeof ClientExport>;

/** JSON Schema (draft 2020-12) of the export, for whoever reads one without Fairhand. */
export const clientExportSchema = (): unknown => ({
  title: 'One client of a Fairhand caseload',
  ...z.toJSONSchema(ClientExport),
});
