/** Kills the typist at random moments and looks at what is left. */
import { rmSync } from 'node:fs';
import { checkFile, openReader } from '../../db/connection.ts';
import { caseloadFile } from '../../db/files.ts';
import { openCaseload } from '../../db/index.ts';
import { freshCaseload, NOW, PASSPHRASE, runScript } from './children.ts';
import { seeded } from './random.ts';

export interface KillReport {
  kills: number;
  /** Kills that fell while the typist was still starting: nothing was written. */
  beforeTheFirstSave: number;
  /** Saves that the typist had reported, over all runs. */
  saves: number;
  /** Reported saves that were not there afterwards: must be 0. */
  lost: number;
  /** What was wrong afterwards, in words; must be empty. */
  faults: string[];
}

/** Types until killed. Answers the last reported trail number; 0 when none. */
async function typeAndKill(folder: string, seed: number, afterMs: number): Promise<number> {
  const { code, out, err } = await runScript('typist.ts', [folder, String(seed)], afterMs);
  if (code !== null) throw new Error(`the typist ended by itself (${code}): ${err.slice(0, 400)}`);
  // The last line may be cut by the kill.
  const lines = out.slice(0, out.lastIndexOf('\n') + 1).trim();
  return lines === '' ? 0 : Number(lines.slice(lines.lastIndexOf('\n') + 1));
}

async function look(folder: string, reported: number, report: KillReport): Promise<void> {
  const opened = await openCaseload({ folder, passphrase: PASSPHRASE, now: NOW });
  if (!opened.ok) {
    report.faults.push(`did not open: ${opened.code}`);
    return;
  }
  const { caseload } = opened;
  try {
    if (caseload.lastSeq() < reported) report.lost += reported - caseload.lastSeq();
    const trail = caseload.verifyTrail();
    if (!trail.whole) report.faults.push(`trail broken at ${trail.brokenAt}`);
    const integrity = caseload.withKey((identity) => {
      const db = openReader(caseloadFile(folder), identity);
      try {
        return checkFile(db, true);
      } finally {
        db.close();
      }
    });
    if (integrity !== 'ok') report.faults.push(integrity);
  } finally {
    caseload.close();
  }
}

/** `kills` kills, repeatable in what is typed by `seed`; a fresh caseload every 40. */
export async function killTest(kills: number, seed: number, tell?: (done: number) => void): Promise<KillReport> {
  const random = seeded(seed);
  const report: KillReport = { kills: 0, beforeTheFirstSave: 0, saves: 0, lost: 0, faults: [] };
  let folder = '';
  let before = 0;
  try {
    for (let n = 0; n < kills; n++) {
      if (n % 40 === 0) {
        if (folder !== '') rmSync(folder, { recursive: true, force: true });
        const made = await freshCaseload();
        folder = made.folder;
        made.close();
        before = 0;
      }
      const reported = await typeAndKill(folder, seed + n, random() ** 2 * 400);
      report.kills++;
      if (reported === 0) report.beforeTheFirstSave++;
      else {
        report.saves += reported - before;
        before = reported;
      }
      await look(folder, reported, report);
      tell?.(n + 1);
    }
  } finally {
    if (folder !== '') rmSync(folder, { recursive: true, force: true });
  }
  return report;
}
