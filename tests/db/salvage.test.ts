import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { openFile } from '../../db/connection.ts';
import { caseloadFile } from '../../db/files.ts';
import { openCaseload, type Caseload } from '../../db/index.ts';
import { salvage } from '../../db/salvage.ts';
import { undoRestore } from '../../electron/files/backup/backup.ts';
import { answer, client, doing, newCaseload, NOW, page, PASSPHRASE, reopen, sample, visit } from './support.ts';

async function lived(): Promise<{ caseload: Caseload; identity: Buffer; ids: string[] }> {
  const caseload = await newCaseload();
  const ids: string[] = [];
  for (let n = 0; n < 12; n++) {
    const { id } = caseload.put('client', client({ name: `Client ${n}`, note: 'note '.repeat(200) }), doing);
    ids.push(id);
    const { id: visitId } = caseload.put('visit', visit(id), doing);
    for (let m = 0; m < 8; m++) {
      caseload.put('intakeAnswer', answer(id, visitId, { item: `item-${m}`, note: 'words '.repeat(100) }), doing);
    }
    const taken = caseload.put('sample', sample(id, visitId), doing);
    const blob = caseload.putBlob(id, 'image/png', Buffer.alloc(30_000, n + 1), doing);
    caseload.put('samplePage', page({ clientId: id, visitId, sampleId: taken.id }, blob), doing);
  }
  caseload.putSetting('clinic', 'Harbor Lane', doing);
  return { caseload, identity: caseload.withKey((key) => Buffer.from(key)), ids };
}

/** Pages of a table or index, by number. */
function pagesOf(caseload: Caseload, identity: Buffer, name: string): number[] {
  const db = openFile(caseloadFile(caseload.folder), identity);
  try {
    return db.prepare('SELECT pageno FROM dbstat WHERE name = ? ORDER BY pageno').pluck().all(name) as number[];
  } finally {
    db.close();
  }
}

function smash(folder: string, pages: number[]): string {
  const file = caseloadFile(folder);
  const bytes = readFileSync(file);
  for (const number of pages) bytes.fill(0x5a, (number - 1) * 4096 + 200, (number - 1) * 4096 + 900);
  writeFileSync(file, bytes);
  return createHash('sha256').update(bytes).digest('hex');
}

test('one smashed page of facts costs nothing: the trail has them too', async () => {
  const { caseload, identity, ids } = await lived();
  const { folder } = caseload;
  const before = ids.map((id) => caseload.record(id));
  const pages = pagesOf(caseload, identity, 'intake_answer');
  caseload.close();
  const smashed = smash(folder, [pages[Math.floor(pages.length / 2)]!]);
  expect(await openCaseload({ folder, passphrase: PASSPHRASE, now: NOW })).toEqual({ ok: false, code: 'damaged' });
  const report = salvage({ folder, identity, now: NOW });
  expect(report).toMatchObject({ name: '20260304T091200Z-salvaged', lost: 0, lastVisit: '2026-03-04' });
  expect(
    createHash('sha256')
      .update(readFileSync(caseloadFile(folder)))
      .digest('hex'),
  ).toBe(smashed);
  expect(readdirSync(path.join(folder, 'set-aside', report.name)).sort()).toEqual(['caseload.db', 'caseload.key.json']);
  const { keptAs } = await undoRestore(folder, report.name, NOW);
  const again = await reopen(folder);
  const sorted = (record: (typeof before)[number]) => ({
    ...record,
    intakeAnswers: [...record.intakeAnswers].sort((a, b) => (a.id < b.id ? -1 : 1)),
  });
  expect(ids.map((id) => sorted(again.record(id)))).toEqual(before.map(sorted));
  expect(again.setting('clinic')).toBe('Harbor Lane');
  expect(again.verifyTrail().whole).toBe(true);
  // The damaged file is still there.
  const aside = readFileSync(path.join(folder, 'set-aside', keptAs, 'caseload.db'));
  expect(createHash('sha256').update(aside).digest('hex')).toBe(smashed);
});

test('a smashed picture is lost alone, and said so', async () => {
  const { caseload, identity, ids } = await lived();
  const { folder } = caseload;
  const pages = pagesOf(caseload, identity, 'blob');
  caseload.close();
  smash(folder, [pages[Math.floor(pages.length / 2)]!]);
  const report = salvage({ folder, identity, now: NOW });
  expect(report.counts).toMatchObject({ client: ids.length, visit: ids.length, sample: ids.length });
  expect(report.counts['blob']).toBeGreaterThanOrEqual(ids.length - 2);
  expect(report.lost).toBeGreaterThan(0);
});

test('smashing both a table and the trail still gives the rest', async () => {
  const { caseload, identity } = await lived();
  const { folder } = caseload;
  const pages = [
    ...pagesOf(caseload, identity, 'client').slice(1, 2),
    ...pagesOf(caseload, identity, 'trail_value').slice(3, 6),
  ];
  caseload.close();
  smash(folder, pages);
  const report = salvage({ folder, identity, now: NOW });
  expect(report.counts['client']).toBeGreaterThan(8);
  expect(report.counts['intakeAnswer']).toBeGreaterThan(60);
});

test('a file whose first page is gone cannot be salvaged, and stays as it is', async () => {
  const { caseload, identity } = await lived();
  const { folder } = caseload;
  caseload.close();
  const smashed = smash(folder, [1]);
  expect(() => salvage({ folder, identity, now: NOW })).toThrow();
  expect(
    createHash('sha256')
      .update(readFileSync(caseloadFile(folder)))
      .digest('hex'),
  ).toBe(smashed);
});
