/** Kills backups and restores in the middle, and feeds mutated backup files to the restore. */
import { randomUUID } from 'node:crypto';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { openCaseload, type Caseload } from '../../db/index.ts';
import { unlock } from '../../db/open.ts';
import { Refusal } from '../../electron/contract/envelope.ts';
import { openContainer } from '../../electron/files/backup/container.ts';
import { unpack } from '../../electron/files/backup/unpack.ts';
import { makeBackup } from '../../electron/files/backup/backup.ts';
import { backupNames, backupsFolder, listBackups } from '../../electron/files/backup/backup-list.ts';
import { freshCaseload, NOW, PASSPHRASE, runScript } from './children.ts';
import { pick, seeded } from './random.ts';
import { newClient } from '../../renderer/logic/caseload/new-client.ts';

export interface BackupKillReport {
  kills: number;
  /** Backups that were listed after the kills; each was read whole. */
  listed: number;
  faults: string[];
}

export function fill(caseload: Caseload): string {
  const id = randomUUID();
  const doing = { at: NOW, by: 'TY' };
  caseload.put('client', { ...newClient(id, 'Kept Safe', 'K1'), birthYear: 1950 }, doing);
  for (let n = 0; n < 6; n++) caseload.putBlob(id, 'image/png', Buffer.alloc(500_000, n + 1), doing);
  return id;
}

/** Every second kill falls into a restore. */
export async function backupKillTest(kills: number, seed: number): Promise<BackupKillReport> {
  const random = seeded(seed);
  const report: BackupKillReport = { kills: 0, listed: 0, faults: [] };
  const caseload = await freshCaseload();
  const { folder } = caseload;
  const id = fill(caseload);
  const place = backupsFolder(folder);
  const { name } = await caseload.withKey((identity) => makeBackup({ folder, identity, now: NOW }));
  caseload.close();
  try {
    for (let n = 0; n < kills; n++) {
      const what = n % 2 === 0 ? 'backup' : path.join(place, name);
      const { code, err } = await runScript('saver.ts', [folder, what], random() * 3000);
      if (code !== null) report.faults.push(`ended by itself: ${err.slice(0, 300)}`);
      report.kills++;
      const opened = await openCaseload({ folder, passphrase: PASSPHRASE, now: NOW });
      if (!opened.ok) {
        report.faults.push(`did not open after kill ${n}: ${opened.code}`);
        break;
      }
      if (opened.caseload.record(id).client.name !== 'Kept Safe') report.faults.push('the record changed');
      if (!opened.caseload.verifyTrail().whole) report.faults.push('the trail broke');
      const listed = await opened.caseload.withKey((identity) => listBackups(place, identity));
      report.listed += listed.length;
      if (listed.some((each) => !each.verified)) report.faults.push('a half backup was listed');
      opened.caseload.close();
      for (const each of backupNames(place).slice(0, -1)) rmSync(path.join(place, each.name));
      rmSync(path.join(folder, 'set-aside'), { recursive: true, force: true });
    }
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
  return report;
}

export interface FuzzReport {
  inputs: number;
  /** Mutations that changed nothing that matters (padding, the read-me) and unpacked to the same content. */
  harmless: number;
  refusals: Record<string, number>;
  slowestMs: number;
  faults: string[];
}

/** One way to spoil bytes. */
function mutated(bytes: Buffer, random: () => number): Buffer {
  const at = (): number => Math.floor(random() * bytes.length);
  const copy = Buffer.from(bytes);
  // Half of the changes fall into the first 4 kB: headers, key file, manifest.
  const spot = random() < 0.5 ? Math.floor(random() * 4096) : at();
  switch (pick(random, ['bit', 'byte', 'cut', 'zero', 'swap', 'double', 'insert'])) {
    case 'bit':
      copy[spot]! ^= 1 << Math.floor(random() * 8);
      return copy;
    case 'byte':
      copy[spot] = Math.floor(random() * 256);
      return copy;
    case 'cut':
      return copy.subarray(0, at());
    case 'zero':
      return copy.fill(0, spot, Math.min(copy.length, spot + 600));
    case 'swap':
      bytes.copy(copy, spot, at(), at() + 512);
      return copy;
    case 'double':
      return Buffer.concat([copy.subarray(0, spot), copy.subarray(Math.floor(spot / 2))]);
    default:
      return Buffer.concat([copy.subarray(0, spot), Buffer.from('../../../etc/passwd\0'), copy.subarray(spot)]);
  }
}

/** Mutated backups: each is refused with a sentence or unpacks to the same; nothing is written elsewhere. */
export async function backupFuzz(inputs: number, seed: number): Promise<FuzzReport> {
  const random = seeded(seed);
  const report: FuzzReport = { inputs: 0, harmless: 0, refusals: {}, slowestMs: 0, faults: [] };
  const caseload = await freshCaseload();
  const { folder } = caseload;
  const id = randomUUID();
  caseload.putSetting('clinic', { id, name: 'Fuzz' }, { at: NOW, by: 'TY' });
  const { name } = await caseload.withKey((identity) => makeBackup({ folder, identity, now: NOW }));
  caseload.close();
  const { identity } = (await unlock(folder, { passphrase: PASSPHRASE })).secrets[0]!;
  const good = readFileSync(path.join(backupsFolder(folder), name));
  const place = mkdtempSync(path.join(tmpdir(), 'fairhand-fuzz-'));
  const file = path.join(place, 'input.tar');
  try {
    for (let n = 0; n < inputs; n++) {
      writeFileSync(file, mutated(good, random));
      const began = performance.now();
      try {
        await unpack(
          { container: await openContainer(file), identity, scratch: path.join(place, 'scratch.db') },
          () => {},
        );
        report.harmless++;
      } catch (error) {
        if (error instanceof Refusal) report.refusals[error.code] = (report.refusals[error.code] ?? 0) + 1;
        else report.faults.push(`input ${n}: ${String(error).slice(0, 200)}`);
      }
      report.slowestMs = Math.max(report.slowestMs, Math.round(performance.now() - began));
      const left = readdirSync(place).filter((each) => each !== 'input.tar' && each !== 'scratch.db');
      if (left.length > 0) report.faults.push(`input ${n} left ${left.join(', ')}`);
      report.inputs++;
    }
  } finally {
    for (const each of [folder, place]) rmSync(each, { recursive: true, force: true });
  }
  return report;
}
