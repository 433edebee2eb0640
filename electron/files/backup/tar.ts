/**
 * Reading and writing tar (POSIX ustar; sizes over 8 GB in base 256), as much of it as a backup needs: plain files
 * with short names, one after the other. Every system can unpack it.
 */

/** A header and every padding is a multiple of it, in bytes. */
const BLOCK = 512;
const LARGEST_OCTAL = 8 ** 11 - 1;

/** The file is no tar, or breaks off. */
export class TarError extends Error {}

export const paddingAfter = (size: number): number => (BLOCK - (size % BLOCK)) % BLOCK;

/** Two empty blocks end an archive. */
export const tarEnd = (): Buffer => Buffer.alloc(2 * BLOCK);

/** Header of one file. `mtime` in seconds since 1970. @throws TarError for a name over 99 bytes */
export function tarHeader(name: string, size: number, mtime: number): Buffer {
  const header = Buffer.alloc(BLOCK);
  if (Buffer.byteLength(name) > 99) throw new TarError('the name is too long');
  header.write(name, 0, 'utf8');
  header.write('0000600\0', 100, 'ascii');
  header.write('0000000\0', 108, 'ascii');
  header.write('0000000\0', 116, 'ascii');
  if (size <= LARGEST_OCTAL) header.write(`${size.toString(8).padStart(11, '0')}\0`, 124, 'ascii');
  else {
    header[124] = 0x80;
    header.writeBigUInt64BE(BigInt(size), 128);
  }
  header.write(`${Math.floor(mtime).toString(8).padStart(11, '0')}\0`, 136, 'ascii');
  header.write('        0', 148, 'ascii');
  header.write('ustar\x0000', 257, 'latin1');
  header.write(`${sum(header).toString(8).padStart(6, '0')}\0 `, 148, 'ascii');
  return header;
}

/** Sum of all bytes, the checksum's own eight counted as spaces. */
function sum(header: Buffer): number {
  let total = 0;
  for (let at = 0; at < BLOCK; at++) total += at >= 148 && at < 156 ? 0x20 : header[at]!;
  return total;
}

export interface TarHeader {
  name: string;
  size: number;
}

/** Null for an empty block (the end). @throws TarError for anything that is not a plain file's header */
export function readTarHeader(header: Buffer): TarHeader | null {
  if (header.every((byte) => byte === 0)) return null;
  const stored = parseInt(header.toString('ascii', 148, 154), 8);
  if (stored !== sum(header) || header.toString('ascii', 257, 262) !== 'ustar') throw new TarError('no tar header');
  const type = header[156];
  if (type !== 0x30 && type !== 0) throw new TarError('not a plain file');
  const end = header.indexOf(0);
  const name = header.toString('utf8', 0, Math.min(end < 0 ? 100 : end, 100));
  const size =
    header[124] === 0x80 ? Number(header.readBigUInt64BE(128)) : parseInt(header.toString('ascii', 124, 135), 8);
  if (!Number.isSafeInteger(size) || size < 0) throw new TarError('impossible size');
  return { name, size };
}

/**
 * Takes a stream of tar bytes apart into whole files.
 * @param largest size of one file that is accepted, bytes: a hostile header must not claim all memory
 * @throws TarError
 */
export async function* readTar(
  chunks: AsyncIterable<Uint8Array>,
  largest: number,
): AsyncGenerator<{ name: string; data: Buffer }> {
  const source = chunks[Symbol.asyncIterator]();
  let parts: Buffer[] = [];
  let have = 0;
  const take = async (size: number): Promise<Buffer> => {
    while (have < size) {
      const { done, value } = await source.next();
      if (done) throw new TarError('the file breaks off');
      parts.push(Buffer.from(value.buffer, value.byteOffset, value.byteLength));
      have += value.byteLength;
    }
    const all = parts.length === 1 ? parts[0]! : Buffer.concat(parts, have);
    parts = all.length > size ? [all.subarray(size)] : [];
    have -= size;
    return all.subarray(0, size);
  };
  for (;;) {
    const header = readTarHeader(await take(BLOCK));
    if (header === null) return;
    if (header.size > largest) throw new TarError('a file in it is too large');
    const data = Buffer.from(await take(header.size));
    await take(paddingAfter(header.size));
    yield { name: header.name, data };
  }
}
