/** Builds a caseload file from a backup and compares it with what the backup says; runs in the worker. */
import { rmSync } from 'node:fs';
import { z } from 'zod';
import { CaseloadError } from '../../../db/codes.ts';
import { checkFile, closeFile, createFile } from '../../../db/connection.ts';
import {
  dump,
  dumpRows,
  load,
  loadWithoutBytes,
  manifestOf,
  picturesOf,
  sameCounts,
  sumsOf,
  type Manifest,
} from '../../../db/dump.ts';
import { companions, syncFile } from '../../../db/files.ts';
import { migrate, readMigrations } from '../../../db/migrate.ts';
import { LARGEST_BLOB } from '../../../db/records/blobs.ts';
import { verifyTrail } from '../../../db/records/trail.ts';
import { Refusal } from '../../contract/envelope.ts';
import { decrypted, readManifest, type Container } from './container.ts';
import { missingIn, PICTURES, storedBytes, StoredPicture } from './picture-store.ts';
import { readTar, TarError } from './tar.ts';

export interface UnpackJob {
  container: Container;
  identity: Uint8Array;
  /** The file to build; encrypted with the same key. What lies there is replaced. */
  scratch: string;
  /** Folder of the pictures that are kept apart; null: they are in the file itself. */
  pictures?: string | null;
  /** The file is only compared and then removed: it gets no picture. What is kept apart was compared when it was stored. */
  comparing?: boolean;
}

const Pictures = z.array(StoredPicture);
const Sums = z.record(z.string(), z.string());
type Db = ReturnType<typeof createFile>;

interface Filled {
  sums: Record<string, string>;
  apart: boolean;
}

/** The pictures that are kept apart. @throws Refusal backup-pictures-missing, not-a-backup */
async function fillPictures(
  db: Db,
  { pictures, identity, comparing }: UnpackJob,
  listed: readonly StoredPicture[],
  waiting: Map<string, Record<string, unknown>>,
): Promise<void> {
  if (!pictures || missingIn(pictures, listed).length > 0) throw new Refusal('backup-pictures-missing');
  const fits = (one: StoredPicture) => waiting.get(one.id)?.['sha256'] === one.sha256;
  if (listed.length !== waiting.size || !listed.every(fits)) throw new TarError('a picture is not in the list');
  if (comparing) return loadWithoutBytes(db, waiting);
  for (const picture of listed) {
    const data = await storedBytes(pictures, picture, identity);
    load(db, { name: `blobs/${picture.id}`, data }, waiting);
  }
}

async function fill(db: Db, job: UnpackJob, progress: (done: number) => void): Promise<Filled> {
  const { container, identity } = job;
  const waiting = new Map<string, Record<string, unknown>>();
  let sums: Record<string, string> | null = null;
  let apart: StoredPicture[] | null = null;
  let done = 0;
  for await (const entry of readTar(decrypted(container, container.caseload, identity), LARGEST_BLOB)) {
    done += entry.data.length;
    progress(Math.min(1, done / container.caseload.size));
    if (sums !== null) throw new TarError('more after the end');
    if (entry.name === 'sums.json') sums = Sums.parse(JSON.parse(entry.data.toString('utf8')));
    else if (entry.name === PICTURES) apart = Pictures.parse(JSON.parse(entry.data.toString('utf8')));
    else load(db, entry, waiting, !job.comparing);
  }
  if (sums !== null && apart !== null) await fillPictures(db, job, apart, waiting);
  if (sums === null || waiting.size > 0) throw new TarError('a part is missing');
  return { sums, apart: apart !== null };
}

function compare(db: Db, manifest: Manifest, { sums, apart }: Filled, comparing: boolean): void {
  const now = manifestOf(db, manifest.at);
  // Pictures that are kept apart, or left out here, were compared one by one with the sum in their row.
  const found = sumsOf(apart || comparing ? dumpRows(db) : dump(db));
  if (!apart && comparing) for (const { id, sha256 } of picturesOf(db)) found[`blobs/${id}`] = sha256;
  const same =
    sameCounts(now.counts, manifest.counts) &&
    now.trailHead === manifest.trailHead &&
    JSON.stringify(Object.entries(found).sort()) === JSON.stringify(Object.entries(sums).sort());
  if (!same || checkFile(db, true) !== 'ok' || !verifyTrail(db).whole) throw new Refusal('not-a-backup');
}

/**
 * Unpacks into `scratch` at the backup's own version, compares counts, checksums, references and the trail, then
 * migrates to the newest version. @throws Refusal not-a-backup, wrong-passphrase, newer-version, disk-full
 */
export async function unpack(job: UnpackJob, progress: (done: number) => void): Promise<Manifest> {
  const manifest = await readManifest(job.container, job.identity);
  const migrations = readMigrations();
  if (manifest.schema > migrations.length) throw new Refusal('newer-version');
  for (const file of companions(job.scratch)) rmSync(file, { force: true });
  const db = createFile(job.scratch, job.identity);
  try {
    const stamp = manifest.at.replace(/[-:]/g, '');
    migrate(db, null, stamp, migrations, manifest.schema);
    // The file counts only when it is whole and synced: until then speed matters, not every commit.
    db.pragma('synchronous = OFF');
    db.pragma('foreign_keys = OFF');
    compare(db, manifest, await fill(db, job, progress), job.comparing ?? false);
    migrate(db, null, stamp, migrations);
  } catch (error) {
    db.close();
    for (const file of companions(job.scratch)) rmSync(file, { force: true });
    throw asRefusal(error);
  }
  closeFile(db);
  syncFile(job.scratch);
  return manifest;
}

/** What a backup file can do wrong is 'not-a-backup'; a full disk is not its fault. */
function asRefusal(error: unknown): unknown {
  if (error instanceof Refusal) return error;
  const wrong = error instanceof TarError || error instanceof SyntaxError || error instanceof z.ZodError;
  if (wrong || error instanceof CaseloadError) return new Refusal('not-a-backup');
  const code = (error as { code?: unknown }).code;
  if (typeof code === 'string' && /^SQLITE_(CONSTRAINT|ERROR|MISMATCH|TOOBIG)/.test(code)) {
    return new Refusal('not-a-backup');
  }
  return error;
}
