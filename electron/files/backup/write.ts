/** Writes one backup file and reads it back; runs in the worker. */
import { Encrypter } from 'age-encryption';
import { createHash } from 'node:crypto';
import { closeSync, fsyncSync, openSync, rmSync, writeSync } from 'node:fs';
import { isRecipientOf } from '../../../db/keys/age-keys.ts';
import { openReader } from '../../../db/connection.ts';
import { dump, dumpRows, manifestOf, pictureBytes, picturesOf, type Manifest } from '../../../db/dump.ts';
import { caseloadFile, settle } from '../../../db/files.ts';
import { keyFileText, readKeyFile } from '../../../db/key-file.ts';
import { wrapsOf } from '../../../db/keys/key-wraps.ts';
import { Refusal } from '../../contract/envelope.ts';
import { MEMBERS, openContainer, READ_ME } from './container.ts';
import { PICTURES, storePictures, type StoredPicture } from './picture-store.ts';
import { chunksOf, streamOf } from './streams.ts';
import { unpack } from './unpack.ts';
import { BLOCK, paddingAfter, tarEnd, tarHeader, tarOf, writeTar, type TarMember } from './tar.ts';

export interface WriteJob {
  folder: string;
  identity: Uint8Array;
  /** Final name; `.part` is appended until the backup was read back. */
  target: string;
  /** Scratch file inside the caseload folder for reading back; encrypted, removed afterwards. */
  scratch: string;
  /** ISO instant. */
  now: string;
  /** Folder in which the pictures are kept apart, each once; null: in the file itself. */
  pictures: string | null;
}

export type Progress = (stage: 'writing' | 'checking', done: number) => void;

type Db = ReturnType<typeof openReader>;

/** What the inner tar holds: every entry, and last their checksums. */
function* innerMembers(
  db: Db,
  apart: readonly StoredPicture[] | null,
  progress: (bytes: number) => void,
): Generator<TarMember> {
  const sums: Record<string, string> = {};
  for (const { name, data } of apart ? dumpRows(db) : dump(db)) {
    sums[name] = createHash('sha256').update(data).digest('hex');
    yield { name, data };
    progress(data.length);
  }
  if (apart) yield { name: PICTURES, data: Buffer.from(JSON.stringify(apart)) };
  yield { name: 'sums.json', data: Buffer.from(JSON.stringify(sums)) };
}

async function writeParts(job: WriteJob, db: Db, handle: number, progress: Progress): Promise<Manifest> {
  const key = readKeyFile(job.folder);
  if (key.state !== 'ok') throw new Refusal('key-file-missing');
  const wraps = [key.file, key.file.outgoing].find((each) => each && isRecipientOf(each.recipient, job.identity));
  if (!wraps) throw new Refusal('key-file-missing');
  const { recipient } = wraps;
  const keyText = keyFileText({ at: key.file.at, ...wrapsOf(wraps), outgoing: null });
  const encrypter = new Encrypter();
  encrypter.addRecipient(recipient);

  const mtime = Date.parse(job.now) / 1000;
  let end = 0;
  const write = (bytes: Uint8Array): void => {
    for (let at = 0; at < bytes.length;) at += writeSync(handle, bytes, at, bytes.length - at, end + at);
    end += bytes.length;
  };
  const pages = db.pragma('page_count', { simple: true }) as number;
  const total = Math.max(1, pages * (db.pragma('page_size', { simple: true }) as number));
  let done = 0;
  const tell = (bytes: number): void => {
    done += bytes;
    progress('writing', Math.min(1, done / total));
  };
  const { identity, pictures } = job;
  const bytesOf = (id: string): Buffer => pictureBytes(db, id);
  const apart =
    pictures === null
      ? null
      : await storePictures(picturesOf(db), bytesOf, { folder: pictures, identity, recipient, progress: tell });
  const own = manifestOf(db, job.now);
  const manifest = apart ? { ...own, pictures: [...new Set(apart.map(({ name }) => name))] } : own;
  const small = [
    { name: MEMBERS.readMe, data: Buffer.from(READ_ME) },
    { name: MEMBERS.key, data: Buffer.from(keyText) },
    { name: MEMBERS.manifest, data: await encrypter.encrypt(JSON.stringify(manifest)) },
  ];
  // The largest member follows: its size is known when it is written.
  write((await tarOf(small, mtime)).subarray(0, -tarEnd().length));

  const headerAt = end;
  write(Buffer.alloc(BLOCK));
  const start = end;
  const members = innerMembers(db, apart, tell);
  const inner = streamOf(writeTar(members, mtime));
  for await (const chunk of chunksOf(await encrypter.encrypt(inner))) write(chunk);
  const size = end - start;
  const header = await tarHeader(MEMBERS.caseload, size, mtime);
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
    const container = await openContainer(part);
    const { identity, scratch, pictures } = job;
    await unpack({ container, identity, scratch, pictures, comparing: true }, (done) => progress('checking', done));
    settle(part, job.target);
    return manifest;
  } catch (error) {
    rmSync(part, { force: true });
    const unlike = error instanceof Refusal && ['not-a-backup', 'backup-pictures-missing'].includes(error.code);
    if (unlike) throw new Refusal('backup-unverified');
    throw error;
  } finally {
    db.close();
    for (const end of ['', '-wal', '-shm']) rmSync(`${job.scratch}${end}`, { force: true });
  }
}
