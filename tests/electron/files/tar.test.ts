import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { expect, test } from 'vitest';
import { readTar, readTarHeader, tarEnd, tarHeader, tarOf, writeTar } from '../../../electron/files/backup/tar.ts';

async function* inPieces(bytes: Uint8Array, size: number): AsyncGenerator<Uint8Array> {
  for (let at = 0; at < bytes.length; at += size) yield bytes.subarray(at, at + size);
}

async function readAll(bytes: Uint8Array, size: number = bytes.length): Promise<[string, string][]> {
  const out: [string, string][] = [];
  for await (const { name, data } of readTar(inPieces(bytes, size), 10_000)) out.push([name, data.toString()]);
  return out;
}

const members = [
  { name: 'a.txt', data: Buffer.from('one') },
  { name: 'empty', data: Buffer.alloc(0) },
  { name: 'rows/b', data: Buffer.from('x'.repeat(1024)) },
];
const asRead = members.map(({ name, data }) => [name, data.toString()]);

test('what is written is read again, in pieces of any size', async () => {
  const bytes = await tarOf(members, 0);
  for (const size of [1, 7, 512, 513, bytes.length]) expect(await readAll(bytes, size)).toEqual(asRead);
});

test.skipIf(process.platform === 'win32')('GNU tar unpacks what is written, and what it writes is read', async () => {
  const folder = mkdtempSync(path.join(tmpdir(), 'tar-'));
  try {
    writeFileSync(path.join(folder, 'ours.tar'), await tarOf(members, 1_700_000_000));
    execFileSync('tar', ['-xf', 'ours.tar'], { cwd: folder });
    expect(readFileSync(path.join(folder, 'rows/b'), 'utf8')).toBe('x'.repeat(1024));
    execFileSync('tar', ['--format=ustar', '-cf', 'theirs.tar', 'a.txt', 'empty', 'rows/b'], { cwd: folder });
    expect(await readAll(readFileSync(path.join(folder, 'theirs.tar')))).toEqual(asRead);
    execFileSync('tar', ['-cf', 'folder.tar', 'rows'], { cwd: folder });
    await expect(readAll(readFileSync(path.join(folder, 'folder.tar')))).rejects.toThrow('not a plain file');
    execFileSync('ln', ['-s', 'a.txt', 'link'], { cwd: folder });
    execFileSync('tar', ['-cf', 'link.tar', 'link'], { cwd: folder });
    await expect(readAll(readFileSync(path.join(folder, 'link.tar')))).rejects.toThrow('not a plain file');
  } finally {
    rmSync(folder, { recursive: true });
  }
});

test('a file that breaks off anywhere is refused', async () => {
  const bytes = await tarOf(members, 0);
  // Two empty blocks end an archive; one of them is enough, as for other readers.
  for (let at = 0; at < bytes.length - 512; at += 97) await expect(readAll(bytes.subarray(0, at))).rejects.toThrow();
  await expect(readAll(bytes.subarray(0, bytes.length - 1024))).rejects.toThrow('breaks off');
});

test('headers keep sizes over 8 GB and refuse what is no plain file', async () => {
  expect(await readTarHeader(await tarHeader('a', 9_000_000_000, 0))).toEqual({ name: 'a', size: 9_000_000_000 });
  expect(await readTarHeader(tarEnd().subarray(0, 512))).toBeNull();
  const folder = await tarHeader('a', 0, 0);
  folder[156] = 0x35;
  await expect(readTarHeader(folder)).rejects.toThrow();
  await expect(readTarHeader(Buffer.alloc(512, 1))).rejects.toThrow('no tar header');
  const long = await tarHeader('a', 20, 0);
  long[156] = 0x78;
  await expect(readTarHeader(long)).rejects.toThrow();
  await expect(tarHeader('x'.repeat(100), 0, 0)).rejects.toThrow('too long');
  await expect(tarOf([{ name: 'x'.repeat(100), data: Buffer.alloc(1) }], 0)).rejects.toThrow('too long');
});

test('a claim of more than the reader allows is refused before its bytes are read', async () => {
  let read = 0;
  const huge = (async function* () {
    yield await tarHeader('a', 9_000_000_000, 0);
    for (;;) {
      read += 65_536;
      yield Buffer.alloc(65_536);
    }
  })();
  await expect(readTar(huge, 1000).next()).rejects.toThrow('too large');
  expect(read).toBeLessThan(4_000_000);
});

test('what the source throws is thrown, and leaving early ends the source', async () => {
  const bytes = await tarOf(members, 0);
  const failing = (async function* () {
    yield bytes.subarray(0, 700);
    throw new Error('the disk is gone');
  })();
  await expect(
    (async () => {
      for await (const _ of readTar(failing, 10_000));
    })(),
  ).rejects.toThrow('the disk is gone');
  let ended = false;
  const long = (async function* () {
    try {
      for (;;) yield* inPieces(bytes.subarray(0, 1024), 512);
    } finally {
      ended = true;
    }
  })();
  for await (const { name } of readTar(long, 10_000)) {
    expect(name).toBe('a.txt');
    break;
  }
  await expect.poll(() => ended).toBe(true);
});

test('nothing is written ahead of the reader', async () => {
  let made = 0;
  const many = (function* () {
    for (; made < 1000; made++) yield { name: 'x', data: Buffer.alloc(65_536) };
  })();
  const bytes = writeTar(many, 0);
  for (let i = 0; i < 4; i++) await bytes.next();
  expect(made).toBeLessThan(10);
  await bytes.return(undefined);
  expect(made).toBeLessThan(10);
});
