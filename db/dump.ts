/**
 * A caseload as plain entries: rows as JSON lines, pictures as their original bytes. Backups are made of them, so
 * that what is kept can be read without Fairhand and without SQLite, page for page damage does not travel along, and
 * no plain copy of the file ever lies on the disk.
 */
import { createHash } from 'node:crypto';
import { z } from 'zod';
import type { Counts } from './caseload-rows.ts';
import { CaseloadError } from './codes.ts';
import { statement, type Db } from './connection.ts';
import { versionOf } from './migrate.ts';
import { countRows, lastVisitDate } from './records/counts.ts';

export interface Entry {
  /** `rows/<table>-<number>.jsonl` or `blobs/<id>`. */
  name: string;
  data: Buffer;
}

/** What a backup says of itself. */
export const Manifest = z.object({
  format: z.literal('fairhand-backup'),
  version: z.literal(1),
  /** Version of the tables the rows come from. */
  schema: z.number().int().min(1),
  at: z.iso.datetime({ offset: true }),
  counts: z.record(z.string(), z.number().int().min(0)),
  lastVisit: z.iso.date().nullable(),
  /** Hash of the last trail entry. */
  trailHead: z.string(),
  /** Ids of the clients in it: after erasing one, this tells which backups still hold it. */
  clientIds: z.array(z.string().max(40)),
  /** Names of the pictures that lie beside it; absent: they are in it. */
  pictures: z.array(z.string().max(64)).optional(),
});
export type Manifest = z.infer<typeof Manifest>;

const PIECES = 'ink_piece';

/** Bytes of rows in one entry, about. */
const CHUNK = 1024 * 1024;

/**
 * Tables in an order in which every row finds what it points at. Pieces of a bout that is being written, or that a crash
 * cut off, travel as hexadecimal text: they are no blob yet.
 */
const tables = [
  'client',
  'blob',
  'visit',
  'intake_answer',
  'red_flag',
  'setup',
  'sample',
  'sample_page',
  'ink_recording',
  PIECES,
  'spiral_sheet',
  'page_measurement',
  'reading',
  'program',
  'practice_log',
  'practice_page',
  'goal',
  'goal_rating',
  'page_draft',
  'issued_page',
  'writing_occasion',
  'signature_check',
  'trial',
  'visit_plan',
  'unkept_words',
  'setting',
  'trail',
  'trail_value',
  'trail_head',
  'handed_entry',
  'handed_laptop',
] as const;

const isTable = (name: string): boolean => (tables as readonly string[]).includes(name);

/** Columns that are stored, not generated; the bytes of a blob travel as an entry of their own. */
function storedColumns(db: Db, table: string): string[] {
  const columns = db.pragma(`table_xinfo(${table})`) as { name: string; hidden: number }[];
  return columns
    .filter((each) => each.hidden === 0 && (each.name !== 'bytes' || table === PIECES))
    .map((each) => each.name);
}

/** A table that the file's own schema version does not have yet has no columns. */
const readColumns = (db: Db, table: string): string[] =>
  storedColumns(db, table).map((name) => (name === 'bytes' ? 'hex(bytes) AS bytes' : name));

export function manifestOf(db: Db, at: string): Manifest {
  return {
    format: 'fairhand-backup',
    version: 1,
    schema: versionOf(db),
    at,
    counts: countRows(db),
    lastVisit: lastVisitDate(db),
    trailHead: db.prepare('SELECT hash FROM trail_head').pluck().get() as string,
    clientIds: db.prepare('SELECT id FROM client ORDER BY id').pluck().all() as string[],
  };
}

function* rowsOf(db: Db, table: string): Generator<Entry> {
  const columns = readColumns(db, table);
  if (columns.length === 0) return;
  let lines: string[] = [];
  let size = 0;
  let number = 1;
  const entry = (): Entry => ({
    name: `rows/${table}-${String(number++).padStart(4, '0')}.jsonl`,
    data: Buffer.from(`${lines.join('\n')}\n`),
  });
  const rows = db.prepare(`SELECT ${columns.join(', ')} FROM ${table} ORDER BY rowid`);
  for (const row of rows.iterate()) {
    const line = JSON.stringify(row);
    lines.push(line);
    size += line.length;
    if (size < CHUNK) continue;
    yield entry();
    lines = [];
    size = 0;
  }
  if (lines.length > 0) yield entry();
}

/** All rows; those of pictures without their bytes. */
export function* dumpRows(db: Db): Generator<Entry> {
  for (const table of tables) yield* rowsOf(db, table);
}

/** What is known of each picture without reading it. */
export const picturesOf = (db: Db): { id: string; sha256: string; size: number }[] =>
  db.prepare('SELECT id, sha256, size FROM blob ORDER BY rowid').all() as {
    id: string;
    sha256: string;
    size: number;
  }[];

export const pictureBytes = (db: Db, id: string): Buffer =>
  db.prepare('SELECT bytes FROM blob WHERE id = ?').pluck().get(id) as Buffer;

/** Everything in the file, one entry after the other. Read inside one transaction, so that it is one moment's state. */
export function* dump(db: Db): Generator<Entry> {
  yield* dumpRows(db);
  for (const { id } of picturesOf(db)) yield { name: `blobs/${id}`, data: pictureBytes(db, id) };
}

/** A picture's row without its bytes: for a file that is only compared. All other rows, which come before, are checked. */
function insertWithoutBytes(db: Db, row: Record<string, unknown>): void {
  db.pragma('ignore_check_constraints = ON');
  insert(db, 'blob', { ...row, bytes: NO_BYTES });
}

/** Puts the rows of pictures in that wait for bytes kept elsewhere. */
export function loadWithoutBytes(db: Db, waiting: Map<string, Record<string, unknown>>): void {
  db.transaction(() => {
    for (const row of waiting.values()) insertWithoutBytes(db, row);
  }).immediate();
  waiting.clear();
}

const NO_BYTES = Buffer.alloc(0);
const JsonLine = z.record(z.string(), z.union([z.string(), z.number(), z.null()]));

/**
 * Puts one entry into an empty file of the same schema version. Rows of blobs wait for their bytes in `waiting`.
 * @param withBytes false: the bytes are compared with their row and left out
 * @throws malformed-request for an entry that does not fit; SQLite's own errors for rows that do not
 */
export function load(db: Db, entry: Entry, waiting: Map<string, Record<string, unknown>>, withBytes = true): void {
  const rows = /^rows\/([a-z_]{1,40})-\d{4,6}\.jsonl$/.exec(entry.name);
  const blob = /^blobs\/([0-9a-f-]{36})$/.exec(entry.name);
  const table = rows?.[1];
  if (table !== undefined && isTable(table)) {
    db.transaction(() => loadRows(db, table, entry.data, waiting)).immediate();
  } else if (blob?.[1] !== undefined) {
    const row = waiting.get(blob[1]);
    if (!row || createHash('sha256').update(entry.data).digest('hex') !== row['sha256']) {
      throw new CaseloadError('malformed-request', 'blob');
    }
    waiting.delete(blob[1]);
    if (withBytes) insert(db, 'blob', { ...row, bytes: entry.data });
    else insertWithoutBytes(db, row);
  } else throw new CaseloadError('malformed-request', 'entry');
}

function loadRows(db: Db, table: string, data: Buffer, waiting: Map<string, Record<string, unknown>>): void {
  const columns = new Set(storedColumns(db, table));
  if (table === 'trail_head') db.exec('DELETE FROM trail_head');
  for (const line of data.toString('utf8').split('\n')) {
    if (line === '') continue;
    const row = JsonLine.parse(JSON.parse(line));
    if (!Object.keys(row).every((name) => columns.has(name))) throw new CaseloadError('malformed-request', table);
    if (table === 'blob') waiting.set(String(row['id']), row);
    else if (table === PIECES) insert(db, table, { ...row, bytes: Buffer.from(String(row['bytes']), 'hex') });
    else insert(db, table, row);
  }
}

function insert(db: Db, table: string, row: Record<string, unknown>): void {
  const names = Object.keys(row);
  const values = names.map((name) => `@${name}`);
  statement(db, `INSERT INTO ${table} (${names.join(', ')}) VALUES (${values.join(', ')})`).run(row);
}

/** SHA-256 of every entry by name: two files with the same sums hold the same. */
export function sumsOf(entries: Iterable<Entry>): Record<string, string> {
  const sums: Record<string, string> = {};
  for (const { name, data } of entries) sums[name] = createHash('sha256').update(data).digest('hex');
  return sums;
}

/** Same keys with the same values. */
export const sameCounts = (a: Counts, b: Counts): boolean =>
  JSON.stringify(Object.entries(a).sort()) === JSON.stringify(Object.entries(b).sort());
