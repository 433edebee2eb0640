/**
 * Reads what can still be read from a damaged caseload file into a new one. The damaged file is only read.
 * Every fact lies in the file twice, in its table and in the trail's values: a smashed page rarely takes both.
 */
import { copyFileSync, rmSync } from 'node:fs';
import path from 'node:path';
import type { Counts } from './caseload-rows.ts';
import { CaseloadError } from './codes.ts';
import { closeFile, createFile, openReader, type Db } from './connection.ts';
import { caseloadFile, companions, keyFile, makeFolder, settle, writeDurably } from './files.ts';
import { keyFileText, readKeyFile } from './key-file.ts';
import { migrate } from './migrate.ts';
import { checksumOf } from './records/blobs.ts';
import { countRows, lastVisitDate } from './records/counts.ts';
import { allKinds, homes, isKind } from './records/kinds.ts';
import { newStep, read, setBody } from './records/store.ts';
import { append } from './records/trail.ts';
import { setAsideFolder } from './set-aside.ts';
import type { FactKind } from './types/record.ts';

export interface Salvage {
  /** Folder name under `set-aside/`; `putBack` makes it the caseload. */
  name: string;
  counts: Counts;
  lastVisit: string | null;
  /** Facts, pictures and settings that are known to have been there and could not be read. */
  lost: number;
}

/** Single rows are asked for in a gap of at most this many; more is a file beyond this kind of help. */
const LARGEST_GAP = 200_000;

/** The answer, or null where the file cannot be read. */
function attempt<T>(work: () => T): T | null {
  try {
    return work();
  } catch {
    return null;
  }
}

type Row = Record<string, unknown> & { rowid: number };

/** Reads a table forwards to the damage, backwards to the damage, and row by row in between. */
function readableRows(db: Db, table: string, columns: string): Row[] {
  const select = `SELECT rowid AS rowid, ${columns} FROM ${table}`;
  const scan = (order: 'ASC' | 'DESC', beyond: number): Row[] => {
    const rows: Row[] = [];
    const sign = order === 'ASC' ? '>' : '<';
    try {
      const next = db.prepare(`${select} WHERE rowid ${sign} ? ORDER BY rowid ${order} LIMIT 1`);
      for (let at = beyond; ; at = rows.at(-1)!.rowid) {
        const row = next.get(at) as Row | undefined;
        if (!row) return rows;
        rows.push(row);
      }
    } catch {
      return rows;
    }
  };
  const forwards = scan('ASC', 0);
  const from = forwards.at(-1)?.rowid ?? 0;
  const backwards = scan('DESC', Number.MAX_SAFE_INTEGER)
    .filter((row) => row.rowid > from)
    .reverse();
  const to = backwards[0]?.rowid ?? from;
  const between: Row[] = [];
  for (let at = from + 1; at < to && at <= from + LARGEST_GAP; at++) {
    try {
      const row = db.prepare(`${select} WHERE rowid = ?`).get(at) as Row | undefined;
      if (row) between.push(row);
    } catch {
      // This row is on a page that cannot be read.
    }
  }
  return [...forwards, ...between, ...backwards];
}

/** Latest text of every fact: from its table, else from the trail. */
function facts(db: Db): { found: Map<string, { kind: FactKind; body: string; made: number }>; known: Set<string> } {
  const found = new Map<string, { kind: FactKind; body: string; made: number }>();
  const values = new Map(readableRows(db, 'trail_value', 'after').map((row) => [row.rowid, row['after']]));
  const known = new Set<string>();
  for (const row of readableRows(db, 'trail', 'kind, fact_id')) {
    const [kind, id] = [String(row['kind']), String(row['fact_id'])];
    if (!isKind(kind)) continue;
    const after = values.get(row.rowid);
    if (typeof after === 'string') {
      found.set(id, { kind, body: after, made: found.get(id)?.made ?? row.rowid });
      known.add(id);
    } else if (after === null) {
      // Removed by this entry.
      found.delete(id);
      known.delete(id);
    }
  }
  for (const kind of allKinds) {
    for (const row of readableRows(db, homes[kind].table, 'id, made, body')) {
      const id = String(row['id']);
      known.add(id);
      found.set(id, { kind, body: String(row['body']), made: Number(row['made']) });
    }
  }
  return { found, known };
}

/** Fields by which a fact points at others. */
const parentsOf = (fact: Record<string, unknown>): unknown[] =>
  ['clientId', 'visitId', 'sampleId', 'pageId', 'goalId', 'blob', 'view', 'pdf'].flatMap((field) => fact[field] ?? []);

function fillFrom(damaged: Db, db: Db, now: string): number {
  const doing = { at: now, by: '–' };
  const step = newStep(doing, 'import');
  let lost = 0;
  const there = new Set<string>();
  const bytesOf = damaged.prepare('SELECT bytes FROM blob WHERE rowid = ?').pluck();
  for (const row of readableRows(damaged, 'blob', 'id, client_id, sha256, mime, size, at, by')) {
    const { rowid, ...blob } = row;
    const bytes = attempt(() => bytesOf.get(rowid));
    if (!Buffer.isBuffer(bytes) || checksumOf(bytes) !== blob['sha256']) {
      lost++;
      continue;
    }
    const names = [...Object.keys(blob), 'bytes'];
    const values = names.map((each) => `@${each}`);
    db.prepare(`INSERT INTO blob (${names.join(', ')}) VALUES (${values.join(', ')})`).run({ ...blob, bytes });
    const [clientId, factId] = [String(blob['client_id']), String(blob['id'])];
    const after = JSON.stringify({ sha256: blob['sha256'], mime: blob['mime'], bytes: blob['size'] });
    append(db, { clientId, kind: 'blob', factId, action: 'import', step: step.step, before: null, after }, doing);
    there.add(factId);
  }
  const { found, known } = facts(damaged);
  for (const kind of allKinds) {
    const ofKind = [...found].filter(([, each]) => each.kind === kind).sort(([, a], [, b]) => a.made - b.made);
    for (const [id, { body }] of ofKind) {
      const fact = attempt(() => read(kind, body)) as Record<string, unknown> | null;
      if (fact?.['id'] !== id || !parentsOf(fact).every((each) => there.has(String(each)))) continue;
      // In a savepoint: an older state from the trail may clash with a code that another client has now.
      const kept = attempt(() => db.transaction(() => setBody(db, kind, id, JSON.stringify(fact), step))() ?? true);
      if (kept) there.add(id);
    }
  }
  for (const id of known) if (!there.has(id)) lost++;
  for (const row of readableRows(damaged, 'setting', 'name, value')) {
    const [name, value] = [String(row['name']), String(row['value'])];
    db.prepare('INSERT INTO setting (name, value, at, by) VALUES (?, ?, ?, ?)').run(name, value, now, doing.by);
    const change = { clientId: null, kind: 'setting', factId: name, action: 'import', step: step.step } as const;
    append(db, { ...change, before: null, after: value }, doing);
  }
  return lost;
}

/**
 * Salvages `file` into `set-aside/<stamp>-salvaged`, a caseload of its own with a new trail that says 'import'.
 * Long: for a worker. @throws damaged when not even the list of tables can be read; disk-full
 */
export function salvage(options: { folder: string; file?: string; identity: Uint8Array; now: string }): Salvage {
  const { folder, identity, now, file = caseloadFile(folder) } = options;
  const key = readKeyFile(folder);
  if (key.state !== 'ok') throw new CaseloadError('key-file-missing');
  const name = `${now.replace(/\.\d+/, '').replace(/[-:]/g, '')}-salvaged`;
  const target = path.join(setAsideFolder(folder), name);
  makeFolder(target);
  // Reading may try to roll the log forward: on a copy, so that the damaged file stays as it is.
  const copy = path.join(target, 'damaged.part');
  copyFileSync(file, copy);
  try {
    copyFileSync(`${file}-wal`, `${copy}-wal`);
  } catch {
    // No log beside it.
  }
  const part = path.join(target, 'caseload.db.part');
  const damaged = openReader(copy, identity);
  try {
    const db = createFile(part, identity);
    try {
      migrate(db, null, '');
      const lost = db.transaction(() => fillFrom(damaged, db, now)).immediate();
      const report = { name, counts: countRows(db), lastVisit: lastVisitDate(db), lost };
      closeFile(db);
      settle(part, caseloadFile(target));
      writeDurably(path.join(target, path.basename(keyFile(folder))), keyFileText(key.file));
      return report;
    } finally {
      if (db.open) db.close();
    }
  } finally {
    damaged.close();
    for (const each of [...companions(copy), ...companions(part)]) rmSync(each, { force: true });
  }
}
