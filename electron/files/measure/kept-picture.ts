import { createHash } from 'node:crypto';
import type { Writer } from '../../../db/caseload-rows.ts';
import type { SamplePage } from '../../../db/types/sample.ts';
import { MIME_OF } from '../decode/picture-header.ts';
import type { PageLook, ShownPage } from './page-job.ts';

/** What a fact keeps of a picture or a page of a PDF. */
type KeptPicture = Pick<
  SamplePage,
  'blob' | 'view' | 'pdfPage' | 'sha256' | 'mime' | 'bytes' | 'widthPx' | 'heightPx' | 'fileDpi'
>;

/**
 * Stores a file as it came and, where the window cannot show it, a picture of it.
 * @param shown null: the window shows the file itself
 */
export function keepPicture(
  write: Pick<Writer, 'putBlob'>,
  clientId: string,
  { bytes, pdfPage, look, shown }: { bytes: Uint8Array; pdfPage: number; look: PageLook; shown: ShownPage | null },
): KeptPicture {
  const mime = MIME_OF[look.format];
  const blob = write.putBlob(clientId, mime, bytes).id;
  return {
    blob,
    view: shown ? write.putBlob(clientId, shown.mime, shown.bytes).id : blob,
    pdfPage,
    sha256: createHash('sha256').update(bytes).digest('hex'),
    mime,
    bytes: bytes.byteLength,
    widthPx: look.width,
    heightPx: look.height,
    fileDpi: look.fileDpi,
  };
}
