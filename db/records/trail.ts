/**
 * The trail: who changed what and when. Entries are only added; each carries the hash of the one before, and a
 * salted digest of the values, which lie beside the chain so that erasing can take them away.
 */
import { randomBytes } from 'node:crypto';
import type { Doing } from '../caseload.ts';
import type { TrailAction, TrailCheck, TrailRow } from '../caseload-rows.ts';
import { plucked, statement, type Db } from '../connection.ts';
import { firstHandedBreak } from '../handover/handed-check.ts';
import { allKinds, homes, isKind } from './kinds.ts';
import { digestOf, hashOf, type StoredEntry } from './trail-hash.ts';

/** Values as they are stored: JSON text, or null for absent. */
export interface Change {
  clientId: string | null;
  kind: string;
  factId: string;
  action: TrailAction;
  step: string;
  /** Step that an undo or redo takes back or repeats. */
  reverses?: string;
  before: string | null;
  after: string | null;
}

const headOf = (db: Db): { entries: number; hash: string } =>
  statement(db, 'SELECT entries, hash FROM trail_head').get() as { entries: number; hash: string };

/** Number of the last entry; 0 when there is none. */
export const lastSeq = (db: Db): number => headOf(db).entries;

/** Hash of an entry: a backup's head must still stand at its place. Null when there is no such entry. */
export const hashAt = (db: Db, seq: number): string | null =>
  seq === 0 ? '' : ((plucked(db, 'SELECT hash FROM trail WHERE seq = ?').get(seq) as string | undefined) ?? null);

/** Adds one entry. Only inside the transaction that makes the change. */
export function append(db: Db, change: Change, doing: Doing): number {
  const head = headOf(db);
  const seq = head.entries + 1;
  const salt = randomBytes(16).toString('hex');
  const entry = {
    seq,
    at: doing.at,
    by: doing.by,
    client_id: change.clientId,
    kind: change.kind,
    fact_id: change.factId,
    action: change.action,
    step: change.step,
    reverses: change.reverses ?? null,
    digest: digestOf(salt, change.before, change.after),
    prev_hash: head.hash,
  };
  const hash = hashOf(entry);
  statement(
    db,
    `INSERT INTO trail (seq, at, by, client_id, kind, fact_id, action, step, reverses, digest, prev_hash, hash)
     VALUES (@seq, @at, @by, @client_id, @kind, @fact_id, @action, @step, @reverses, @digest, @prev_hash, @hash)`,
  ).run({ ...entry, hash });
  statement(db, 'INSERT INTO trail_value (seq, salt, before, after) VALUES (?, ?, ?, ?)').run(
    seq,
    salt,
    change.before,
    change.after,
  );
  statement(db, 'UPDATE trail_head SET entries = ?, hash = ?').run(seq, hash);
  return seq;
}

const parsed = (text: string | null): unknown => (text === null ? null : JSON.parse(text));

/** Number of the last entry about one client; 0 = none. */
export const lastChange = (db: Db, clientId: string): number =>
  (db.prepare('SELECT coalesce(max(seq), 0) FROM trail WHERE client_id = ?').pluck().get(clientId) as number) ?? 0;

/** One client's entries, newest first. */
export function entriesFor(db: Db, clientId: string, limit: number): TrailRow[] {
  const rows = db
    .prepare(
      `SELECT seq, at, by, client_id, kind, fact_id, action, step, before, after
       FROM trail LEFT JOIN trail_value USING (seq) WHERE client_id = ? ORDER BY seq DESC LIMIT ?`,
    )
    .all(clientId, limit) as (StoredEntry & { before: string | null; after: string | null })[];
  return rows.map((row) => ({
    seq: row.seq,
    at: row.at,
    by: row.by,
    clientId: row.client_id,
    kind: row.kind,
    factId: row.fact_id,
    action: row.action,
    step: row.step,
    before: parsed(row.before),
    after: parsed(row.after),
  }));
}

/** First entry that does not fit its neighbours, its values or the head; null when all do. */
function firstBreak(db: Db): number | null {
  const erased = new Map<string, number>();
  const erasures = db.prepare("SELECT client_id, max(seq) AS seq FROM trail WHERE action = 'erase' GROUP BY client_id");
  for (const row of erasures.all() as { client_id: string; seq: number }[]) erased.set(row.client_id, row.seq);

  type Row = StoredEntry & { salt: string | null; before: string | null; after: string | null };
  const rows = db.prepare(
    'SELECT t.*, v.salt, v.before, v.after FROM trail t LEFT JOIN trail_value v USING (seq) ORDER BY seq',
  );
  let previous = { seq: 0, hash: '' };
  for (const row of rows.iterate() as IterableIterator<Row>) {
    if (row.seq !== previous.seq + 1 || row.prev_hash !== previous.hash || row.hash !== hashOf(row)) return row.seq;
    if (row.salt === null) {
      // Values may be gone only for a client that was erased afterwards.
      if (row.client_id === null || (erased.get(row.client_id) ?? 0) < row.seq) return row.seq;
    } else if (row.digest !== digestOf(row.salt, row.before, row.after)) return row.seq;
    previous = row;
  }
  const head = headOf(db);
  return head.entries === previous.seq && head.hash === previous.hash ? null : previous.seq + 1;
}

/** Latest entry of a fact that differs from its trail: changed, added or taken away behind the trail's back. */
function firstStray(db: Db): number | null {
  for (const kind of allKinds) {
    const stray = db
      .prepare(
        `SELECT coalesce(t.seq, 0) AS seq FROM ${homes[kind].table} f
         LEFT JOIN trail t ON t.seq = (SELECT max(seq) FROM trail WHERE fact_id = f.id)
         LEFT JOIN trail_value v ON v.seq = t.seq WHERE v.after IS NOT f.body LIMIT 1`,
      )
      .get() as { seq: number } | undefined;
    if (stray) return stray.seq;
  }
  const last = db.prepare(
    `SELECT t.seq, t.kind, t.fact_id FROM trail t JOIN trail_value v USING (seq)
     WHERE v.after IS NOT NULL AND t.seq = (SELECT max(seq) FROM trail WHERE fact_id = t.fact_id)`,
  );
  const there = new Map(
    allKinds.map((kind) => [kind as string, db.prepare(`SELECT 1 FROM ${homes[kind].table} WHERE id = ?`)]),
  );
  for (const row of last.all() as { seq: number; kind: string; fact_id: string }[]) {
    if (isKind(row.kind) && !there.get(row.kind)?.get(row.fact_id)) return row.seq;
  }
  return null;
}

/** Recomputes every hash and digest, and compares every fact with its last entry. Long: seconds at 100,000 entries. */
export function verifyTrail(db: Db): TrailCheck {
  // All of it at one moment: a reader beside the open caseload must not take a new entry for a break.
  return db.transaction(() => {
    const head = headOf(db);
    const brokenAt = firstBreak(db) ?? firstStray(db) ?? firstHandedBreak(db);
    return { whole: brokenAt === null, entries: head.entries, brokenAt, head: head.hash };
  })();
}
