/** Several people of one caseload, asked through the contract: sign-in, roles, trail, kept words, guessing, lock. */
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { keyFile } from '../../../db/files.ts';
import type { RequestName } from '../../../electron/contract/index.ts';
import type { PersonRow } from '../../../electron/contract/sign-in/people.ts';
import { backupsFolder, unlockBackup } from '../../../electron/files/backup/backup-list.ts';
import { openContainer } from '../../../electron/files/backup/container.ts';
import { dispatch } from '../../../electron/handlers/dispatch.ts';
import { Services } from '../../../electron/handlers/services.ts';
import { client, doing, newCaseload, newFolder, NOW, PASSPHRASE, QUICK, visit } from '../../db/support.ts';

const HERS = 'nine lighthouses and a spoon';
const ASSISTANT = 'eleven quiet harbors in fog';
let services: Services;
let now: Date;
let folder: string;
let clientId: string;

const raw = async (name: RequestName, input: unknown = {}) =>
  JSON.parse(await dispatch(services, JSON.stringify({ name, input }))) as {
    ok: boolean;
    code?: string;
    detail?: string;
    value?: never;
  };
async function ask<T>(name: RequestName, input: unknown = {}): Promise<T> {
  const { ok, code, value } = await raw(name, input);
  if (!ok) throw new Error(`${name}: ${code}`);
  return value as T;
}
const code = async (name: RequestName, input: unknown = {}) => (await raw(name, input)).code ?? 'done';
const signIn = (initials: string, passphrase: string) => code('app.unlock', { initials, passphrase });
const lock = () => ask('app.lock');
const people = async () => (await ask<{ people: PersonRow[] }>('people.list')).people;
const idOf = async (initials: string) => (await people()).find((one) => one.initials === initials)!.id;

const second = { passphrase: PASSPHRASE, name: 'Quinn Meadow', initials: 'QM', role: 'therapist', first: HERS };
const assistant = { passphrase: PASSPHRASE, name: 'Ash Stone', initials: 'AS', role: 'assistant', first: ASSISTANT };

beforeEach(async () => {
  now = new Date(NOW);
  const caseload = await newCaseload();
  ({ folder } = caseload);
  ({ id: clientId } = caseload.put('client', client(), doing));
  caseload.putSetting('therapist', { initials: 'MK', clinic: 'Invented Clinic', credentials: 'OT' }, doing);
  caseload.close();
  services = new Services({
    folder,
    port: { keyStore: null } as never,
    shell: 'browser',
    version: '0',
    now: () => now,
    workFactor: QUICK,
    emit: () => {},
    demoSource: null,
  });
  await ask('app.unlock', { passphrase: PASSPHRASE });
});
afterEach(() => services.lock('asked'));

test('an existing caseload opens as before and becomes the first person’s; each one added signs in as herself', async () => {
  expect(await ask('app.status')).toMatchObject({ severalPeople: false, person: null, initials: 'MK' });
  expect(await people()).toMatchObject([{ initials: 'MK', role: 'therapist', me: true }]);
  const added = await ask<{ recoveryKey: string }>('people.add', second);
  // The old sheet knew of one sign-in.
  expect(added.recoveryKey).not.toBe('');
  expect((await ask<{ recoveryKey: string }>('people.add', assistant)).recoveryKey).toBe('');
  expect(await ask('app.status')).toMatchObject({ severalPeople: true, initials: 'MK', credentials: 'OT' });
  await lock();
  expect(await code('app.unlock', { passphrase: PASSPHRASE })).toBe('initials-missing');
  expect(await signIn('QM', PASSPHRASE)).toBe('wrong-passphrase');
  expect(await signIn('qm', HERS)).toBe('done');
  expect(await ask('app.status')).toMatchObject({ initials: 'QM', name: 'Quinn Meadow', assistant: false });
  await lock();
  expect(await signIn('AS', ASSISTANT)).toBe('done');
  expect(await ask('app.status')).toMatchObject({ initials: 'AS', assistant: true });
});

test('every entry of the trail says who signed in, and no typed initials change that', async () => {
  await ask('people.add', second);
  await lock();
  await signIn('QM', HERS);
  const { initials, clinic, credentials } = await ask<Record<string, string>>('app.status');
  expect(await code('app.therapist', { initials: 'MK', clinic, credentials })).toBe('sign-in-decides');
  expect(await code('app.therapist', { initials, clinic, credentials, assistant: true })).toBe('sign-in-decides');
  await ask('app.therapist', { initials, clinic: 'Invented Clinic East', credentials: 'OTR' });
  await ask('visit.save', visit(clientId));
  const trail = await ask<{ by: string; kind: string }[]>('trail.list', { clientId });
  expect(trail.map(({ by, kind }) => [by, kind])).toEqual([
    ['QM', 'visit'],
    ['MK', 'client'],
  ]);
  await lock();
  await signIn('MK', PASSPHRASE);
  // The clinic is everybody's, what stands under a note is her own.
  expect(await ask('app.status')).toMatchObject({ clinic: 'Invented Clinic East', credentials: 'OT' });
});

test('an assistant manages nobody, makes no sheet, approves nothing and clears no flag; her passphrase she changes', async () => {
  await ask('people.add', second);
  await ask('people.add', assistant);
  const quinn = await idOf('QM');
  await lock();
  await signIn('AS', ASSISTANT);
  const mine = { ...assistant, passphrase: ASSISTANT, initials: 'ZZ', first: 'some new words of somebody' };
  expect(await code('people.add', mine)).toBe('assistant-manages');
  expect(await code('people.remove', { id: quinn, passphrase: ASSISTANT })).toBe('assistant-manages');
  expect(await code('people.change', { id: quinn, name: 'Q', role: 'assistant' })).toBe('assistant-manages');
  expect(await code('people.change', { id: await idOf('AS'), name: 'A', role: 'therapist' })).toBe('assistant-manages');
  expect(await code('app.rekey', { passphrase: ASSISTANT, next: ASSISTANT })).toBe('assistant-manages');
  expect(await code('client.erase', { clientId: quinn })).toBe('assistant-erases');
  expect(await code('moving.eraseHere', { passphrase: ASSISTANT })).toBe('assistant-erases');
  const program = { clientId, id: quinn };
  expect(await code('program.approve', { program, overrides: [] } as never)).not.toBe('done');
  expect(await ask('app.rekey', { passphrase: ASSISTANT, next: 'four herons over a mill' })).toEqual({
    recoveryKey: '',
  });
  expect(await signIn('AS', ASSISTANT)).toBe('wrong-passphrase');
  expect(await signIn('AS', 'four herons over a mill')).toBe('done');
  await lock();
  expect(await signIn('QM', HERS)).toBe('done');
});

test('a person who was removed is refused, her initials are not given again, and the others go on', async () => {
  await ask('people.add', second);
  await ask('people.add', assistant);
  const [mk, qm] = [await idOf('MK'), await idOf('QM')];
  expect(await code('people.remove', { id: mk, passphrase: PASSPHRASE })).toBe('not-oneself');
  expect(await code('people.change', { id: mk, name: 'M', role: 'assistant' })).toBe('not-oneself');
  expect(await code('people.remove', { id: qm, passphrase: HERS })).toBe('wrong-passphrase');
  const before = readFileSync(keyFile(folder), 'utf8');
  const left = await ask('people.remove', { id: qm, passphrase: PASSPHRASE });
  expect(left).toMatchObject({ state: 'open', initials: 'MK', severalPeople: true });
  expect(readFileSync(keyFile(folder), 'utf8')).not.toBe(before);
  expect(await people()).toMatchObject([
    { initials: 'MK', removedOn: null },
    { initials: 'QM', removedOn: '2026-03-04', unfinished: false },
    { initials: 'AS', removedOn: null },
  ]);
  expect(await code('people.add', { ...second, initials: 'qm ' })).toBe('initials-taken');
  await lock();
  expect(await signIn('QM', HERS)).toBe('wrong-passphrase');
  expect(await signIn('AS', ASSISTANT)).toBe('done');
  expect((await ask<{ by: string }[]>('trail.list', { clientId })).length).toBeGreaterThan(0);
});

test('a removal whose change of the key was cut off is shown, refuses her all the same, and is done again', async () => {
  await ask('people.add', second);
  const qm = await idOf('QM');
  const list = (await people()).map(({ me: _me, unfinished: _unfinished, ...one }) => one);
  // What the handler writes first; a kill follows.
  services.need().putSetting(
    'people',
    list.map((one) => (one.id === qm ? { ...one, removedOn: '2026-03-04' } : one)),
    doing,
  );
  await lock();
  expect(await signIn('QM', HERS)).toBe('wrong-passphrase');
  expect(await signIn('MK', PASSPHRASE)).toBe('done');
  expect((await people())[1]).toMatchObject({ unfinished: true });
  await ask('people.remove', { id: qm, passphrase: PASSPHRASE });
  expect((await people())[1]).toMatchObject({ unfinished: false });
});

test('a moved caseload is erased here with the passphrase of whoever signed in, not with another’s', async () => {
  await ask('people.add', second);
  await ask('moving.write', { folder: newFolder(), sheet: 'What to do' });
  expect(await code('moving.eraseHere', { passphrase: HERS })).toBe('wrong-passphrase');
  expect(await ask('moving.eraseHere', { passphrase: PASSPHRASE })).toMatchObject({ state: 'first-start' });
});

test('words of forms come back only to whoever typed them; so do look and place', async () => {
  const form = { place: 'visit-note', clientId: null, fields: { note: 'typed by MK' } };
  await ask('typed.keep', form);
  await ask('people.add', second);
  expect(await ask('typed.kept', { place: 'visit-note' })).toEqual({ fields: { note: 'typed by MK' } });
  const { preferences } = await ask<{ preferences: object }>('app.status');
  await ask('app.prefer', { ...preferences, theme: 'dark' });
  const at = {
    place: 'client',
    clientId,
    visitId: '',
    tab: 'program',
    part: 'visit',
    scroll: [],
    field: 0,
    caret: null,
  };
  await ask('about.keepPlace', { at });
  expect(await ask('about.lastPlace')).toEqual({ at });
  await lock();
  await signIn('QM', HERS);
  expect(await ask('typed.kept', { place: 'visit-note' })).toEqual({ fields: {} });
  expect(await ask('about.lastPlace')).toEqual({ at: null });
  await ask('typed.keep', { ...form, fields: { note: 'typed by QM' } });
  expect(await ask('app.status')).toMatchObject({ preferences: { theme: 'system' } });
  await lock();
  await signIn('MK', PASSPHRASE);
  expect(await ask('typed.kept', { place: 'visit-note' })).toEqual({ fields: { note: 'typed by MK' } });
  expect(await ask('app.status')).toMatchObject({ preferences: { theme: 'dark' } });
});

test('wrong passphrases of one keep nobody else waiting, and the note of them names nobody', async () => {
  await ask('people.add', second);
  await lock();
  for (let n = 0; n < 4; n++) await signIn('QM', 'a wrong guess');
  expect(await signIn('QM', HERS)).toBe('wait-before-retry');
  expect(readFileSync(path.join(folder, 'caseload.tries.json'), 'utf8')).not.toMatch(/QM/);
  expect(await signIn('MK', PASSPHRASE)).toBe('done');
  await lock();
  expect(await signIn('QM', HERS)).toBe('wait-before-retry');
  now = new Date(now.getTime() + 61_000);
  expect(await signIn('QM', HERS)).toBe('done');
});

test('the recovery sheet sets the passphrase of whoever is named; unknown initials use nothing up', async () => {
  const { recoveryKey } = await ask<{ recoveryKey: string }>('people.add', second);
  await lock();
  const next = 'four herons over a mill';
  expect(await code('app.recover', { recoveryKey, next })).toBe('initials-missing');
  expect(await code('app.recover', { recoveryKey, next, initials: 'ZZ' })).toBe('initials-unknown');
  expect(await ask('app.recover', { recoveryKey, next, initials: 'QM' })).toMatchObject({ status: { initials: 'QM' } });
  await lock();
  expect(await signIn('QM', HERS)).toBe('wrong-passphrase');
  expect(await signIn('MK', PASSPHRASE)).toBe('done');
});

test('a backup opens with the passphrase of anybody who could then, and with the sheet; nobody else’s', async () => {
  const { recoveryKey } = await ask<{ recoveryKey: string }>('people.add', second);
  const place = backupsFolder(folder);
  const { name: before } = await ask<{ name: string }>('backup.now');
  await ask('people.remove', { id: await idOf('QM'), passphrase: PASSPHRASE });
  const { name: after } = await ask<{ name: string }>('backup.now');
  const opens = async (name: string, secret: string) => {
    const identity = await unlockBackup((await openContainer(path.join(place, name))).key, secret).catch(() => null);
    return identity !== null;
  };
  for (const secret of [PASSPHRASE, HERS, recoveryKey]) expect(await opens(before, secret)).toBe(true);
  expect(await opens(before, ASSISTANT)).toBe(false);
  for (const secret of [PASSPHRASE, recoveryKey]) expect(await opens(after, secret)).toBe(true);
  expect(await opens(after, HERS)).toBe(false);
});
