import { execFileSync } from 'node:child_process';
import { randomUUID } from 'node:crypto';
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { seeded } from '../../../build/torture/random.ts';
import type { Caseload } from '../../../db/index.ts';
import { ClientExport, clientExportSchema } from '../../../db/types/client-export.ts';
import {
  exportsHolding,
  readClientFile,
  writeAllClients,
  writeClientFile,
} from '../../../electron/files/backup/client-file.ts';
import { answer, client, doing, newCaseload, newFolder, NOW, page, sample, visit } from '../../db/support.ts';

const later = { at: '2026-05-01T08:00:00.000Z', by: 'JB' };

async function lived(): Promise<{ caseload: Caseload; id: string; picture: Buffer; pictureId: string }> {
  const caseload = await newCaseload();
  const { id } = caseload.put('client', client({ name: '=cmd() <script>alert(1)</script>', code: 'X1' }), doing);
  const { id: visitId } = caseload.put('visit', visit(id), doing);
  caseload.put('visit', visit(id, { date: '2026-01-02', told: 'Zeile\n"zwei"' }), doing);
  caseload.put('intakeAnswer', answer(id, visitId), doing);
  const taken = caseload.put('sample', sample(id, visitId), doing);
  const picture = Buffer.from('original bytes');
  const blob = caseload.putBlob(id, 'image/png', picture, doing);
  caseload.put('samplePage', page({ clientId: id, visitId, sampleId: taken.id }, blob), doing);
  return { caseload, id, picture, pictureId: blob.id };
}

test('export, import into an empty caseload, export again: the same record and the same pictures', async () => {
  const { caseload, id, picture, pictureId } = await lived();
  const file = path.join(newFolder(), 'client.tar');
  await writeClientFile(caseload, id, file, NOW);
  const empty = await newCaseload();
  expect(await readClientFile(empty, file, later)).toBe(id);
  expect(empty.exportClient(id, NOW)).toEqual(caseload.exportClient(id, NOW));
  expect(empty.blob(pictureId)?.data).toEqual(picture);
  expect(empty.trail(id).every((row) => row.action === 'import' && row.by === 'JB')).toBe(true);
  expect(empty.verifyTrail().whole).toBe(true);
  const again = path.join(newFolder(), 'again.tar');
  await writeClientFile(empty, id, again, NOW);
  expect(readFileSync(again).equals(readFileSync(file))).toBe(true);
});

test('all clients: export, import into an empty caseload, export again, every file the same byte for byte', async () => {
  const { caseload, id } = await lived();
  const visitId = caseload.record(id).visits[0]!.id;
  const words = {
    family: { when: '', bring: '', ownWords: 'wie besprochen' },
    letter: { to: '', question: '', opinion: '', falls: '', lastInjection: '' as const },
    report: { from: '' as const, skilled: '', plan: '', coSign: false },
    referral: { to: '', lastWell: '', ownWords: '' },
    programWords: '',
  };
  caseload.put('pageDraft', { id: randomUUID(), clientId: id, visitId, words, changed: {} }, doing);
  // Codes that no file name tells apart.
  for (const code of ['A/1', 'A:1', '…']) caseload.put('client', client({ code }), doing);
  const folder = newFolder();
  const first = path.join(folder, 'exports', 'all');
  expect(await writeAllClients(caseload, first, NOW, '2026-03-04')).toEqual({ folder: first, files: 4 });
  const empty = await newCaseload();
  for (const name of readdirSync(first)) await readClientFile(empty, path.join(first, name), later);
  expect(empty.record(id).pageDrafts).toEqual(caseload.record(id).pageDrafts);
  expect(empty.record(id).pageDrafts).toHaveLength(1);
  const again = path.join(folder, 'again');
  await writeAllClients(empty, again, NOW, '2026-03-04');
  const contents = (from: string) =>
    readdirSync(from)
      .map((name) => readFileSync(path.join(from, name), 'base64'))
      .sort();
  expect(contents(again)).toEqual(contents(first));
  expect(readdirSync(folder).sort()).toEqual(['again', 'exports']);
  // After erasing, the exported file that still holds the client is named.
  expect(await exportsHolding(folder, [id])).toEqual([path.join(first, 'X1-2026-03-04.fhclient')]);
  expect(await exportsHolding(folder, [randomUUID()])).toEqual([]);
});

test('an import is one step: undo takes it back, and it can be brought in again', async () => {
  const { caseload, id } = await lived();
  const file = path.join(newFolder(), 'client.tar');
  await writeClientFile(caseload, id, file, NOW);
  await expect(readClientFile(caseload, file, later)).rejects.toThrow('code-taken');
  const other = await newCaseload();
  await readClientFile(other, file, later);
  expect(other.undo(id, later)).toBeNull();
  expect(other.clients()).toEqual([]);
  await readClientFile(other, file, later);
  expect(other.clients()).toHaveLength(1);
});

test('any program can read the file: tar, JSON, its schema, pictures as they were', async () => {
  const { caseload, id, picture, pictureId } = await lived();
  const folder = newFolder();
  const file = path.join(folder, 'client.tar');
  await writeClientFile(caseload, id, file, NOW);
  execFileSync('tar', ['-xf', file, '-C', folder]);
  expect(readFileSync(path.join(folder, 'pictures', pictureId))).toEqual(picture);
  const json: unknown = JSON.parse(readFileSync(path.join(folder, 'client.json'), 'utf8'));
  expect(ClientExport.parse(json).record.visits).toHaveLength(2);
  expect(JSON.parse(readFileSync(path.join(folder, 'schema.json'), 'utf8'))).toEqual(clientExportSchema());
});

test('the published schema is the one in use', () => {
  const published: unknown = JSON.parse(readFileSync('db/client-export.schema.json', 'utf8'));
  expect(published, 'run: npx node build/publish-schema.ts').toEqual(JSON.parse(JSON.stringify(clientExportSchema())));
});

test('an export that is wrong anywhere is refused and nothing is added', async () => {
  const { caseload, id } = await lived();
  const good = caseload.exportClient(id, NOW);
  const empty = await newCaseload();
  const other = '0b0e7b8e-6c1e-4a9e-9f61-7d2f5a4f6c11';
  const wrongs: [what: string, value: unknown][] = [
    ['null', null],
    ['another format', { ...good, format: 'x' }],
    ['newer version', { ...good, version: 2 }],
    [
      'visit of another',
      { ...good, record: { ...good.record, visits: good.record.visits.map((v) => ({ ...v, clientId: other })) } },
    ],
    ['same id twice', { ...good, record: { ...good.record, visits: [...good.record.visits, good.record.visits[0]] } }],
    ['visit missing', { ...good, record: { ...good.record, visits: [] } }],
    ['picture not listed', { ...good, pictures: [] }],
    [
      'wrong grade',
      {
        ...good,
        record: { ...good.record, intakeAnswers: good.record.intakeAnswers.map((a) => ({ ...a, grade: 7 })) },
      },
    ],
  ];
  for (const [what, value] of wrongs) {
    expect(() => empty.importClient(value, () => Buffer.from('original bytes'), later), what).toThrow(
      /malformed-request|not-found/,
    );
    expect(empty.counts(), what).toMatchObject({ client: 0, blob: 0, trail: 0 });
  }
  expect(() => empty.importClient(good, () => Buffer.from('other bytes...'), later)).toThrow(
    'malformed-request: pictures',
  );
  expect(empty.lastSeq()).toBe(0);
});

test('mutated client files are refused with a sentence, or bring in a whole client (seeded)', async () => {
  const { caseload, id } = await lived();
  const folder = newFolder();
  const file = path.join(folder, 'client.tar');
  await writeClientFile(caseload, id, file, NOW);
  const good = readFileSync(file);
  const random = seeded(5);
  const empty = await newCaseload();
  for (let n = 0; n < 60; n++) {
    const bytes = Buffer.from(good);
    for (let times = 0; times <= random() * 3; times++)
      bytes[Math.floor(random() * bytes.length)] = Math.floor(random() * 256);
    writeFileSync(file, random() < 0.1 ? bytes.subarray(0, Math.floor(random() * bytes.length)) : bytes);
    try {
      const brought = await readClientFile(empty, file, later);
      expect(empty.record(brought).client.id).toBe(brought);
      empty.erase(brought, later);
    } catch (error) {
      expect(['not-an-export', 'code-taken', 'too-large']).toContain((error as { code: string }).code);
    }
  }
  expect(readdirSync(folder)).toEqual(['client.tar']);
  expect(empty.verifyTrail().whole).toBe(true);
});

test('deep nesting and huge claims do not take the program down', async () => {
  const caseload = await newCaseload();
  const file = path.join(newFolder(), 'deep.tar');
  const { tarHeader, tarOf } = await import('../../../electron/files/backup/tar.ts');
  for (const text of ['['.repeat(200_000), `${'{"a":'.repeat(100_000)}1${'}'.repeat(100_000)}`, '"'.repeat(9), '']) {
    writeFileSync(file, await tarOf([{ name: 'client.json', data: Buffer.from(text) }], 0));
    await expect(readClientFile(caseload, file, later)).rejects.toThrow('not-an-export');
  }
  writeFileSync(file, Buffer.concat([await tarHeader('client.json', 7_000_000_000, 0), Buffer.alloc(512)]));
  await expect(readClientFile(caseload, file, later)).rejects.toThrow('not-an-export');
});

test('an export that cannot be written leaves nothing', async () => {
  const { caseload, id } = await lived();
  const folder = newFolder();
  await expect(writeClientFile(caseload, id, path.join(folder, 'no', 'such.tar'), NOW)).rejects.toThrow('save-failed');
  await expect(
    writeClientFile(caseload, '0b0e7b8e-6c1e-4a9e-9f61-7d2f5a4f6c11', path.join(folder, 'x.tar'), NOW),
  ).rejects.toThrow('not-found');
  expect(readdirSync(folder)).toEqual([]);
});
