/** Kills one change of the key before each of its steps on the disk (strace, Linux): what is left opens with one passphrase. */
import { spawnSync } from 'node:child_process';
import { cpSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { openCaseload } from '../../db/index.ts';
import { fill } from './backups.ts';
import { freshCaseload, NOW, PASSPHRASE } from './children.ts';

const OTHER = 'another passphrase that protects nothing';
/** What puts a step on the disk; what is written in between counts for nothing before one of these. */
const STEPS = 'rename,unlink,fsync,fdatasync,ftruncate';
/** More steps than this is no change of a key. */
const MOST = 500;

export interface KeyStepReport {
  /** Kills, one before each step. */
  kills: number;
  /** Kills after which the next passphrase was the one that opens. */
  nextInUse: number;
  faults: string[];
}

/** @param every kill before each of so many steps only, 1 = all. Null where strace is not here or may not trace. */
export async function keyChangeKilledAtEachStep(every = 1): Promise<KeyStepReport | null> {
  const report: KeyStepReport = { kills: 0, nextInUse: 0, faults: [] };
  const caseload = await freshCaseload();
  const id = fill(caseload);
  const { head } = caseload.verifyTrail();
  caseload.close();
  const changer = fileURLToPath(new URL('key-changer.ts', import.meta.url));
  const base = mkdtempSync(path.join(tmpdir(), 'fairhand-key-steps-'));
  try {
    for (let n = 1; n < MOST && report.faults.length === 0; n += every) {
      const folder = path.join(base, String(n));
      cpSync(caseload.folder, folder, { recursive: true });
      const inject = `inject=${STEPS}:signal=SIGKILL:when=${n}`;
      const node = [process.execPath, '--no-warnings', changer, folder, PASSPHRASE, OTHER, 'once'];
      const { status, error } = spawnSync('strace', ['-f', '-qq', '-o', '/dev/null', '-e', inject, ...node]);
      if (error) return null;
      const killed = status !== 0;
      // The very first is killed wherever strace may trace.
      if (!killed && n === 1) return null;
      if (killed) report.kills++;
      const opened = [];
      for (const passphrase of [PASSPHRASE, OTHER]) {
        const tried = await openCaseload({ folder, passphrase, now: NOW });
        if (!tried.ok) continue;
        opened.push(passphrase);
        const { caseload: left } = tried;
        const { whole, head: found } = left.verifyTrail();
        if (left.record(id).client.name !== 'Kept Safe' || left.counts()['blob'] !== 6 || !whole || found !== head)
          report.faults.push(`step ${n}: something is gone`);
        left.close();
      }
      if (opened.length !== 1) report.faults.push(`step ${n}: ${opened.length} passphrases open it`);
      if (opened[0] === OTHER) report.nextInUse += killed ? 1 : 0;
      else if (!killed) report.faults.push('the change was not made');
      rmSync(folder, { recursive: true, force: true });
      if (!killed) break;
    }
  } finally {
    for (const folder of [base, caseload.folder]) rmSync(folder, { recursive: true, force: true });
  }
  return report;
}
