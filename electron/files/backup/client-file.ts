/**
 * One client as a file of open formats: a tar with client.json, schema.json and pictures/<id> as their original
 * bytes. It is not encrypted: it is made to be read elsewhere, and the window says so before it is written.
 */
import { randomUUID } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { mkdir, open, readdir, rename, rm, stat } from 'node:fs/promises';
import path from 'node:path';
import { Readable } from 'node:stream';
import { CaseloadError, type Caseload, type Doing } from '../../../db/index.ts';
import { codeOf } from '../../../db/errors.ts';
import { LARGEST_BLOB } from '../../../db/records/blobs.ts';
import { clientExportSchema } from '../../../db/types/client-export.ts';
import { Refusal } from '../../contract/envelope.ts';
import { messages, type MessageCode } from '../../contract/messages.ts';
import { CLIENT_ENDING } from '../handed-file.ts';
import { readTar, TarError, writeTar, type TarMember } from './tar.ts';

/** Limits of what is read in, so that a hostile file cannot take all memory. Bytes. */
const LARGEST_FILE = 2 * 1024 ** 3;
const LARGEST_JSON = 64 * 1024 ** 2;

const asRefusal = (error: unknown, otherwise: MessageCode): Refusal => {
  if (error instanceof Refusal) return error;
  const code = codeOf(error);
  const known = code !== 'internal' && code in messages;
  return new Refusal(
    known ? (code as MessageCode) : otherwise,
    error instanceof CaseloadError ? error.detail : undefined,
  );
};

function* membersOf(caseload: Caseload, exported: ReturnType<Caseload['exportClient']>): Generator<TarMember> {
  const json = (value: unknown): Buffer => Buffer.from(`${JSON.stringify(value, null, 2)}\n`);
  yield { name: 'client.json', data: json(exported) };
  yield { name: 'schema.json', data: json(clientExportSchema()) };
  for (const { id } of exported.pictures) {
    const blob = caseload.blob(id);
    if (!blob) throw new Refusal('damaged');
    yield { name: `pictures/${id}`, data: blob.data };
  }
}

/** Writes one client; a file of that name is replaced only when the new one is whole. @throws Refusal not-found, save-failed, disk-full */
export async function writeClientFile(
  caseload: Caseload,
  clientId: string,
  target: string,
  now: string,
): Promise<void> {
  const part = `${target}.${randomUUID()}.part`;
  try {
    const exported = caseload.exportClient(clientId, now);
    const handle = await open(part, 'wx', 0o600);
    try {
      for await (const chunk of writeTar(membersOf(caseload, exported), Date.parse(now) / 1000))
        await handle.writeFile(chunk);
      await handle.sync();
    } finally {
      await handle.close();
    }
    await rename(part, target);
  } catch (error) {
    await rm(part, { force: true }).catch(() => undefined);
    throw asRefusal(error, 'save-failed');
  }
}

/** The folder of exported files, inside the caseload folder. */
export const exportsFolder = (folder: string): string => path.join(folder, 'exports');

/** Name of a client's file: the code and the day, never the name. */
export const clientFileName = (code: string, day: string): string =>
  `${code.replace(/[^A-Za-z0-9-]+/g, '-') || 'client'}-${day}.${CLIENT_ENDING}`;

/**
 * Writes every client, one file each, into a new folder that gets its name when all are written.
 * @param day local calendar date, for the names
 * @returns the folder, and how many files are in it
 * @throws Refusal save-failed, disk-full, locked (when it is locked meanwhile)
 */
export async function writeAllClients(
  caseload: Caseload,
  target: string,
  now: string,
  day: string,
): Promise<{ folder: string; files: number }> {
  const part = `${target}.${randomUUID()}.part`;
  try {
    await mkdir(part, { recursive: true, mode: 0o700 });
    const clients = caseload.clients();
    const used = new Set<string>();
    for (const { id, code } of clients) {
      let name = clientFileName(code, day);
      // Two codes may differ only in characters that no file name takes.
      for (let n = 2; used.has(name.toLowerCase()); n++) name = clientFileName(`${code}-${n}`, day);
      used.add(name.toLowerCase());
      await writeClientFile(caseload, id, path.join(part, name), now);
    }
    await rename(part, target);
    return { folder: target, files: clients.length };
  } catch (error) {
    await rm(part, { recursive: true, force: true }).catch(() => undefined);
    throw asRefusal(error, 'save-failed');
  }
}

/** Exported files in the caseload folder that hold one of the clients: after erasing, they are the therapist's to delete. */
export async function exportsHolding(folder: string, clientIds: readonly string[]): Promise<string[]> {
  const names = await readdir(exportsFolder(folder), { recursive: true }).catch(() => []);
  const holding: string[] = [];
  for (const name of names.filter((each) => /\.(fhclient|tar)$/.test(each)).sort()) {
    const file = path.join(exportsFolder(folder), name);
    try {
      for await (const { name: member, data } of readTar(createReadStream(file), LARGEST_BLOB)) {
        const read = member === 'client.json' ? (JSON.parse(data.toString('utf8')) as ExportedId) : null;
        if (clientIds.some((id) => id === read?.record?.client?.id)) holding.push(file);
        break;
      }
    } catch {
      // What cannot be read is no file of ours.
    }
  }
  return holding;
}

type ExportedId = { record?: { client?: { id?: unknown } } } | null;

function* slices(bytes: Uint8Array): Generator<Uint8Array> {
  for (let from = 0; from < bytes.byteLength; from += 65536) yield bytes.subarray(from, from + 65536);
}

/**
 * Brings a client in from such a file, or from its bytes: what came through the window is never written to the disk.
 * @returns the client's id @throws Refusal not-an-export, code-taken, too-large, disk-full
 */
export async function readClientFile(caseload: Caseload, file: string | Uint8Array, doing: Doing): Promise<string> {
  try {
    const size = typeof file === 'string' ? (await stat(file)).size : file.byteLength;
    if (size > LARGEST_FILE) throw new Refusal('too-large');
    const chunks = typeof file === 'string' ? createReadStream(file) : Readable.from(slices(file));
    let exported: unknown = null;
    const pictures = new Map<string, Buffer>();
    for await (const { name, data } of readTar(chunks, LARGEST_BLOB)) {
      const picture = /^pictures\/([0-9a-f-]{36})$/.exec(name);
      if (name === 'client.json' && data.length <= LARGEST_JSON) exported = JSON.parse(data.toString('utf8'));
      else if (picture?.[1] !== undefined) pictures.set(picture[1], data);
      else if (name !== 'schema.json') throw new TarError('an unknown part');
    }
    return caseload.importClient(exported, (id) => pictures.get(id) ?? null, doing).client.id;
  } catch (error) {
    const refusal = asRefusal(error, 'not-an-export');
    throw refusal.code === 'malformed-request' || refusal.code === 'not-found' ? new Refusal('not-an-export') : refusal;
  }
}
