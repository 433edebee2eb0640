import { randomUUID } from 'node:crypto';
import { expect, test } from 'vitest';
import { openFile } from '../../db/connection.ts';
import { caseloadFile } from '../../db/files.ts';
import type { Caseload } from '../../db/index.ts';
import { homes, allKinds } from '../../db/records/kinds.ts';
import { ClientRecord, factKinds } from '../../db/types/record.ts';
import { answer, client, doing, newCaseload, page, reopen, sample, visit } from './support.ts';

async function withClient(): Promise<{ caseload: Caseload; id: string; visitId: string }> {
  const caseload = await newCaseload();
  const { id } = caseload.put('client', client(), doing);
  const { id: visitId } = caseload.put('visit', visit(id), doing);
  return { caseload, id, visitId };
}

/** The caseload's own connection, for looking and tampering. */
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

test('every kind of fact has a table, and every list of a record a kind', async () => {
  expect(allKinds.sort()).toEqual(Object.keys(factKinds).sort());
  const lists = Object.values(homes).flatMap((home) => home.list ?? []);
  expect([...lists, 'client'].sort()).toEqual(Object.keys(ClientRecord.shape).sort());
});

test('a record holds what was put, stamped, in lasting order', async () => {
  const { caseload, id, visitId } = await withClient();
  const second = caseload.put('visit', visit(id, { date: '2026-02-01', kind: 'retest' }), doing);
  caseload.put('intakeAnswer', answer(id, visitId), { at: '2026-03-04T10:00:00.000Z', by: 'JB' });
  const taken = caseload.put('sample', sample(id, visitId), doing);
  const blob = caseload.putBlob(id, 'image/png', Buffer.from('picture'), doing);
  caseload.put('samplePage', page({ clientId: id, visitId, sampleId: taken.id }, blob), doing);
  const record = ClientRecord.parse(caseload.record(id));
  expect(record.visits.map((each) => each.id)).toEqual([second.id, visitId]);
  expect(record.intakeAnswers[0]).toMatchObject({ at: '2026-03-04T10:00:00.000Z', by: 'JB', grade: 2 });
  expect(record.samplePages).toHaveLength(1);
  caseload.close();
  expect((await reopen(caseload.folder)).record(id)).toEqual(record);
});

test('a malformed fact names its field and changes nothing', async () => {
  const { caseload, id } = await withClient();
  const before = caseload.lastSeq();
  expect(() => caseload.put('visit', visit(id, { date: '31.12.2026' }), doing)).toThrow('malformed-request: date');
  expect(() => caseload.put('visit', visit(randomUUID()), doing)).toThrow('not-found');
  expect(() => caseload.put('visit', visit(id), { at: 'yesterday', by: 'MK' })).toThrow('malformed-request: at');
  expect(() => caseload.put('visit', visit(id), { ...doing, by: '' })).toThrow('malformed-request: by');
  expect(() => caseload.remove('visit', randomUUID(), doing)).toThrow('not-found');
  expect(caseload.lastSeq()).toBe(before);
});

test("a fact cannot name another client's visit, or move to another client", async () => {
  const { caseload, id, visitId } = await withClient();
  const other = caseload.put('client', client(), doing);
  expect(() => caseload.put('intakeAnswer', answer(other.id, visitId), doing)).toThrow('malformed-request: visitId');
  const given = caseload.put('intakeAnswer', answer(id, visitId), doing);
  expect(() => caseload.put('intakeAnswer', { ...given, clientId: other.id }, doing)).toThrow('clientId');
});

test('the id of one thing cannot name another kind of thing, and bytes of a refused act are not kept', async () => {
  const caseload = await newCaseload();
  const { id } = caseload.put('client', client(), doing);
  const { id: visitId } = caseload.put('visit', visit(id), doing);
  const before = caseload.counts();
  for (const taken of [id, visitId]) {
    expect(() => caseload.put('sample', { ...sample(id, visitId), id: taken }, doing)).toThrow('malformed-request: id');
  }
  expect(() =>
    caseload.together(doing, (write) => {
      write.putBlob(id, 'image/png', Buffer.from('bytes'));
      write.put('sample', { ...sample(id, visitId), id: visitId });
    }),
  ).toThrow('malformed-request: id');
  expect(caseload.counts()).toEqual(before);
  expect(caseload.verifyTrail().whole).toBe(true);
});

test('saving the same content again changes nothing', async () => {
  const { caseload, id } = await withClient();
  const fact = visit(id);
  const saved = caseload.put('visit', fact, doing);
  const seq = caseload.lastSeq();
  expect(caseload.put('visit', fact, { at: '2026-03-05T09:00:00.000Z', by: 'JB' })).toEqual(saved);
  expect(caseload.lastSeq()).toBe(seq);
});

test('a second answer to the same question updates the first', async () => {
  const { caseload, id, visitId } = await withClient();
  const first = caseload.put('intakeAnswer', answer(id, visitId, { grade: 1 }), doing);
  const second = caseload.put('intakeAnswer', answer(id, visitId, { grade: 3 }), doing);
  caseload.put('intakeAnswer', answer(id, visitId, { side: 'left' }), doing);
  expect(second.id).toBe(first.id);
  expect(caseload.record(id).intakeAnswers.map((each) => each.grade)).toEqual([3, 2]);
});

test('two clients cannot share a code', async () => {
  const caseload = await newCaseload();
  caseload.put('client', client({ code: 'A1' }), doing);
  expect(() => caseload.put('client', client({ code: 'A1' }), doing)).toThrow('code-taken');
  expect(caseload.clients()).toHaveLength(1);
  expect(caseload.clientByCode('a1')?.code).toBe('A1');
  expect(caseload.clientByCode('A2')).toBeNull();
});

test('an act of several writes is all or nothing', async () => {
  const { caseload, id } = await withClient();
  const seq = caseload.lastSeq();
  expect(() =>
    caseload.together(doing, (write) => {
      write.put('visit', visit(id));
      write.put('visit', visit(id, { date: 'never' }));
    }),
  ).toThrow('malformed-request');
  expect(caseload.record(id).visits).toHaveLength(1);
  expect(caseload.lastSeq()).toBe(seq);
});

test('the list counts visits and shows the latest; searching folds case and accents', async () => {
  const caseload = await newCaseload();
  const zoe = caseload.put('client', client({ name: 'Zoë Árvay', code: 'Z-9' }), doing);
  const old = caseload.put('client', client({ name: 'Anna Old', code: 'O-1', archivedOn: '2026-01-01' }), doing);
  const diagnoses = [
    { kind: null, text: 'stroke', onset: null, side: 'left' as const },
    { kind: null, text: 'arthritis', onset: null, side: 'none' as const },
  ];
  const ben = caseload.put('client', client({ name: 'ben o’dell', code: 'B-2', diagnoses }), doing);
  caseload.put('visit', visit(zoe.id, { date: '2026-01-05' }), doing);
  caseload.put('visit', visit(zoe.id, { date: '2026-02-05' }), doing);
  expect(caseload.clients().map((row) => row.id)).toEqual([ben.id, zoe.id, old.id]);
  expect(caseload.clients()[0]?.diagnoses).toBe('stroke; arthritis');
  expect(caseload.clients()[1]).toMatchObject({ visits: 2, lastVisit: '2026-02-05', diagnoses: '' });
  expect(caseload.search('zoe').map((row) => row.id)).toEqual([zoe.id]);
  expect(caseload.search('ARVAY z-9').map((row) => row.id)).toEqual([zoe.id]);
  expect(caseload.search('%')).toEqual([]);
  expect(caseload.search(' ')).toHaveLength(3);
});

test('an approved program and an issued page are frozen; the page may still be given its PDF', async () => {
  const { caseload, id, visitId } = await withClient();
  const program = {
    id: randomUUID(),
    clientId: id,
    visitId,
    status: 'draft' as const,
    ruleVersion: '1',
    tier: 1 as const,
    lines: [],
    vetoed: [],
    note: '',
    approvedAt: null,
    approvedBy: null,
  };
  caseload.put('program', program, doing);
  const approved = caseload.put('program', { ...program, status: 'approved', approvedAt: doing.at }, doing);
  expect(() => caseload.put('program', { ...approved, note: 'later' }, doing)).toThrow('already-approved');
  expect(() => caseload.remove('program', program.id, doing)).toThrow('already-approved');
  const issued = { id: randomUUID(), clientId: id, visitId, kind: 'family-summary' as const, issuedAt: doing.at };
  caseload.put('issuedPage', { ...issued, model: { title: 'a' }, pdf: null }, doing);
  expect(() => caseload.put('issuedPage', { ...issued, model: { title: 'b' }, pdf: null }, doing)).toThrow(
    'already-issued',
  );
  const blob = caseload.putBlob(id, 'application/pdf', Buffer.from('%PDF'), doing);
  caseload.put('issuedPage', { ...issued, model: { title: 'a' }, pdf: blob.id }, doing);
  expect(() => caseload.put('issuedPage', { ...issued, model: { title: 'a' }, pdf: null }, doing)).toThrow(
    'already-issued',
  );
  expect(() => caseload.remove('visit', visitId, doing)).toThrow('already-');
  expect(caseload.record(id).visits).toHaveLength(1);
});

test('bytes come back as they were, once for each content, and damage to them is noticed', async () => {
  const { caseload, id } = await withClient();
  const bytes = Buffer.from([0, 1, 2, 255]);
  const info = caseload.putBlob(id, 'image/png', bytes, doing);
  expect(caseload.putBlob(id, 'image/png', bytes, doing)).toEqual(info);
  expect(caseload.blob(info.id)).toEqual({ ...info, data: bytes });
  expect(caseload.blob(randomUUID())).toBeNull();
  expect(() => caseload.putBlob(id, 'text', bytes, doing)).toThrow('malformed-request');
  expect(() => caseload.putBlob(randomUUID(), 'image/png', bytes, doing)).toThrow('not-found');
  expect(() => caseload.putBlob(id, 'image/png', Buffer.alloc(0), doing)).toThrow('malformed-request');
  behind(caseload, (db) => db.prepare("UPDATE blob SET bytes = x'00010203'").run());
  expect(() => caseload.blob(info.id)).toThrow('damaged');
});

test('settings keep JSON by name, with a trail', async () => {
  const caseload = await newCaseload();
  expect(caseload.setting('clinic')).toBeNull();
  caseload.putSetting('clinic', { name: 'Harbor Lane', beds: [1, 2] }, doing);
  caseload.putSetting('clinic', { name: 'Harbor Lane', beds: [1, 2] }, doing);
  expect(caseload.setting('clinic')).toEqual({ name: 'Harbor Lane', beds: [1, 2] });
  expect(caseload.lastSeq()).toBe(1);
  caseload.removeSetting('clinic', doing);
  expect(caseload.setting('clinic')).toBeNull();
  expect(() => caseload.putSetting("x'; DROP", 1, doing)).toThrow('malformed-request');
  expect(caseload.verifyTrail().whole).toBe(true);
});

test('a fact that no longer fits its schema is reported, not shown', async () => {
  const { caseload, id } = await withClient();
  behind(caseload, (db) => db.prepare("UPDATE visit SET body = json_set(body, '$.kind', 'party')").run());
  expect(() => caseload.record(id)).toThrow('damaged: visit');
});

test('text that looks like SQL or markup is stored as text', async () => {
  const caseload = await newCaseload();
  const name = `Robert'); DROP TABLE client;-- <img src=x onerror=alert(1)>`;
  const { id } = caseload.put('client', client({ name }), doing);
  expect(caseload.record(id).client.name).toBe(name);
  expect(caseload.search("'); drop")).toHaveLength(1);
});

test('a full disk is reported and the entry before it is whole', async () => {
  const caseload = await newCaseload();
  const { id } = caseload.put('client', client(), doing);
  caseload.close();
  // A limit of pages stands for a full disk: SQLite answers both with SQLITE_FULL.
  const { openRecords } = await import('../../db/records/caseload-facts.ts');
  const again = await reopen(caseload.folder);
  again.withKey((identity) => {
    const db = openFile(caseloadFile(caseload.folder), identity);
    db.pragma(`max_page_count = ${(db.pragma('page_count', { simple: true }) as number) + 2}`);
    const lock = { release() {} };
    const opened = { db, folder: caseload.folder, identity: Buffer.from(identity), lock, logLost: false };
    const full = openRecords(opened);
    expect(() => full.putBlob(id, 'image/png', Buffer.alloc(100_000, 7), doing)).toThrow('disk-full');
    expect(full.record(id).client.id).toBe(id);
    expect(full.counts()).toMatchObject({ client: 1, blob: 0, trail: 1 });
    expect(full.verifyTrail().whole).toBe(true);
    expect(full.quickCheck()).toBe('ok');
    full.close();
  });
});

test('the latest visit is found by an index, not a scan of the visits', async () => {
  const caseload = await newCaseload();
  const plan = behind(caseload, (db) =>
    db.prepare('EXPLAIN QUERY PLAN SELECT max(date) FROM visit WHERE client_id = ?').all('x'),
  ) as { detail: string }[];
  expect(plan.map((row) => row.detail).join()).toMatch(/SEARCH visit USING (COVERING )?INDEX visit_client/);
});

test('a visit has one draft of words for its pages; it goes with the visit and comes back with undo', async () => {
  const caseload = await newCaseload();
  const { id } = caseload.put('client', client(), doing);
  const visitId = caseload.put('visit', visit(id), doing).id;
  const words = {
    family: { when: '', bring: '', ownWords: '' },
    letter: { to: '', question: 'Is the dose time right?', opinion: '', falls: '', lastInjection: '' as const },
    report: { from: '' as const, skilled: '', plan: '', coSign: false },
    referral: { to: '', lastWell: '', ownWords: '' },
    programWords: '',
  };
  const draft = { id: randomUUID(), clientId: id, visitId, words, changed: {} };
  caseload.put('pageDraft', draft, doing);
  caseload.put('pageDraft', { ...draft, id: randomUUID(), words: { ...words, programWords: 'Own words' } }, doing);
  expect(caseload.record(id).pageDrafts).toMatchObject([{ words: { programWords: 'Own words' } }]);
  caseload.remove('visit', visitId, doing);
  expect(caseload.record(id).pageDrafts).toEqual([]);
  caseload.undo(id, doing);
  expect(caseload.record(id).pageDrafts).toHaveLength(1);
  caseload.close();
});

test('a removed page takes its measurement along, so that no note, report or letter averages it in; undo brings both', async () => {
  const { caseload, id, visitId } = await withClient();
  const { id: sampleId } = caseload.put('sample', sample(id, visitId), doing);
  const owner = { clientId: id, visitId, sampleId };
  const pages = [0, 1].map((order) => {
    const blob = caseload.putBlob(id, 'image/png', Buffer.from(`page ${order}`), doing);
    return caseload.put('samplePage', { ...page(owner, blob), order }, doing);
  });
  const result = {
    page: { widthMm: 210, heightMm: 297, dpi: 300, rotationDeg: 0 },
    lines: [],
    measures: [],
    warnings: [],
  };
  for (const { id: pageId } of pages) {
    const told = { method: 'page', version: 'page-7', result, uncorrected: null, corrections: [] };
    caseload.put('pageMeasurement', { id: randomUUID(), ...owner, pageId, ...told }, doing);
  }
  const measured = () => caseload.record(id).pageMeasurements.map(({ pageId }) => pageId);
  expect(measured()).toEqual(pages.map((each) => each.id));
  caseload.remove('samplePage', pages[0]!.id, doing);
  expect(measured()).toEqual([pages[1]!.id]);
  caseload.undo(id, doing);
  expect(measured()).toHaveLength(2);
  caseload.close();
});
