/**
 * Fetches Electron's program with progress, goes on where an earlier try was cut off, and checks it against the
 * digests that come inside the electron package. Plain JavaScript without dependencies, like all that starts Fairhand.
 */
import { createHash } from 'node:crypto';
import { createReadStream, createWriteStream, existsSync, mkdirSync, renameSync, rmSync, statSync } from 'node:fs';
import path from 'node:path';
import { say } from './console.js';

/** Where the electron project publishes its programs; ELECTRON_MIRROR names another place, as for the package itself. */
const PLACE = 'https://github.com/electron/electron/releases/download/';
/** Longest wait for an answer, and longest silence while bytes come, in milliseconds. A slow line is no silence. */
const PATIENCE = { connect: 5_000, silence: 30_000 };
const TELL_EVERY = 5_000;

/** A download that did not end; what came so far stays and the next start goes on from there. */
export class NotDownloaded extends Error {}

const megabytes = (bytes) => `${Math.round(bytes / 1e6)} MB`;

/** Name of the program's archive, as the electron project names it. */
export const archiveName = (version, platform, arch) => `electron-v${version}-${platform}-${arch}.zip`;

/** Address of the archive. */
export function archiveAddress(version, platform, arch, env = process.env) {
  const place = env.ELECTRON_MIRROR || env.npm_config_electron_mirror || PLACE;
  return `${place}v${version}/${archiveName(version, platform, arch)}`;
}

async function digestOf(file) {
  const sum = createHash('sha256');
  for await (const part of createReadStream(file)) sum.update(part);
  return sum.digest('hex');
}

const sizeOf = (file) => (existsSync(file) ? statSync(file).size : 0);

/** Asks for what is missing. A server that sends the whole again is answered by starting over. */
async function ask(address, from, stop, connect) {
  const late = setTimeout(() => stop.abort(), connect);
  try {
    const headers = from > 0 ? { Range: `bytes=${from}-` } : {};
    return await fetch(address, { headers, signal: stop.signal, redirect: 'follow' });
  } catch {
    throw new NotDownloaded('the place it is kept at does not answer');
  } finally {
    clearTimeout(late);
  }
}

async function writeAll(body, file, flags, stop, { silence, total, already, tell }) {
  const out = createWriteStream(file, { flags });
  let there = already;
  let told = Date.now();
  let quiet = setTimeout(() => stop.abort(), silence);
  try {
    for await (const part of body) {
      clearTimeout(quiet);
      quiet = setTimeout(() => stop.abort(), silence);
      if (!out.write(part)) await new Promise((resolve) => out.once('drain', resolve));
      there += part.length;
      if (Date.now() - told >= TELL_EVERY) {
        told = Date.now();
        tell(`  … ${megabytes(there)}${total ? ` of ${megabytes(total)}` : ''}`);
      }
    }
  } catch {
    throw new NotDownloaded(`the line went quiet after ${megabytes(there)}`);
  } finally {
    clearTimeout(quiet);
    await new Promise((resolve) => out.end(resolve));
  }
}

/**
 * Brings `address` to `file`, going on with `file.part` where there is one.
 * @param {string} address
 * @param {string} file
 * @param {string} sha256 hex digest that the whole must have
 * @param {{patience?: {connect: number, silence: number}, tell?: (line: string) => void}} [options]
 * @throws NotDownloaded with the reason as part of a sentence; what came so far stays unless it is wrong
 */
export async function download(address, file, sha256, { patience = PATIENCE, tell = say } = {}) {
  mkdirSync(path.dirname(file), { recursive: true });
  const part = `${file}.part`;
  const from = sizeOf(part);
  const stop = new AbortController();
  const answer = await ask(address, from, stop, patience.connect);
  const wholeAlready = answer.status === 416 && from > 0;
  if (!wholeAlready) {
    if (!answer.ok || !answer.body) throw new NotDownloaded(`it was refused (answer ${answer.status})`);
    const goesOn = answer.status === 206;
    const already = goesOn ? from : 0;
    const total = already + Number(answer.headers.get('content-length') ?? 0);
    await writeAll(answer.body, part, goesOn ? 'a' : 'w', stop, { silence: patience.silence, total, already, tell });
    if (total > already && sizeOf(part) < total)
      throw new NotDownloaded(`the line was cut at ${megabytes(sizeOf(part))}`);
  } else {
    stop.abort();
  }
  if ((await digestOf(part)) !== sha256) {
    rmSync(part, { force: true });
    throw new NotDownloaded('what came is not what its digest says, and was thrown away');
  }
  renameSync(part, file);
}
