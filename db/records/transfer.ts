/** One client out of a caseload and into another, facts exactly as they are: ids, times and initials stay. */
import type { Doing } from '../caseload.ts';
import type { BlobInfo } from '../caseload-rows.ts';
import { CaseloadError } from '../codes.ts';
import type { Db } from '../connection.ts';
import { guarded } from '../errors.ts';
import { ClientExport, type ExportedPicture } from '../types/client-export.ts';
import type { Fact, FactKind } from '../types/record.ts';
import { checksumOf, LARGEST_BLOB } from './blobs.ts';
import { readClientRecord } from './client-record.ts';
import { allKinds, clientOf, homes, pictureIds, picturesOfFact } from './kinds.ts';
import { bodyOf, newStep, refuseOthersId, setBody } from './store.ts';
import { append } from './trail.ts';

/** Pictures and PDFs that facts of the client name, in a lasting order. */
function picturesOf(db: Db, clientId: string): ExportedPicture[] {
  return db
    .prepare(
      `SELECT id, sha256, mime, size AS bytes FROM blob WHERE id IN (${pictureIds('client_id = @id')}) ORDER BY id`,
    )
    .all({ id: clientId }) as ExportedPicture[];
}

/** @throws not-found, damaged */
export function exportClient(db: Db, clientId: string, at: string): ClientExport {
  const record = readClientRecord(db, clientId);
  return { format: 'fairhand-client', version: 1, exportedAt: at, record, pictures: picturesOf(db, clientId) };
}

/** Facts of a record, parents before children. */
function factsOf(record: ClientExport['record']): [FactKind, Fact][] {
  return allKinds.flatMap((kind) => {
    const { list } = homes[kind];
    return list === null
      ? [[kind, record.client] as [FactKind, Fact]]
      : record[list].map((f): [FactKind, Fact] => [kind, f]);
  });
}

/**
 * An export read and judged, before anything is written. Everything in it belongs to its one client, every id is
 * there once, and every picture that a fact names is listed.
 * @throws malformed-request, naming the field
 */
export function readExport(value: unknown): ClientExport {
  const parsed = ClientExport.safeParse(value);
  if (!parsed.success) {
    throw new CaseloadError('malformed-request', parsed.error.issues[0]?.path.map(String).join('.') || 'format');
  }
  const { record, pictures } = parsed.data;
  const ids = new Set<string>();
  const listed = new Set(pictures.map((each) => each.id));
  for (const [kind, fact] of factsOf(record)) {
    if (ids.has(fact.id)) throw new CaseloadError('malformed-request', `${kind}.id`);
    ids.add(fact.id);
    if (clientOf(kind, fact) !== record.client.id) throw new CaseloadError('malformed-request', `${kind}.clientId`);
  }
  if (factsOf(record).some(([kind, fact]) => picturesOfFact(kind, fact).some((id) => !listed.has(id))))
    throw new CaseloadError('malformed-request', 'pictures');
  return parsed.data;
}

/**
 * Brings an exported client in: one transaction, one step that undo takes back (the pictures stay until erased).
 * @param bytesOf the original bytes of a picture
 * @throws code-taken when the client or the code is here already; malformed-request when a picture does not fit its
 * checksum or a fact points at nothing; disk-full
 */
export function importClient(
  db: Db,
  exported: ClientExport,
  bytesOf: (id: string) => Uint8Array | null,
  doing: Doing,
): BlobInfo['clientId'] {
  const { record, pictures } = exported;
  const clientId = record.client.id;
  const step = newStep(doing, 'import');
  guarded(() =>
    db
      .transaction(() => {
        for (const [kind, fact] of factsOf(record)) {
          if (bodyOf(db, kind, fact.id) !== null) throw new CaseloadError('code-taken');
        }
        for (const picture of pictures) importPicture(db, clientId, picture, bytesOf(picture.id), doing, step.step);
        for (const [kind, fact] of factsOf(record)) setBody(db, kind, fact.id, JSON.stringify(fact), step);
      })
      .immediate(),
  );
  return clientId;
}

/** Keeps the bytes of a listed picture. @throws malformed-request when they do not fit; code-taken */
export function importPicture(
  db: Db,
  clientId: string,
  picture: ExportedPicture,
  data: Uint8Array | null,
  doing: Doing,
  step: string,
): void {
  const { id, sha256, mime, bytes } = picture;
  const fits = data !== null && data.byteLength === bytes && bytes <= LARGEST_BLOB && checksumOf(data) === sha256;
  if (!fits) throw new CaseloadError('malformed-request', 'pictures');
  const known = db.prepare('SELECT sha256 FROM blob WHERE id = ?').pluck().get(id) as string | undefined;
  if (known !== undefined) {
    // Left over from an import that was undone.
    if (known !== sha256) throw new CaseloadError('code-taken');
    return;
  }
  refuseOthersId(db, 'blob', id);
  db.prepare(
    `INSERT INTO blob (id, client_id, sha256, mime, size, at, by, bytes)
     VALUES (@id, @clientId, @sha256, @mime, @bytes, @at, @by, @data)`,
  ).run({ id, clientId, sha256, mime, bytes, ...doing, data });
  const after = JSON.stringify({ sha256, mime, bytes });
  append(db, { clientId, kind: 'blob', factId: id, action: 'import', step, before: null, after }, doing);
}
