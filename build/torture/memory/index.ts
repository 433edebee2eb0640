/** Looks into the memory of the main process from another one, while a caseload is open and after the lock (Linux). */
import { spawn } from 'node:child_process';
import { closeSync, openSync, readFileSync, readSync, rmSync } from 'node:fs';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';
import { openBytes } from '../../../db/age.ts';
import { caseloadKey, readKeyFile } from '../../../db/key-file.ts';
import type { WrapsOfPeople } from '../../../db/keys/key-wraps.ts';
import { fill } from '../backups.ts';
import { freshCaseload, PASSPHRASE } from '../children.ts';
import { addSecondPerson, HERS, secondPerson } from '../people/people-kill.ts';

export interface MemoryReport {
  /** Megabytes that were read after the lock. */
  megabytes: number;
  /** How often each was found while open, and after the lock. */
  found: Record<string, { open: number; locked: number }>;
  faults: string[];
}

/** A worker that reads the file at the lock ends by itself with its files closed: it has this long, ms. */
const WORKERS_END_MS = 15_000;
const AGAIN_MS = 1000;

/** Every readable and writable part of a process's memory. */
function* partsOf(pid: number): Generator<Buffer> {
  const memory = openSync(`/proc/${pid}/mem`, 'r');
  try {
    for (const line of readFileSync(`/proc/${pid}/maps`, 'utf8').split('\n')) {
      const match = /^([0-9a-f]+)-([0-9a-f]+) rw/.exec(line);
      if (!match) continue;
      const [from, to] = [Number.parseInt(match[1]!, 16), Number.parseInt(match[2]!, 16)];
      const step = 64 * 1024 * 1024;
      for (let at = from; at < to; at += step - 4096) {
        const part = Buffer.alloc(Math.min(step, to - at));
        try {
          const length = readSync(memory, part, 0, part.length, at);
          yield part.subarray(0, length);
        } catch {
          // Set aside and never touched, or gone meanwhile.
        }
      }
    }
  } finally {
    closeSync(memory);
  }
}

function count(pid: number, wanted: ReadonlyMap<string, readonly Buffer[]>) {
  const counts = new Map([...wanted.keys()].map((name) => [name, 0]));
  let bytes = 0;
  for (const part of partsOf(pid)) {
    bytes += part.length;
    for (const [name, forms] of wanted) {
      for (const form of forms) {
        for (let at = part.indexOf(form); at !== -1; at = part.indexOf(form, at + 1))
          counts.set(name, counts.get(name)! + 1);
      }
    }
  }
  return { counts, bytes };
}

/** What an age identity spells (bech32, BIP 173): 32 bytes, then its checksum. */
function bytesOf(identity: string): Buffer {
  const values = [...identity.slice(identity.lastIndexOf('1') + 1, -6)].map((letter) =>
    'QPZRY9X8GF2TVDW0S3JN54KHCE6MUA7L'.indexOf(letter.toUpperCase()),
  );
  const bits = values.map((value) => value.toString(2).padStart(5, '0')).join('');
  return Buffer.from((bits.slice(0, 256).match(/.{8}/g) ?? []).map((byte) => Number.parseInt(byte, 2)));
}

const both = (text: string): Buffer[] => [Buffer.from(text), Buffer.from(text, 'utf16le')];

/** An identity as it may lie in memory: spelled, in one byte or two a letter, and as the bytes it means. */
const spelled = (identity: Buffer): Buffer[] => {
  const text = identity.toString('ascii');
  return [...both(text.slice('AGE-SECRET-KEY-1'.length)), bytesOf(text)];
};

/** What must be gone after the lock. */
const secrets = ['a person’s own key', 'key of the file', 'key of the file, as text', 'secret of the key file'];

/** A caseload with one sign-in for all, and one of two people. */
export async function memoryTest(): Promise<{ alone: MemoryReport; people: MemoryReport; faults: string[] }> {
  const [alone, people] = [await memoryAfterLock(false), await memoryAfterLock(true)];
  return { alone, people, faults: [...alone.faults, ...people.faults] };
}

/** The own keys of those who sign in, as the key file's wraps hold them. */
async function ownKeys(folder: string): Promise<Buffer[]> {
  const read = readKeyFile(folder);
  if (read.state !== 'ok' || !('people' in read.file)) throw new Error('nobody has a key of their own');
  const opened = await Promise.all(
    [PASSPHRASE, HERS].map((typed, n) => openBytes((read.file as WrapsOfPeople).people[n]!.own, typed)),
  );
  return opened.filter((key) => key !== null);
}

/** @param withPeople one of two people signs in, with a passphrase and a key of her own */
export async function memoryAfterLock(withPeople: boolean): Promise<MemoryReport> {
  const report: MemoryReport = { megabytes: 0, found: {}, faults: [] };
  const caseload = await freshCaseload();
  const id = fill(caseload);
  if (withPeople) await addSecondPerson(caseload);
  const identity = caseload.withKey((key) => Buffer.from(key));
  const key = caseloadKey(identity);
  caseload.close();
  const wanted = new Map<string, Buffer[]>([
    ['key of the file', [key]],
    ['key of the file, as text', [...both(key.toString('hex')), ...both(key.toString('hex').toUpperCase())]],
    ['secret of the key file', spelled(identity)],
    ['passphrase', both(withPeople ? HERS : PASSPHRASE)],
    ['name of a client', both('Kept Safe')],
  ]);
  const own = withPeople ? await ownKeys(caseload.folder) : [];
  wanted.set('a person’s own key', own.flatMap(spelled));
  const file = fileURLToPath(new URL('holder.ts', import.meta.url));
  const env = { ...process.env };
  delete env['FAIRHAND_PASSPHRASE'];
  const child = spawn(
    process.execPath,
    ['--no-warnings', file, caseload.folder, id, ...(withPeople ? [secondPerson.initials] : [])],
    {
      env,
      stdio: ['pipe', 'pipe', 'inherit'],
    },
  );
  const lines = createInterface({ input: child.stdout })[Symbol.asyncIterator]();
  try {
    child.stdin.write(`${withPeople ? HERS : PASSPHRASE}\n`);
    for (const state of ['open', 'locked'] as const) {
      const { value } = await lines.next();
      if (value !== state) throw new Error(`the holder said ${String(value)}`);
      let { counts, bytes } = count(child.pid!, wanted);
      const until = Date.now() + WORKERS_END_MS;
      while (state === 'locked' && secrets.some((name) => counts.get(name)! > 0) && Date.now() < until) {
        await new Promise((resolve) => setTimeout(resolve, AGAIN_MS));
        ({ counts, bytes } = count(child.pid!, wanted));
      }
      for (const [name, times] of counts)
        report.found[name] = { ...(report.found[name] ?? { open: 0, locked: 0 }), [state]: times };
      report.megabytes = Math.round(bytes / 1e6);
      child.stdin.write('\n');
    }
  } finally {
    child.kill('SIGKILL');
    rmSync(caseload.folder, { recursive: true, force: true });
  }
  for (const name of secrets)
    if (report.found[name]!.locked > 0)
      report.faults.push(`after the lock: ${name}, ${report.found[name]!.locked} times`);
  return report;
}
