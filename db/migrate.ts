/**
 * Numbered, forward-only migrations: migrations/0001-first.sql and so on, each in one transaction that also sets
 * the file's version. The SQL is read from the folder beside this file; packaging must copy db/migrations along.
 */
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { CaseloadError } from './codes.ts';
import type { Db } from './connection.ts';
import { copiesFolder, makeFolder, settle, touchPrivate } from './files.ts';

export interface Migration {
  version: number;
  name: string;
  sql: string;
}

const migrationsFolder = fileURLToPath(new URL('migrations/', import.meta.url));

/** All migrations in order. @throws when a number is missing, doubled or malformed */
export function readMigrations(folder: string = migrationsFolder): Migration[] {
  const names = readdirSync(folder)
    .filter((name) => name.endsWith('.sql'))
    .sort();
  return names.map((name, index) => {
    const match = /^(\d{4})-[a-z0-9-]+\.sql$/.exec(name);
    if (!match || Number(match[1]) !== index + 1) {
      throw new Error(`Migration ${name} does not follow number ${index}: name it ${index + 1}, four digits, a word.`);
    }
    return { version: index + 1, name, sql: readFileSync(path.join(folder, name), 'utf8') };
  });
}

export const versionOf = (db: Db): number => db.pragma('user_version', { simple: true }) as number;

/** A whole, encrypted copy under its final name only when it is complete. VACUUM INTO keeps cipher and key. */
function copyInto(db: Db, target: string): void {
  const temporary = `${target}.part`;
  touchPrivate(temporary);
  db.prepare('VACUUM INTO ?').run(temporary);
  settle(temporary, target);
}

/**
 * Brings a file up to the newest version (or `upTo`). Before each step but the first a copy is kept in `copies/`.
 * @param folder where the copies go; null keeps none (an empty scratch file)
 * @param stamp goes into the copies' names, for example 20260304T091200Z
 */
export function migrate(
  db: Db,
  folder: string | null,
  stamp: string,
  migrations: readonly Migration[] = readMigrations(),
  upTo: number = migrations.length,
): number {
  const from = versionOf(db);
  if (from > migrations.length) throw new CaseloadError('newer-version', String(from));
  for (const migration of migrations.slice(from, upTo)) {
    if (folder !== null && migration.version > 1) {
      makeFolder(copiesFolder(folder));
      const name = `before-${String(migration.version).padStart(4, '0')}-${stamp}.db`;
      copyInto(db, path.join(copiesFolder(folder), name));
    }
    db.transaction(() => {
      db.exec(migration.sql);
      const broken = db.pragma('foreign_key_check') as unknown[];
      if (broken.length > 0) throw new CaseloadError('damaged', migration.name);
      db.pragma(`user_version = ${migration.version}`);
    }).immediate();
  }
  return versionOf(db);
}
