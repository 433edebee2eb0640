/** Writes one backup file and reads it back; runs in the worker. */
import { Encrypter, identityToRecipient } from 'age-encryption';
import { createHash } from 'node:crypto';
import { closeSync, fsyncSync, openSync, rmSync, writeSync } from 'node:fs';
import { openReader } from '../../../db/connection.ts';
import { dump, manifestOf, type Manifest } from '../../../db/dump.ts';
import { caseloadFile, settle } from '../../../db/files.ts';
import { keyFileText, readKeyFile } from '../../../db/key-file.ts';
import { Refusal } from '../../contract/envelope.ts';
import { MEMBERS, openContainer, READ_ME } from './container.ts';
import { chunksOf, streamOf } from './streams.ts';
import { unpack } from './unpack.ts';
import { paddingAfter, tarEnd, tarHeader } from './tar.ts';

export interface WriteJob {
  folder: string;
  identity: Uint8Array;
  /** Final name; `.part` is appended until the backup was read back. */
  target: string;
  /** Scratch file inside the caseload folder for reading back; encrypted, removed afterwards. */
  scratch: string;
  /** ISO instant. */
  now: string;
}

export type Progress = (stage: 'writing' | 'checking', done: number) => void;

type Db = ReturnType<typeof openReader>;

/** The inner tar: every entry, and last their checksums. */
function* innerTar(db: Db, mtime: number, progress: (bytes: number) => void): Generator<Uint8Array> {
  const sums: Record<string, string> = {};
  const member = function* (name: string, data: Buffer): Generator<Uint8Array> {
    yield tarHeader(name, data.length, mtime);
    if (data.length > 0) yield data;
    yield Buffer.alloc(paddingAfter(data.length));
    progress(data.length);
  };
  for (const { name, data } of dump(db)) {
    sums[name] = createHash('sha256').update(data).digest('hex');
    yield* member(name, data);
  }
  yield* member('sums.json', Buffer.from(JSON.stringify(sums)));
  yield tarEnd();
}

async function writeParts(job: WriteJob, db: Db, handle: number, progress: Progress): Promise<Manifest> {
  const key = readKeyFile(job.folder);
  if (key.state !== 'ok') throw new Refusal('key-file-missing');
  const recipient = await identityToRecipient(Buffer.from(job.identity).toString('ascii'));
  const wraps = key.file.recipient === recipient ? key.file : key.file.outgoing;
  if (wraps === null) throw new Refusal('key-file-missing');
  const { format, version, at } = key.file;
  const keyText = keyFileText({
    format,
    version,
    at,
    recipient,
    passphrase: wraps.passphrase,
    recovery: wraps.recovery,
    outgoing: null,
  });
  const encrypter = new Encrypter();
  encrypter.addRecipient(recipient);

  const mtime = Date.parse(job.now) / 1000;
  let end = 0;
  const write = (bytes: Uint8Array): void => {
    for (let at = 0; at < bytes.length;) at += writeSync(handle, bytes, at, bytes.length - at, end + at);
    end += bytes.length;
  };
  const small = (name: string, data: Uint8Array): void => {
    write(tarHeader(name, data.length, mtime));
    write(data);
    write(Buffer.alloc(paddingAfter(data.length)));
  };
  const manifest = manifestOf(db, job.now);
  small(MEMBERS.readMe, Buffer.from(READ_ME));
  small(MEMBERS.key, Buffer.from(keyText));
  small(MEMBERS.manifest, await encrypter.encrypt(JSON.stringify(manifest)));

  const headerAt = end;
  write(Buffer.alloc(512));
  const start = end;
  const pages = db.pragma('page_count', { simple: true }) as number;
  const total = Math.max(1, pages * (db.pragma('page_size', { simple: true }) as number));
  let done = 0;
  const inner = streamOf(
    innerTar(db, mtime, (bytes) => {
      done += bytes;
      progress('writing', Math.min(1, done / total));
    }),
  );
  for await (const chunk of chunksOf(await encrypter.encrypt(inner))) write(chunk);
  // The size is known only now.
  const size = end - start;
  const header = tarHeader(MEMBERS.caseload, size, mtime);
  if (writeSync(handle, header, 0, header.length, headerAt) !== header.length) throw new Refusal('disk-full');
  write(Buffer.alloc(paddingAfter(size)));
  write(tarEnd());
  fsyncSync(handle);
  return manifest;
}

/**
 * Writes, reads back into a scratch file, compares counts and checksums; only then the file gets its name.
 * @throws Refusal disk-full, backup-unverified, key-file-missing; nothing is left under any name then
 */
export async function writeBackup(job: WriteJob, progress: Progress): Promise<Manifest> {
  const part = `${job.target}.part`;
  const db = openReader(caseloadFile(job.folder), job.identity);
  try {
    rmSync(part, { force: true });
    const handle = openSync(part, 'wx', 0o600);
    let manifest: Manifest;
    try {
      db.exec('BEGIN');
      manifest = await writeParts(job, db, handle, progress);
      db.exec('COMMIT');
    } finally {
      closeSync(handle);
    }
    const container = openContainer(part);
    await unpack({ container, identity: job.identity, scratch: job.scratch }, (done) => progress('checking', done));
    settle(part, job.target);
    return manifest;
  } catch (error) {
    rmSync(part, { force: true });
    if (error instanceof Refusal && error.code === 'not-a-backup') throw new Refusal('backup-unverified');
    throw error;
  } finally {
    db.close();
    for (const end of ['', '-wal', '-shm']) rmSync(`${job.scratch}${end}`, { force: true });
  }
}
