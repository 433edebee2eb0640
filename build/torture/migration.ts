/**
 * Kills every migration at every statement, from every earlier version, and looks at what is left: the file as it was
 * when that migration began, which opens and then goes through.
 */
import { randomUUID } from 'node:crypto';
import { cpSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { checkFile, createFile, openFile, type Db } from '../../db/connection.ts';
import { caseloadFile } from '../../db/files.ts';
import { migrate, readMigrations, versionOf } from '../../db/migrate.ts';
import { unlock } from '../../db/open.ts';
import { freshCaseload, PASSPHRASE, runScript } from './children.ts';
import { NEXT_STATEMENTS, statementsOf } from './next-migration.ts';

export interface MigrationReport {
  kills: number;
  faults: string[];
}

/** What is in the file, as text: the same before and after a killed migration. */
const contentOf = (db: Db): string =>
  JSON.stringify([
    versionOf(db),
    db.prepare("SELECT name, sql FROM sqlite_schema WHERE name NOT LIKE 'sqlite_%' ORDER BY name").all(),
    versionOf(db) === 0 ? [] : db.prepare('SELECT body FROM client UNION ALL SELECT body FROM visit').all(),
  ]);

/** A caseload folder at one version; from version 1 on with a client and a visit. */
async function folderAt(version: number): Promise<{ folder: string; identity: Buffer }> {
  const caseload = await freshCaseload();
  const { folder } = caseload;
  caseload.close();
  const identity = (await unlock(folder, { passphrase: PASSPHRASE })).secrets[0]!.identity;
  rmSync(caseloadFile(folder));
  const db = createFile(caseloadFile(folder), identity);
  migrate(db, null, 'x', readMigrations(), version);
  if (version > 0) {
    const client = { id: randomUUID(), at: 'x', by: 'x', code: 'C1', name: 'Kept', note: 'note', archivedOn: null };
    db.prepare('INSERT INTO client (id, made, body, folded) VALUES (?, 1, ?, ?)').run(
      client.id,
      JSON.stringify(client),
      'kept',
    );
    const visit = { id: randomUUID(), clientId: client.id, date: '2026-03-04', at: 'x', by: 'x', plan: 'before' };
    db.prepare('INSERT INTO visit (id, made, body) VALUES (?, 2, ?)').run(visit.id, JSON.stringify(visit));
  }
  db.close();
  return { folder, identity };
}

/** What the file holds when the migration at `index` begins: the ones before it went through. */
function whenItBegins(folder: string, identity: Buffer, index: number): string {
  const copy = mkdtempSync(path.join(tmpdir(), 'fairhand-migration-'));
  cpSync(folder, copy, { recursive: true });
  const db = openFile(caseloadFile(copy), identity);
  migrate(db, null, 'x', readMigrations(), index);
  const content = contentOf(db);
  db.close();
  rmSync(copy, { recursive: true, force: true });
  return content;
}

/** @param everyNth 1 = at every statement; larger for a share of it */
export async function migrationKillTest(everyNth: number): Promise<MigrationReport> {
  const report: MigrationReport = { kills: 0, faults: [] };
  const shipped = readMigrations();
  const targets = [...shipped.map((each) => each.sql), NEXT_STATEMENTS.join('\n')];
  for (const from of targets.keys()) {
    const { folder, identity } = await folderAt(from);
    for (const [index, sql] of targets.entries()) if (index >= from) await killAt(folder, identity, index, sql);
    rmSync(folder, { recursive: true, force: true });
  }
  return report;

  async function killAt(folder: string, identity: Buffer, index: number, sql: string): Promise<void> {
    const before = whenItBegins(folder, identity, index);
    const count = statementsOf(sql).length;
    for (let at = 0; at <= count; at += everyNth) {
      const copy = mkdtempSync(path.join(tmpdir(), 'fairhand-migration-'));
      cpSync(folder, copy, { recursive: true });
      const fault = (what: string) => report.faults.push(`version ${index + 1}, statement ${at}: ${what}`);
      const { code, err } = await runScript('migrate-and-die.ts', [copy, String(index + 1), String(at)], null);
      if (code !== null) fault(`not killed: ${err.slice(0, 300)}`);
      const db = openFile(caseloadFile(copy), identity);
      if (contentOf(db) !== before) fault('the file changed');
      if (checkFile(db, true) !== 'ok') fault(checkFile(db, true));
      if (migrate(db, null, 'x', shipped) !== shipped.length) fault('it did not go through afterwards');
      db.close();
      rmSync(copy, { recursive: true, force: true });
      report.kills++;
    }
  }
}
