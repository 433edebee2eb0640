/**
 * Migrates a caseload and kills itself at one statement. Arguments: folder, migration version, statement (0 = before
 * the first). The migrations are the shipped ones, and one more that stands for the next version.
 */
import { openFile } from '../../db/connection.ts';
import { caseloadFile } from '../../db/files.ts';
import { migrate, readMigrations, type Migration } from '../../db/migrate.ts';
import { unlock } from '../../db/open.ts';
import { NEXT_STATEMENTS, statementsOf } from './next-migration.ts';

const [folder = '', version = '0', at = '0'] = process.argv.slice(2);
const { secrets } = await unlock(folder, { passphrase: process.env['FAIRHAND_PASSPHRASE'] ?? '' });
const db = openFile(caseloadFile(folder), secrets[0]!.identity);
db.function('die', () => process.kill(process.pid, 'SIGKILL'));

const shipped = readMigrations();
const all: Migration[] = [
  ...shipped,
  { version: shipped.length + 1, name: 'next.sql', sql: NEXT_STATEMENTS.join('\n') },
];
const dying = all.map((migration) => {
  if (migration.version !== Number(version)) return migration;
  const statements = statementsOf(migration.sql);
  statements.splice(Number(at), 0, 'SELECT die();');
  return { ...migration, sql: statements.join('\n') };
});
migrate(db, folder, '20260304T091200Z', dying);
