/** Kills a pen that writes, and counts what is lost of its ink. */
import { rmSync } from 'node:fs';
import { openCaseload } from '../../db/index.ts';
import { RAW_BYTES, unpackSamples } from '../../renderer/ink/index.ts';
import { freshCaseload, NOW, PASSPHRASE, runScript } from './children.ts';
import { seeded } from './random.ts';

export interface PenKillReport {
  kills: number;
  /** Longest stretch of ink that a kill cost, s; must be at most 1. */
  lostSeconds: number;
  faults: string[];
}

const RATE_HZ = 240;

/** `kills` kills of a pen that writes at 240 Hz, each at a random moment of its first three seconds. */
export async function penKillTest(kills: number, seed: number): Promise<PenKillReport> {
  const random = seeded(seed);
  const report: PenKillReport = { kills: 0, lostSeconds: 0, faults: [] };
  for (let n = 0; n < kills; n++) {
    const made = await freshCaseload();
    const { folder } = made;
    made.close();
    try {
      const { code, out, err } = await runScript('pen-writer.ts', [folder], 300 + random() * 2700);
      if (code !== null) throw new Error(`the pen ended by itself (${code}): ${err.slice(0, 400)}`);
      report.kills++;
      const [recordingId = '', sent = '0'] = out.slice(0, out.lastIndexOf('\n')).trim().split('\n').at(-1)!.split(' ');
      const opened = await openCaseload({ folder, passphrase: PASSPHRASE, now: NOW });
      if (!opened.ok) {
        report.faults.push(`did not open: ${opened.code}`);
        continue;
      }
      const bytes = opened.caseload.inkSoFar(recordingId);
      if (!opened.caseload.verifyTrail().whole) report.faults.push('trail broken');
      opened.caseload.close();
      if (bytes.byteLength % RAW_BYTES !== 0) report.faults.push('half a sample');
      const lost = (Number(sent) - unpackSamples(bytes).length) / RATE_HZ;
      report.lostSeconds = Math.max(report.lostSeconds, lost);
    } finally {
      rmSync(folder, { recursive: true, force: true });
    }
  }
  return report;
}
