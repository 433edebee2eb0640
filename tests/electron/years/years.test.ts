/** Retention and moving behind the contract: nothing is erased without the list, and a moved caseload says so. */
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { afterEach, expect, test } from 'vitest';
import { openFile } from '../../../db/connection.ts';
import { dump } from '../../../db/dump.ts';
import { caseloadFile } from '../../../db/files.ts';
import type { RequestName } from '../../../electron/contract/index.ts';
import { dispatch } from '../../../electron/handlers/dispatch.ts';
import { Services } from '../../../electron/handlers/services.ts';
import { client, doing, newCaseload, newFolder, NOW, PASSPHRASE, visit } from '../../db/support.ts';

const running: Services[] = [];
afterEach(() => {
  for (const services of running.splice(0)) services.lock('asked');
});

function servicesIn(folder: string) {
  const port = { keyStore: null, chooseOpen: async () => null } as never;
  const now = () => new Date(NOW);
  const services = new Services({
    folder,
    port,
    shell: 'browser',
    version: '0',
    now,
    emit: () => undefined,
    demoSource: null,
  });
  running.push(services);
  const ask = async (name: RequestName, input: unknown = {}) =>
    JSON.parse(await dispatch(services, JSON.stringify({ name, input }))) as {
      ok: boolean;
      code?: string;
      value?: never;
    };
  return { services, ask };
}

async function twoClients() {
  const caseload = await newCaseload();
  const old = caseload.put('client', client({ code: 'OLD', name: 'Quentin Oldfeather' }), doing);
  const late = caseload.put('client', client({ code: 'LATE' }), doing);
  caseload.put('visit', { ...visit(old.id), date: '2010-05-01' }, doing);
  caseload.put('visit', { ...visit(late.id), date: '2026-01-05' }, doing);
  const blob = caseload.putBlob(old.id, 'image/png', Buffer.from('ink of Quentin Oldfeather'), doing);
  caseload.close();
  return { folder: caseload.folder, old: old.id, late: late.id, blob };
}

test('only what the clinic’s rule makes due can be erased, by its number; the trail keeps that and who', async () => {
  const { folder, old, late } = await twoClients();
  const { services, ask } = servicesIn(folder);
  await ask('app.unlock', { passphrase: PASSPHRASE });
  expect(await ask('retention.state')).toMatchObject({ value: { rule: { years: null }, due: [] } });
  const erase = (clientIds: string[], typed: string) => ask('retention.erase', { clientIds, typed });
  expect(await erase([old], '1')).toMatchObject({ ok: false, code: 'not-due' });
  const rule = { years: 10, source: 'clinic', words: 'Rule 4' };
  expect(await ask('retention.set', rule)).toMatchObject({
    value: { rule, due: [{ id: old, since: '2010-05-01', until: '2020-05-01', why: 'last-visit', archivedOn: null }] },
  });
  expect(await erase([old, late], '2')).toMatchObject({ ok: false, code: 'not-due' });
  expect(await erase([old], '2')).toMatchObject({ ok: false, code: 'erase-not-confirmed' });
  expect(await ask('retention.archive', { clientIds: [old], on: true })).toMatchObject({
    value: { due: [{ id: old, archivedOn: NOW.slice(0, 10) }] },
  });
  await ask('backup.now');
  const { value } = (await erase([old], '1')) as { value?: { erased: number; stillIn: string[] } };
  expect(value?.erased).toBe(1);
  expect(value?.stillIn).toEqual([expect.stringMatching(/\.fhbackup$/)]);
  const caseload = services.need();
  expect(caseload.clients().map(({ id }) => id)).toEqual([late]);
  expect(caseload.trail(old, 9)[0]).toMatchObject({
    action: 'erase',
    by: expect.any(String),
    before: null,
    after: null,
  });
  expect(caseload.trail(old, 99).every(({ before, after }) => before === null && after === null)).toBe(true);
  expect(caseload.verifyTrail().whole).toBe(true);
  // Every row of every table, the side table of the trail and the pictures among them.
  const identity = Buffer.from(caseload.withKey((key) => Buffer.from(key)));
  const db = openFile(caseloadFile(folder), identity);
  const whole = Buffer.concat([...dump(db)].map(({ data }) => data)).toString('latin1');
  db.close();
  expect(whole).toContain(late);
  expect(whole).not.toContain('Oldfeather');
  expect(await ask('retention.state')).toMatchObject({ value: { due: [] } });
});

test('moving: the file opens elsewhere with everything and without the mark, which stays here until it is taken back', async () => {
  const { folder, blob } = await twoClients();
  const { services, ask } = servicesIn(folder);
  await ask('app.unlock', { passphrase: PASSPHRASE });
  services.need().putSetting('preferences', { ...services.preferences(), theme: 'dark' }, services.doing());
  const stick = newFolder();
  expect(await ask('moving.write', { folder: 'stick', sheet: '1.' })).toMatchObject({ code: 'folder-not-writable' });
  expect(await ask('moving.eraseHere', { passphrase: PASSPHRASE })).toMatchObject({ code: 'not-moved' });
  writeFileSync(path.join(stick, 'fairhand-what-to-do.txt'), 'of another day');
  const moved = (await ask('moving.write', { folder: stick, sheet: 'What to do' })) as {
    value?: { file: string; clients: number; entries: number };
  };
  expect(moved.value).toMatchObject({ clients: 2, lastVisit: '2026-01-05' });
  expect(readFileSync(path.join(stick, 'fairhand-what-to-do.txt'), 'utf8')).toBe('of another day');
  expect(readFileSync(path.join(stick, 'fairhand-what-to-do-2.txt'), 'utf8')).toBe('What to do\n');
  expect(services.status().movedOn).toBe(NOW.slice(0, 10));

  const elsewhere = newFolder();
  const other = servicesIn(elsewhere);
  expect(await other.ask('backup.bring', { place: path.join(stick, 'nothing') })).toMatchObject({
    code: 'not-a-backup',
  });
  const brought = (await other.ask('backup.bring', { place: stick })) as { value?: { name: string } };
  await other.ask('backup.restore', { name: brought.value!.name, passphrase: PASSPHRASE });
  await other.ask('app.unlock', { passphrase: PASSPHRASE });
  expect(other.services.status().movedOn).toBeNull();
  expect(other.services.preferences().theme).toBe('dark');
  expect(other.services.need().lastSeq()).toBe(moved.value!.entries);
  expect(Buffer.from(other.services.need().blob(blob.id)!.data).toString()).toBe('ink of Quentin Oldfeather');

  await ask('moving.stay');
  expect(services.status().movedOn).toBeNull();
});

test('erased here: the passphrase is asked for, what is not Fairhand’s stays, and the window is at its first start', async () => {
  const { folder } = await twoClients();
  const { ask } = servicesIn(folder);
  await ask('app.unlock', { passphrase: PASSPHRASE });
  await ask('backup.now');
  await ask('moving.write', { folder: newFolder(), sheet: 'What to do' });
  writeFileSync(path.join(folder, 'letter.pdf'), 'hers');
  writeFileSync(path.join(folder, 'checking.part'), 'hers');
  // What kills may have left.
  for (const name of ['checking-77.part', 'checking-77.part-wal', 'caseload.key.json.77.part', 'caseload.place.part'])
    writeFileSync(path.join(folder, name), 'half');
  expect(await ask('moving.eraseHere', { passphrase: 'another one of theirs' })).toMatchObject({
    code: 'wrong-passphrase',
  });
  expect(existsSync(caseloadFile(folder))).toBe(true);
  expect(await ask('moving.eraseHere', { passphrase: PASSPHRASE })).toMatchObject({ value: { state: 'first-start' } });
  expect(readdirSync(folder)).toEqual(expect.arrayContaining(['letter.pdf', 'checking.part']));
  expect(readdirSync(folder).filter((name) => /caseload|backups|checking-/.test(name))).toEqual([]);
});
