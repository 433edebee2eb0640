/** Starting the scripts that get killed. */
import { spawn } from 'node:child_process';
import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { createCaseload, type Caseload } from '../../db/index.ts';

export const PASSPHRASE = 'a passphrase that protects nothing';
export const NOW = '2026-03-04T09:12:00.000Z';

/** An open, empty caseload in a folder of its own. */
export const freshCaseload = (): Promise<Caseload> =>
  freshCaseloadIn(mkdtempSync(path.join(tmpdir(), 'fairhand-torture-')));

export async function freshCaseloadIn(folder: string): Promise<Caseload> {
  const made = await createCaseload({ folder, passphrase: PASSPHRASE, now: NOW, workFactor: 4 });
  if (!made.ok) throw new Error(made.code);
  return made.caseload;
}

export interface Ended {
  /** Null when it was killed. */
  code: number | null;
  out: string;
  err: string;
}

/**
 * Runs a script of this folder. With `killAfterMs` it is killed that long after its first output.
 */
export function runScript(script: string, args: string[], killAfterMs: number | null): Promise<Ended> {
  return new Promise((resolve, reject) => {
    const env = { ...process.env, FAIRHAND_PASSPHRASE: PASSPHRASE };
    const file = fileURLToPath(new URL(script, import.meta.url));
    const child = spawn(process.execPath, ['--no-warnings', file, ...args], { env });
    const ended: Ended = { code: null, out: '', err: '' };
    let timer: NodeJS.Timeout | null = null;
    child.stdout.on('data', (chunk: Buffer) => {
      ended.out += chunk.toString();
      if (killAfterMs !== null) timer ??= setTimeout(() => child.kill('SIGKILL'), killAfterMs);
    });
    child.stderr.on('data', (chunk: Buffer) => (ended.err += chunk.toString()));
    child.on('error', reject);
    child.on('close', (code) => {
      if (timer !== null) clearTimeout(timer);
      resolve({ ...ended, code });
    });
  });
}
