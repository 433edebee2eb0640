/**
 * The only place that opens a caseload file: cipher, key, pragmas (each read back), and a statement, because
 * opening alone does not find damage.
 */
import Database from 'better-sqlite3';
import { CaseloadError } from './codes.ts';
import { touchPrivate } from './files.ts';
import { caseloadKey } from './key-file.ts';

export type Db = Database.Database;

const statements = new WeakMap<Db, Map<string, Database.Statement>>();

function kept(db: Db, key: string, make: () => Database.Statement): Database.Statement {
  const of = statements.get(db) ?? new Map<string, Database.Statement>();
  statements.set(db, of);
  const known = of.get(key) ?? make();
  of.set(key, known);
  return known;
}

/**
 * A statement of every write, compiled once for a connection: compiling took 40 % of a write's time, and what it took
 * (48 kB a fact) was given back only when the process came to rest. Not to be read row by row, nor changed by `pluck`.
 */
export const statement = (db: Db, sql: string): Database.Statement => kept(db, sql, () => db.prepare(sql));

/** The same, answering the first column alone. */
export const plucked = (db: Db, sql: string): Database.Statement =>
  kept(db, `pluck ${sql}`, () => db.prepare(sql).pluck());

/** 'Fair' in ASCII: tells our file from any other SQLite file. */
const APPLICATION_ID = 0x46616972;

/** Pragmas of every connection and what each must read back as. */
export const pragmas: readonly (readonly [name: string, set: string, readsBack: unknown])[] = [
  // Write-ahead log: readers in a worker never stop the writer.
  ['journal_mode', 'WAL', 'wal'],
  // Every commit reaches the disk before it counts. A reopened WAL file falls back to NORMAL, so set each time.
  ['synchronous', 'FULL', 2],
  ['foreign_keys', 'ON', 1],
  // Functions in the schema of a manipulated file must not run.
  ['trusted_schema', 'OFF', 0],
  // INSERT OR REPLACE must meet the trail's delete trigger too.
  ['recursive_triggers', 'ON', 1],
  ['cell_size_check', 'ON', 1],
  // A disk error under a memory map would end the process instead of reporting an error.
  ['mmap_size', '0', 0],
  // Deleted content is overwritten with zeros.
  ['secure_delete', 'ON', 1],
  // 64 MB of decrypted pages: a whole caseload's lists without reading and decrypting them again.
  ['cache_size', '-65536', -65536],
  // Intermediate results stay in memory: nothing of a client in the temp folder.
  ['temp_store', 'MEMORY', 2],
];

/** The key must be the first thing a connection hears. `identity` is left as it is; our copies are zeroed. */
function applyKey(db: Db, identity: Uint8Array): void {
  db.pragma("cipher = 'chacha20'");
  const key = caseloadKey(identity);
  // Digit by digit: a string could not be zeroed.
  const raw = Buffer.alloc(4 + 2 * key.length);
  raw.write('raw:', 'ascii');
  const digit = (value: number): number => value + (value < 10 ? 0x30 : 0x57);
  for (const [n, byte] of key.entries()) {
    raw[4 + 2 * n] = digit(byte >> 4);
    raw[5 + 2 * n] = digit(byte & 15);
  }
  key.fill(0);
  try {
    // Missing in the published types.
    (db as Db & { key(key: Buffer): void }).key(raw);
  } finally {
    raw.fill(0);
  }
}

const simple = (db: Db, name: string): unknown => db.pragma(name, { simple: true });

function settings(db: Db, readonly: boolean): void {
  for (const [name, set, expected] of pragmas) {
    if (readonly && (name === 'journal_mode' || name === 'secure_delete')) continue;
    db.pragma(`${name} = ${set}`);
    if (simple(db, name) !== expected) throw new CaseloadError('internal', name);
  }
}

/** A new, empty, encrypted file; what lies there under that name is emptied. @throws when it cannot be written */
export function createFile(file: string, identity: Uint8Array): Db {
  touchPrivate(file);
  const db = new Database(file, { timeout: 2000 });
  try {
    applyKey(db, identity);
    db.pragma(`application_id = ${APPLICATION_ID}`);
    settings(db, false);
    return db;
  } catch (error) {
    db.close();
    throw error;
  }
}

/** Version of a file's tables, read without changing a byte of it. @throws damaged when it is no caseload */
export function readVersion(file: string, identity: Uint8Array): number {
  const db = new Database(file, { readonly: true, fileMustExist: true, timeout: 2000 });
  try {
    applyKey(db, identity);
    db.prepare('SELECT count(*) FROM sqlite_schema').get();
    if (simple(db, 'application_id') !== APPLICATION_ID) throw new CaseloadError('damaged');
    return simple(db, 'user_version') as number;
  } finally {
    db.close();
  }
}

/** Opens for reading and writing. @throws SQLite errors; the file was seen by `readVersion` before */
export function openFile(file: string, identity: Uint8Array): Db {
  const db = new Database(file, { fileMustExist: true, timeout: 2000 });
  try {
    applyKey(db, identity);
    settings(db, false);
    db.prepare('SELECT count(*) FROM sqlite_schema').get();
    return db;
  } catch (error) {
    db.close();
    throw error;
  }
}

/** Opens for reading only, for workers (backup, checks) beside the open caseload. */
export function openReader(file: string, identity: Uint8Array): Db {
  const db = new Database(file, { readonly: true, fileMustExist: true, timeout: 5000 });
  try {
    applyKey(db, identity);
    settings(db, true);
    db.prepare('SELECT count(*) FROM sqlite_schema').get();
    return db;
  } catch (error) {
    db.close();
    throw error;
  }
}

/** Optimizes, empties the write-ahead log into the file, closes. */
export function closeFile(db: Db): void {
  if (!db.open) return;
  try {
    db.pragma('optimize');
    db.pragma('wal_checkpoint(TRUNCATE)');
  } finally {
    db.close();
  }
}

/** 'ok' or what SQLite found. `full` also compares indexes with their tables. */
export function checkFile(db: Db, full: boolean): string {
  const rows = db.pragma(full ? 'integrity_check(20)' : 'quick_check(20)') as Record<string, string>[];
  const lines = rows.flatMap((row) => Object.values(row));
  if (full && lines.join() === 'ok') {
    const orphans = db.pragma('foreign_key_check') as unknown[];
    if (orphans.length > 0) return `${orphans.length} rows point at nothing`;
  }
  return lines.join('; ');
}
