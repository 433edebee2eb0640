/** Kills changes of the key in the middle: nothing is lost, and only one of the two passphrases opens what is left. */
import { copyFileSync, readdirSync, rmSync } from 'node:fs';
import path from 'node:path';
import { keyFile, keyFileCopy } from '../../db/files.ts';
import { openCaseload } from '../../db/index.ts';
import { fill } from './backups.ts';
import { freshCaseload, NOW, PASSPHRASE, runScript } from './children.ts';
import { seeded } from './random.ts';

const OTHER = 'another passphrase that protects nothing';

export interface KeyChangeReport {
  kills: number;
  /** Changes that were finished before the kills. */
  changes: number;
  /** Kills after which the next passphrase was the one that opens. */
  nextInUse: number;
  faults: string[];
}

export async function keyChangeKillTest(kills: number, seed: number): Promise<KeyChangeReport> {
  const random = seeded(seed);
  const report: KeyChangeReport = { kills: 0, changes: 0, nextInUse: 0, faults: [] };
  const caseload = await freshCaseload();
  const { folder } = caseload;
  const id = fill(caseload);
  const { head } = caseload.verifyTrail();
  caseload.close();
  let [inUse, next] = [PASSPHRASE, OTHER];
  // Follows how long a change takes on this machine now, so that kills fall before, into and after each of its steps.
  let spanMs = 400;
  const stolen = path.join(folder, 'stolen.json');
  const open = (passphrase: string) => openCaseload({ folder, passphrase, now: NOW });
  try {
    for (let n = 0; n < kills && report.faults.length === 0; n++) {
      copyFileSync(keyFile(folder), stolen);
      const { code, out, err } = await runScript('key-changer.ts', [folder, inUse, next], random() * spanMs);
      if (code !== null) report.faults.push(`ended by itself: ${err.slice(0, 300)}`);
      report.kills++;
      const finished = out.split('\n').length - 1;
      report.changes += finished;
      spanMs = Math.min(20_000, Math.max(100, spanMs * (finished === 0 ? 1.3 : finished > 1 ? 0.8 : 1)));
      const opened = [];
      for (const passphrase of [inUse, next]) {
        const tried = await open(passphrase);
        if (!tried.ok) continue;
        opened.push(passphrase);
        const { caseload: left } = tried;
        if (left.record(id).client.name !== 'Kept Safe' || left.counts()['blob'] !== 6)
          report.faults.push('a record is gone');
        const trail = left.verifyTrail();
        if (!trail.whole || trail.head !== head) report.faults.push('the trail broke');
        left.close();
      }
      if (opened.length !== 1) report.faults.push(`kill ${n}: ${opened.length} passphrases open it`);
      if (opened[0] === next) report.nextInUse++;
      if (finished > 0) {
        // Yesterday's key file and yesterday's passphrase, beside today's file.
        const present = path.join(folder, 'present.json');
        copyFileSync(keyFile(folder), present);
        for (const name of [keyFile(folder), keyFileCopy(folder)]) copyFileSync(stolen, name);
        if ((await open(inUse)).ok) report.faults.push('an old key file opens it');
        for (const name of [keyFile(folder), keyFileCopy(folder)]) copyFileSync(present, name);
        rmSync(present);
      }
      if (opened[0] === next) [inUse, next] = [next, inUse];
      rmSync(stolen);
      const strange = readdirSync(folder).filter((name) => !/^caseload\.(db|key|lock)|^caseload\.key-copy/.test(name));
      if (strange.length > 0) report.faults.push(`left: ${strange.join(', ')}`);
    }
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
  return report;
}
