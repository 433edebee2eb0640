/**
 * A hand-over as a file: a tar with handover.json, entries-0001.jsonl … and pictures/<id>, encrypted to the colleague's
 * public key in the age format (age-encryption.org/v1). Any age program with her secret key opens it.
 */
import { Decrypter, Encrypter } from 'age-encryption';
import { z } from 'zod';
import { CaseloadError, type Caseload, type Doing } from '../../../db/index.ts';
import { LARGEST_BLOB } from '../../../db/records/blobs.ts';
import { GrownLaptop, HandedEntry } from '../../../db/handover/handed-entry.ts';
import type { Handed } from '../../../db/handover/handover-types.ts';
import { ExportedPicture } from '../../../db/types/client-export.ts';
import { Refusal } from '../../contract/envelope.ts';
import { chunksOf, streamOf } from '../backup/streams.ts';
import { readTar, TarError, writeTar, type TarMember } from '../backup/tar.ts';

/** Rows in one part of the file, about, bytes. */
const CHUNK = 4 * 1024 * 1024;
/** Parts and clients of one file: more is nobody's caseload. */
const MOST_PARTS = 2000;
const MOST_ENTRIES = 2_000_000;

const Sender = z.object({ initials: z.string().max(8), clinic: z.string().max(300), recipient: z.string().max(100) });

const Head = z.object({
  format: z.literal('fairhand-handover'),
  version: z.literal(1),
  /** Version of the tables that the facts come from. */
  schema: z.number().int().min(1),
  madeAt: z.iso.datetime({ offset: true }),
  from: Sender,
  clientIds: z.array(z.uuid()).min(1).max(10_000),
  grown: z.array(GrownLaptop).max(1000),
  entries: z.number().int().min(0),
  pictures: z.array(ExportedPicture.extend({ clientId: z.uuid() })).max(200_000),
});
type Head = z.infer<typeof Head>;

/** A hand-over that was read and not taken in yet. */
export interface ReadHandover {
  head: Head;
  handed: Handed;
  bytesOf: (id: string) => Uint8Array | null;
}

function* membersOf(caseload: Caseload, head: Head, handed: Handed): Generator<TarMember> {
  yield { name: 'handover.json', data: Buffer.from(`${JSON.stringify(head)}\n`) };
  let lines: string[] = [];
  let size = 0;
  let number = 1;
  const part = (): TarMember => ({
    name: `entries-${String(number++).padStart(4, '0')}.jsonl`,
    data: Buffer.from(`${lines.join('\n')}\n`),
  });
  for (const entry of handed.entries) {
    const line = JSON.stringify(entry);
    lines.push(line);
    size += line.length;
    if (size < CHUNK) continue;
    yield part();
    lines = [];
    size = 0;
  }
  if (lines.length > 0) yield part();
  for (const { id } of handed.pictures) {
    const blob = caseload.blob(id);
    if (!blob) throw new Refusal('damaged');
    yield { name: `pictures/${id}`, data: blob.data };
  }
}

/** The bytes of a hand-over of these clients, locked for one recipient. @throws not-found, key-not-one */
export async function writeHandover(
  caseload: Caseload,
  clientIds: readonly string[],
  to: string,
  from: Head['from'],
  doing: Doing,
): Promise<Uint8Array> {
  const handed = caseload.handover.handOver(clientIds, doing);
  const { grown, pictures } = handed;
  const head: Head = {
    format: 'fairhand-handover',
    version: 1,
    schema: caseload.schemaVersion,
    madeAt: doing.at,
    from,
    clientIds: handed.clientIds,
    grown,
    entries: handed.entries.length,
    pictures,
  };
  const encrypter = new Encrypter();
  encrypter.addRecipient(to);
  const tar = writeTar(membersOf(caseload, head, handed), Date.parse(doing.at) / 1000);
  const parts: Uint8Array[] = [];
  for await (const chunk of chunksOf(await encrypter.encrypt(streamOf(tar)))) parts.push(chunk);
  return Buffer.concat(parts);
}

/** Plain chunks of the file. @throws Refusal handover-not-for-us, not-a-handover */
async function* opened(bytes: Uint8Array, identity: string): AsyncGenerator<Uint8Array> {
  const decrypter = new Decrypter();
  decrypter.addIdentity(identity);
  let plain: ReadableStream<Uint8Array>;
  try {
    plain = await decrypter.decrypt(streamOf([bytes]));
  } catch (error) {
    const noMatch = error instanceof Error && /no identity matched/.test(error.message);
    throw new Refusal(noMatch ? 'handover-not-for-us' : 'not-a-handover');
  }
  try {
    yield* chunksOf(plain);
  } catch {
    throw new Refusal('not-a-handover');
  }
}

const json = (text: string): unknown => {
  try {
    return JSON.parse(text);
  } catch {
    throw new Refusal('not-a-handover');
  }
};

function readHead(value: unknown, schema: number): Head {
  const versioned = z.object({ format: z.literal('fairhand-handover'), version: z.number(), schema: z.number() });
  const about = versioned.safeParse(value);
  if (!about.success) throw new Refusal('not-a-handover');
  if (about.data.version > 1 || about.data.schema > schema) throw new Refusal('handover-newer');
  const head = Head.safeParse(value);
  if (!head.success) throw new Refusal('not-a-handover');
  return head.data;
}

/**
 * Opens and reads a hand-over whole, so that nothing half is ever taken in.
 * @param schema version of one's own tables
 * @throws Refusal handover-not-for-us, not-a-handover, handover-newer, too-large
 */
export async function readHandover(bytes: Uint8Array, identity: string, schema: number): Promise<ReadHandover> {
  let head: Head | null = null;
  const entries: HandedEntry[] = [];
  const pictures = new Map<string, Buffer>();
  let parts = 0;
  try {
    for await (const { name, data } of readTar(opened(bytes, identity), LARGEST_BLOB)) {
      const picture = /^pictures\/([0-9a-f-]{36})$/.exec(name)?.[1];
      if (name === 'handover.json' && head === null) head = readHead(json(data.toString('utf8')), schema);
      else if (head === null) throw new Refusal('not-a-handover');
      else if (picture !== undefined) pictures.set(picture, data);
      else if (/^entries-\d{4}\.jsonl$/.test(name) && ++parts <= MOST_PARTS) {
        for (const line of data.toString('utf8').split('\n')) {
          if (line === '') continue;
          const entry = HandedEntry.safeParse(json(line));
          if (!entry.success || entries.length >= MOST_ENTRIES) throw new Refusal('not-a-handover');
          entries.push(entry.data);
        }
      } else throw new Refusal('not-a-handover');
    }
  } catch (error) {
    if (error instanceof TarError) throw new Refusal('not-a-handover');
    throw error;
  }
  if (head === null || entries.length !== head.entries) throw new Refusal('not-a-handover');
  for (const { id } of head.pictures) if (!pictures.has(id)) throw new Refusal('not-a-handover');
  const { clientIds, grown, pictures: listed } = head;
  return {
    head,
    handed: { clientIds, grown, entries, pictures: listed },
    bytesOf: (id) => pictures.get(id) ?? null,
  };
}

/** What is wrong with facts of a file that fits itself, as a refusal with a sentence. */
export function asHandoverRefusal(error: unknown, head: { schema: number }, schema: number): unknown {
  if (!(error instanceof CaseloadError) || error.code !== 'malformed-request') return error;
  return new Refusal(head.schema < schema ? 'handover-older' : 'not-a-handover');
}
