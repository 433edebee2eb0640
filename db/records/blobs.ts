/** Original bytes of pictures and PDFs, kept with their checksum. */
import { createHash, randomUUID } from 'node:crypto';
import type { Doing } from '../caseload.ts';
import type { BlobInfo } from '../caseload-rows.ts';
import { CaseloadError } from '../codes.ts';
import type { Db } from '../connection.ts';
import { guarded } from '../errors.ts';
import { append } from './trail.ts';

/** Bytes of one picture or PDF. */
export const LARGEST_BLOB = 200 * 1024 * 1024;

const columns = 'id, client_id AS clientId, sha256, mime, size AS bytes';

export const checksumOf = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');

/** Keeps bytes; the same bytes of one client are kept once. @throws not-found, too-large, malformed-request */
export function putBlob(db: Db, clientId: string, mime: string, data: Uint8Array, doing: Doing): BlobInfo {
  if (data.byteLength === 0 || !/^[a-z]+\/[a-z0-9.+-]+$/.test(mime)) throw new CaseloadError('malformed-request', mime);
  if (data.byteLength > LARGEST_BLOB) throw new CaseloadError('too-large');
  const sha256 = checksumOf(data);
  return guarded(() =>
    db
      .transaction(() => {
        const known = db
          .prepare(`SELECT ${columns} FROM blob WHERE client_id = ? AND sha256 = ?`)
          .get(clientId, sha256) as BlobInfo | undefined;
        if (known) return known;
        if (!db.prepare('SELECT 1 FROM client WHERE id = ?').get(clientId)) {
          throw new CaseloadError('not-found', 'client');
        }
        const info: BlobInfo = { id: randomUUID(), clientId, sha256, mime, bytes: data.byteLength };
        db.prepare(
          `INSERT INTO blob (id, client_id, sha256, mime, size, at, by, bytes)
           VALUES (@id, @clientId, @sha256, @mime, @bytes, @at, @by, @data)`,
        ).run({ ...info, ...doing, data });
        const after = JSON.stringify({ sha256, mime, bytes: info.bytes });
        const step = randomUUID();
        append(db, { clientId, kind: 'blob', factId: info.id, action: 'create', step, before: null, after }, doing);
        return info;
      })
      .immediate(),
  );
}

/** @throws damaged when the bytes do not fit their checksum */
export function readBlob(db: Db, id: string): (BlobInfo & { data: Buffer }) | null {
  return guarded(() => {
    const row = db
      .prepare(`SELECT id, client_id AS clientId, sha256, mime, bytes AS data FROM blob WHERE id = ?`)
      .get(id) as (Omit<BlobInfo, 'bytes'> & { data: Buffer }) | undefined;
    if (!row) return null;
    if (checksumOf(row.data) !== row.sha256) throw new CaseloadError('damaged', 'blob');
    return { ...row, bytes: row.data.byteLength };
  });
}

/** How many pictures do not fit their checksum. Reads all of them: long, for a worker. */
export function countBadBlobs(db: Db): number {
  const bytes = db.prepare('SELECT bytes FROM blob WHERE id = ?').pluck();
  const blobs = db.prepare('SELECT id, sha256 FROM blob').all() as { id: string; sha256: string }[];
  return blobs.filter(({ id, sha256 }) => checksumOf(bytes.get(id) as Buffer) !== sha256).length;
}
