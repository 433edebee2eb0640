/**
 * Reading and writing tar by tar-stream, within limits of our own: plain files only, none larger than the reader says,
 * and an archive without its end is not whole. Every system can unpack what is written.
 */
import { Readable, pipeline } from 'node:stream';
import { extract, pack, type Header, type Pack } from 'tar-stream';

/** A header and every padding is a multiple of it, in bytes. */
export const BLOCK = 512;
const LONGEST_NAME = 99;

/** The file is no tar, or breaks off. */
export class TarError extends Error {}

export interface TarMember {
  name: string;
  data: Uint8Array;
}

export const paddingAfter = (size: number): number => (BLOCK - (size % BLOCK)) % BLOCK;

/** Two empty blocks end an archive. */
export const tarEnd = (): Buffer => Buffer.alloc(2 * BLOCK);

/** For streams that are left early: whoever waits for them is told by another way. */
const ignored = (): void => undefined;

/** What every header says: for its owner only. `mtime` in seconds since 1970. */
function entryOf(name: string, mtime: number): Pick<Header, 'name' | 'mode' | 'mtime'> {
  if (Buffer.byteLength(name) > LONGEST_NAME) throw new TarError('the name is too long');
  return { name, mode: 0o600, mtime: new Date(mtime * 1000) };
}

/** Header of one file whose bytes are written apart. @throws TarError for a name over 99 bytes */
export async function tarHeader(name: string, size: number, mtime: number): Promise<Buffer> {
  const tar = pack();
  // The bytes never come: the stream is left after the header.
  tar.entry({ ...entryOf(name, mtime), size }).on('error', ignored);
  for await (const header of tar) return Buffer.from(header as Uint8Array);
  throw new TarError('no header');
}

const put = (tar: Pack, { name, data }: TarMember, mtime: number): Promise<void> =>
  new Promise((resolve, reject) => {
    tar.entry(entryOf(name, mtime), data, (error) => (error ? reject(error) : resolve()));
  });

/** The bytes of an archive, made while they are read. @throws TarError for a name over 99 bytes */
export async function* writeTar(
  members: Iterable<TarMember> | AsyncIterable<TarMember>,
  mtime: number,
): AsyncGenerator<Uint8Array> {
  const tar = pack();
  const filled = (async () => {
    for await (const member of members) await put(tar, member, mtime);
    tar.finalize();
  })();
  filled.catch((error: Error) => tar.destroy(error));
  for await (const chunk of tar) yield chunk as Uint8Array;
  await filled;
}

/** A whole archive at once. */
export async function tarOf(members: readonly TarMember[], mtime: number): Promise<Buffer> {
  const chunks: Uint8Array[] = [];
  for await (const chunk of writeTar(members, mtime)) chunks.push(chunk);
  return Buffer.concat(chunks);
}

export interface TarHeader {
  name: string;
  size: number;
}

/** @throws TarError for anything that is not a plain file */
function checked({ name, size, type }: Header): TarHeader {
  if (type !== 'file') throw new TarError('not a plain file');
  if (!Number.isSafeInteger(size) || size < 0) throw new TarError('impossible size');
  return { name, size };
}

/** Reads one block. Null for an empty one (the end). @throws TarError for anything that is not a plain file's header */
export async function readTarHeader(block: Uint8Array): Promise<TarHeader | null> {
  if (isEmpty(block)) return null;
  const tar = extract();
  const header = await new Promise<Header>((resolve, reject) => {
    tar.on('entry', (found, bytes) => {
      bytes.on('error', ignored);
      resolve(found);
    });
    tar.on('error', () => reject(new TarError('no tar header')));
    tar.end(block);
  });
  tar.destroy();
  return checked(header);
}

const isEmpty = (block: Uint8Array): boolean => block.every((byte) => byte === 0);

/** The chunks up to the end of the archive. @throws TarError where it has none: the file breaks off */
async function* untilEnd(chunks: AsyncIterable<Uint8Array>): AsyncGenerator<Uint8Array> {
  let last: Buffer = Buffer.alloc(0);
  for await (const chunk of chunks) {
    last = Buffer.concat([last.subarray(-BLOCK), chunk.subarray(-BLOCK)]);
    yield chunk;
  }
  if (last.length < BLOCK || !isEmpty(last.subarray(-BLOCK))) throw new TarError('the file breaks off');
}

/**
 * Takes a stream of tar bytes apart into whole files.
 * @param largest size of one file that is accepted, bytes: a hostile header must not claim all memory
 * @throws TarError, and what the source throws
 */
export async function* readTar(
  chunks: AsyncIterable<Uint8Array>,
  largest: number,
): AsyncGenerator<{ name: string; data: Buffer }> {
  const tar = extract();
  const ended: { source?: unknown } = {};
  const source = async function* (): AsyncGenerator<Uint8Array> {
    try {
      yield* untilEnd(chunks);
    } catch (error) {
      ended.source = error;
      throw error;
    }
  };
  // Errors reach the loop below by way of `tar`.
  pipeline(Readable.from(source()), tar as unknown as NodeJS.WritableStream, ignored);
  try {
    for await (const entry of tar) {
      entry.on('error', ignored);
      const { name, size } = checked(entry.header);
      if (size > largest) throw new TarError('a file in it is too large');
      const parts: Uint8Array[] = [];
      for await (const part of entry) parts.push(part as Uint8Array);
      yield { name, data: Buffer.concat(parts, size) };
    }
  } catch (error) {
    if (ended.source !== undefined) throw ended.source;
    throw error instanceof TarError ? error : new TarError('no tar');
  } finally {
    tar.destroy();
  }
}
