/** A server on this machine's own address stands for the place the program is kept at. */
import { createHash } from 'node:crypto';
import { existsSync, mkdtempSync, readFileSync, rmSync, statSync } from 'node:fs';
import { createServer, type RequestListener, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { archiveAddress, archiveName, download, NotDownloaded } from '../../build/launch/electron-download.js';

const program = Buffer.alloc(300_000, 'program');
const digest = createHash('sha256').update(program).digest('hex');
const quick = { patience: { connect: 4_000, silence: 400 }, tell: () => {} };

let folder: string;
let file: string;
let server: Server | null = null;

beforeEach(() => {
  folder = mkdtempSync(path.join(tmpdir(), 'download-'));
  file = path.join(folder, 'electron.zip');
});
afterEach(() => {
  server?.closeAllConnections();
  server?.close();
  server = null;
  rmSync(folder, { recursive: true, force: true });
});

async function serving(answer: RequestListener): Promise<string> {
  server = createServer(answer);
  await new Promise<void>((resolve) => server!.listen(0, '127.0.0.1', resolve));
  return `http://127.0.0.1:${(server.address() as AddressInfo).port}/electron.zip`;
}

/** Serves from the place that was asked for, as a file server does. */
const fileServer: RequestListener = (request, response) => {
  const from = Number(/bytes=(\d+)-/.exec(request.headers.range ?? '')?.[1] ?? 0);
  const rest = program.subarray(from);
  response.writeHead(from > 0 ? 206 : 200, { 'content-length': rest.length }).end(rest);
};

test('a whole program is kept under its name, and nothing else is left', async () => {
  await download(await serving(fileServer), file, digest, quick);
  expect(readFileSync(file).equals(program)).toBe(true);
  expect(existsSync(`${file}.part`)).toBe(false);
});

test('a cut line is taken up where it was cut, at the next start', async () => {
  const ranges: (string | undefined)[] = [];
  let first = true;
  const address = await serving((request, response) => {
    ranges.push(request.headers.range);
    if (!first) return fileServer(request, response);
    first = false;
    response.writeHead(200, { 'content-length': program.length });
    response.write(program.subarray(0, 100_000), () => setTimeout(() => response.destroy(), 50));
  });
  await expect(download(address, file, digest, quick)).rejects.toThrow(NotDownloaded);
  const kept = statSync(`${file}.part`).size;
  expect(kept).toBeGreaterThan(0);
  await download(address, file, digest, quick);
  expect(ranges).toEqual([undefined, `bytes=${kept}-`]);
  expect(readFileSync(file).equals(program)).toBe(true);
});

test('a server that knows no ranges sends the whole again, and it is taken once', async () => {
  let first = true;
  const address = await serving((_, response) => {
    response.writeHead(200, { 'content-length': program.length });
    if (!first) return void response.end(program);
    first = false;
    response.write(program.subarray(0, 50_000), () => setTimeout(() => response.destroy(), 50));
  });
  await expect(download(address, file, digest, quick)).rejects.toThrow(NotDownloaded);
  await download(address, file, digest, quick);
  expect(readFileSync(file).equals(program)).toBe(true);
});

test('a line that goes quiet is given up for now, with what came', async () => {
  const address = await serving((_, response) => {
    response.writeHead(200, { 'content-length': program.length });
    response.write(program.subarray(0, 80_000));
  });
  await expect(download(address, file, digest, quick)).rejects.toThrow('went quiet');
  expect(statSync(`${file}.part`).size).toBe(80_000);
});

test('what is not the program is thrown away, whatever it is', async () => {
  const address = await serving((_, response) => void response.end('a page of a hotel\u2019s network'));
  await expect(download(address, file, digest, quick)).rejects.toThrow('thrown away');
  expect(existsSync(file) || existsSync(`${file}.part`)).toBe(false);
});

test('a refusal and a silent place are reasons in words', async () => {
  const refuses = await serving((_, response) => void response.writeHead(404).end());
  await expect(download(refuses, file, digest, quick)).rejects.toThrow('refused (answer 404)');
  server!.close();
  server!.closeAllConnections();
  await expect(download(refuses, file, digest, quick)).rejects.toThrow('does not answer');
});

test('the pinned package knows the digest of its archive', () => {
  const text = (name: string) => readFileSync(new URL(`../../node_modules/electron/${name}`, import.meta.url), 'utf8');
  const { version } = JSON.parse(text('package.json')) as { version: string };
  const digests = JSON.parse(text('checksums.json')) as Record<string, string>;
  for (const system of ['linux-x64', 'linux-arm64', 'win32-x64', 'darwin-arm64', 'darwin-x64']) {
    const [platform, arch] = system.split('-') as [string, string];
    expect(digests[archiveName(version, platform, arch)]).toMatch(/^[0-9a-f]{64}$/);
  }
  expect(archiveAddress('1.2.3', 'linux', 'x64', { ELECTRON_MIRROR: 'http://clinic/' })).toBe(
    'http://clinic/v1.2.3/electron-v1.2.3-linux-x64.zip',
  );
});
