/** Whether a file's tables, indexes and triggers are those that the migrations make: none removed, none foreign. */
import Database from 'better-sqlite3';
import type { Db } from './connection.ts';
import { migrate, readMigrations, versionOf, type Migration } from './migrate.ts';

/** Tables that SQLite makes for itself. */
const OURS =
  "SELECT type, name, sql FROM sqlite_schema WHERE name NOT LIKE 'sqlite\\_%' ESCAPE '\\' ORDER BY type, name";

type Row = { type: string; name: string; sql: string | null };
const lines = (db: Db): string[] =>
  (db.prepare(OURS).all() as Row[]).map(({ type, name, sql }) => `${type} ${name}: ${sql ?? ''}`);

/** Names of what is missing, foreign or other than the migrations make it; empty when all is right. */
export function schemaDifferences(db: Db, migrations: readonly Migration[] = readMigrations()): string[] {
  const plain = new Database(':memory:');
  try {
    migrate(plain, null, '', migrations, versionOf(db));
    const [found, wanted] = [lines(db), lines(plain)];
    const different = [
      ...wanted.filter((line) => !found.includes(line)),
      ...found.filter((line) => !wanted.includes(line)),
    ];
    return [...new Set(different.map((line) => line.slice(0, line.indexOf(':'))))];
  } finally {
    plain.close();
  }
}
