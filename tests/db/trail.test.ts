import Database from 'better-sqlite3';
import { expect, test, vi } from 'vitest';
import { readFileSync } from 'node:fs';
import { openFile, openReader } from '../../db/connection.ts';
import { caseloadFile } from '../../db/files.ts';
import type { Caseload } from '../../db/index.ts';
import { verifyTrail } from '../../db/records/trail.ts';
import { answer, client, doing, newCaseload, page, reopen, sample, visit } from './support.ts';

function behind<T>(caseload: Caseload, act: (db: ReturnType<typeof openFile>) => T): T {
  return caseload.withKey((identity) => {
    const db = openFile(caseloadFile(caseload.folder), identity);
    try {
      return act(db);
    } finally {
      db.close();
    }
  });
}

async function lived(): Promise<{ caseload: Caseload; id: string; visitId: string }> {
  const caseload = await newCaseload();
  const { id } = caseload.put('client', client({ name: 'Ondine Quick', code: 'OQ' }), doing);
  const { id: visitId } = caseload.put('visit', visit(id, { told: 'Pen slips' }), doing);
  caseload.put('intakeAnswer', answer(id, visitId, { grade: 1 }), doing);
  caseload.put('intakeAnswer', answer(id, visitId, { grade: 2 }), doing);
  return { caseload, id, visitId };
}

test('the trail says who changed what, when, from what to what', async () => {
  const { caseload, id } = await lived();
  const rows = caseload.trail(id);
  expect(rows.map((row) => [row.seq, row.kind, row.action])).toEqual([
    [4, 'intakeAnswer', 'update'],
    [3, 'intakeAnswer', 'create'],
    [2, 'visit', 'create'],
    [1, 'client', 'create'],
  ]);
  expect(rows[0]).toMatchObject({ ...doing, before: { grade: 1 }, after: { grade: 2 } });
  expect(caseload.trail(id, 1)).toHaveLength(1);
  expect(caseload.verifyTrail()).toMatchObject({ whole: true, entries: 4, brokenAt: null });
});

test('the trail refuses to be changed or shortened', async () => {
  const { caseload } = await lived();
  behind(caseload, (db) => {
    expect(() => db.exec("UPDATE trail SET by = 'XX'")).toThrow('only added to');
    expect(() => db.exec('DELETE FROM trail')).toThrow('only added to');
    expect(() => db.exec('INSERT OR REPLACE INTO trail SELECT * FROM trail')).toThrow('only added to');
    expect(() => db.exec('UPDATE trail_value SET after = NULL')).toThrow('never changed');
  });
});

test('tampering with the guards off is found', async () => {
  const harms: [sql: string, at: number][] = [
    ["UPDATE trail SET by = 'XX' WHERE seq = 2", 2],
    ["UPDATE trail SET at = '2020-01-01T00:00:00.000Z' WHERE seq = 3", 3],
    ["UPDATE trail_value SET after = json_set(after, '$.grade', 3) WHERE seq = 4", 4],
    ['DELETE FROM trail_value WHERE seq = 2', 2],
    ['DELETE FROM trail_value WHERE seq = 3; DELETE FROM trail WHERE seq = 3', 4],
    ['DELETE FROM trail_value WHERE seq = 4; DELETE FROM trail WHERE seq = 4', 4],
    ["UPDATE intake_answer SET body = json_set(body, '$.grade', 3)", 4],
    ['DELETE FROM intake_answer', 4],
    ["UPDATE visit SET body = json_set(body, '$.told', 'All is well')", 2],
  ];
  for (const [sql, at] of harms) {
    const { caseload } = await lived();
    behind(caseload, (db) => {
      db.pragma('foreign_keys = OFF');
      for (const name of ['trail_never_changes', 'trail_never_shrinks', 'trail_value_never_changes']) {
        db.exec(`DROP TRIGGER ${name}`);
      }
      db.exec(sql);
    });
    expect(caseload.verifyTrail(), sql).toMatchObject({ whole: false, brokenAt: at });
  }
});

test('undo and redo walk through create, update and remove, and stay on record', async () => {
  const { caseload, id, visitId } = await lived();
  const grades = () => caseload.record(id).intakeAnswers.map((each) => each.grade);
  const full = caseload.record(id);
  caseload.remove('visit', visitId, doing);
  expect(caseload.record(id)).toMatchObject({ visits: [], intakeAnswers: [] });
  expect(caseload.undo(id, doing)).toEqual(full);
  caseload.undo(id, doing);
  expect(grades()).toEqual([1]);
  caseload.undo(id, doing);
  expect(grades()).toEqual([]);
  caseload.redo(id, doing);
  caseload.redo(id, doing);
  expect(grades()).toEqual([2]);
  caseload.redo(id, doing);
  expect(caseload.record(id).visits).toEqual([]);
  expect(() => caseload.redo(id, doing)).toThrow('nothing-to-undo');
  for (let n = 0; n < 4; n++) caseload.undo(id, doing);
  expect(caseload.record(id).visits).toEqual([]);
  expect(caseload.undo(id, doing)).toBeNull();
  expect(() => caseload.undo(id, doing)).toThrow('nothing-to-undo');
  expect(caseload.redo(id, doing)?.client.name).toBe('Ondine Quick');
  expect(caseload.verifyTrail().whole).toBe(true);
});

test('a new change ends redo; other clients are not touched by undo', async () => {
  const { caseload, id, visitId } = await lived();
  const other = caseload.put('client', client(), doing);
  caseload.undo(id, doing);
  expect(caseload.canUndo(id)).toEqual({ undo: true, redo: true });
  caseload.put('intakeAnswer', answer(id, visitId, { grade: 0 }), doing);
  expect(caseload.canUndo(id)).toEqual({ undo: true, redo: false });
  expect(caseload.record(other.id).client.id).toBe(other.id);
});

test('several writes of one act are undone together, and undo reaches back to the opening only', async () => {
  const { caseload, id, visitId } = await lived();
  caseload.close();
  const again = await reopen(caseload.folder);
  expect(again.canUndo(id)).toEqual({ undo: false, redo: false });
  again.together(doing, (write) => {
    write.put('intakeAnswer', answer(id, visitId, { item: 'pain' }));
    write.put('intakeAnswer', answer(id, visitId, { item: 'tone' }));
  });
  expect(again.undo(id, doing)?.intakeAnswers).toHaveLength(1);
  expect(() => again.undo(id, doing)).toThrow('nothing-to-undo');
});

test('undo that would take a code given to another client meanwhile is refused', async () => {
  const { caseload, id } = await lived();
  const now = caseload.get('client', id);
  caseload.put('client', { ...client(), ...now, id, code: 'NEW' }, doing);
  caseload.put('client', client({ code: 'OQ' }), doing);
  expect(() => caseload.undo(id, doing)).toThrow('code-taken');
  expect(caseload.get('client', id)?.code).toBe('NEW');
});

test('erasing leaves nothing of the client in the file, and the chain holds', async () => {
  const { caseload, id, visitId } = await lived();
  const kept = caseload.put('client', client({ name: 'Stays Here' }), doing);
  const taken = caseload.put('sample', sample(id, visitId), doing);
  const blob = caseload.putBlob(id, 'image/png', Buffer.from('scan of Ondine'), doing);
  caseload.put('samplePage', page({ clientId: id, visitId, sampleId: taken.id }, blob), doing);
  caseload.erase(id, doing);
  expect(() => caseload.record(id)).toThrow('not-found');
  expect(caseload.blob(blob.id)).toBeNull();
  expect(() => caseload.undo(id, doing)).toThrow('nothing-to-undo');
  expect(caseload.clients().map((row) => row.id)).toEqual([kept.id]);
  expect(caseload.trail(id).every((row) => row.before === null && row.after === null)).toBe(true);
  expect(caseload.trail(id)[0]).toMatchObject({ action: 'erase', ...doing });
  expect(caseload.verifyTrail().whole).toBe(true);
  // Decrypted page for page: no slack space, no free page holds the name.
  behind(caseload, (db) => {
    const image = db.serialize();
    expect(image.includes('Stays Here')).toBe(true);
    for (const word of ['Ondine', 'ondine', 'Pen slips']) expect(image.includes(word), word).toBe(false);
    expect(db.pragma('freelist_count', { simple: true })).toBe(0);
  });
  expect(readFileSync(`${caseloadFile(caseload.folder)}-wal`).length).toBe(0);
  expect(() => caseload.erase(id, doing)).toThrow('not-found');
});

test('archiving keeps everything and can be undone', async () => {
  const { caseload, id } = await lived();
  caseload.archive(id, '2026-03-04', doing);
  expect(caseload.clients()[0]?.archivedOn).toBe('2026-03-04');
  caseload.undo(id, doing);
  expect(caseload.clients()[0]?.archivedOn).toBeNull();
});

test('merging moves everything, is undone and redone at the remaining client, and is erased as one person', async () => {
  const { caseload, id } = await lived();
  const into = caseload.put('client', client({ name: 'Ondine Q.' }), doing);
  const before = caseload.record(id);
  expect(caseload.merge(id, into.id, doing).intakeAnswers).toHaveLength(1);
  expect(() => caseload.record(id)).toThrow('not-found');
  caseload.undo(into.id, doing);
  expect(caseload.record(id)).toEqual(before);
  expect(caseload.record(into.id).visits).toEqual([]);
  expect(caseload.redo(into.id, doing)?.visits).toHaveLength(1);
  expect(() => caseload.merge(into.id, into.id, doing)).toThrow('malformed-request');
  caseload.erase(into.id, doing);
  behind(caseload, (db) => expect(db.serialize().includes('Ondine')).toBe(false));
  expect(caseload.verifyTrail().whole).toBe(true);
});

test('an export is noted in the trail of each client, holds no values, and undo passes it over', async () => {
  const { caseload, id } = await lived();
  const { id: other } = caseload.put('client', client({ name: 'Otto Other', code: 'OO' }), doing);
  caseload.noteExport([id, other], 'measures as CSV', doing);
  expect(caseload.trail(id, 1)[0]).toMatchObject({ kind: 'export', after: { what: 'measures as CSV' }, before: null });
  expect(caseload.trail(other, 1)[0]).toMatchObject({ kind: 'export', by: doing.by });
  expect(caseload.verifyTrail().whole).toBe(true);
  caseload.undo(id, doing);
  expect(caseload.trail(id, 1)[0]).toMatchObject({ kind: 'intakeAnswer', action: 'undo' });
  caseload.erase(id, doing);
  expect(caseload.verifyTrail().whole).toBe(true);
});

test('what is saved while another connection checks is no break', async () => {
  const caseload = await newCaseload();
  const { id } = caseload.put('client', client(), doing);
  const reader = caseload.withKey((identity) => openReader(caseloadFile(caseload.folder), Buffer.from(identity)));
  const prepare = reader.prepare.bind(reader);
  let saves = 0;
  // A therapist who types between any two statements of the check.
  reader.prepare = ((sql: string) => {
    const statement = prepare(sql);
    saves++;
    caseload.put('visit', visit(id), doing);
    return statement;
  }) as typeof reader.prepare;
  expect(verifyTrail(reader)).toMatchObject({ whole: true, brokenAt: null });
  expect(saves).toBeGreaterThan(3);
  reader.close();
  caseload.close();
});

test('a further write of a kind compiles nothing anew: what compiling takes is freed only when the process rests', async () => {
  const { caseload, id } = await lived();
  caseload.put('visit', visit(id, { date: '2026-02-01' }), doing);
  const compiled = vi.spyOn(Database.prototype, 'prepare');
  for (let day = 10; day < 30; day++) caseload.put('visit', visit(id, { date: `2026-03-${day}` }), doing);
  expect(compiled).toHaveBeenCalledTimes(0);
  compiled.mockRestore();
});
