/** Hand-overs as files and through a shared folder: what goes wrong is a sentence, and nothing half is taken in. */
import {
  appendFileSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import path from 'node:path';
import { generateX25519Identity } from 'age-encryption';
import { afterEach, expect, test } from 'vitest';
import type { Caseload } from '../../db/index.ts';
import { messages, type MessageCode } from '../../electron/contract/messages.ts';
import type { HandoverState, LookedInto } from '../../electron/contract/sharing/handover.ts';
import type { RequestName } from '../../electron/contract/index.ts';
import { readHandover, writeHandover } from '../../electron/files/handover/handover-file.ts';
import { inTime } from '../../electron/files/handover/share.ts';
import { dispatch } from '../../electron/handlers/dispatch.ts';
import { Services } from '../../electron/handlers/services.ts';
import { client, doing, newCaseload, newFolder, NOW, visit } from '../db/support.ts';

const running: Services[] = [];
afterEach(() => {
  for (const services of running.splice(0)) services.lock('asked');
});

interface Laptop {
  services: Services;
  caseload: Caseload;
  saved: { name: string; bytes: Uint8Array }[];
  open: { file: Uint8Array | null };
  ask: <T>(name: RequestName, input?: unknown) => Promise<{ ok: boolean; code?: MessageCode; value: T }>;
}

async function laptop(initials: string): Promise<Laptop> {
  const caseload = await newCaseload();
  const saved: Laptop['saved'] = [];
  const open: Laptop['open'] = { file: null };
  const port = {
    keyStore: null,
    chooseSave: async (save: { suggestedName: string; bytes: Uint8Array }) => {
      saved.push({ name: save.suggestedName, bytes: save.bytes });
      return { saved: true, name: save.suggestedName };
    },
    chooseOpen: async () => open.file && { token: 't', name: 'x.age', read: async () => open.file },
  };
  const services = new Services({
    folder: caseload.folder,
    port: port as never,
    shell: 'browser',
    version: '0',
    now: () => new Date(NOW),
    emit: () => undefined,
    demoSource: null,
  });
  running.push(services);
  services.caseload = caseload;
  caseload.putSetting('therapist', { initials, clinic: 'Invented Clinic', credentials: '' }, doing);
  const ask: Laptop['ask'] = async (name, input = {}) => {
    const answer = JSON.parse(await dispatch(services, JSON.stringify({ name, input }))) as Awaited<
      ReturnType<Laptop['ask']>
    >;
    // Whatever is refused has a sentence: what happened, what is safe, what to do.
    if (!answer.ok) expect(messages[answer.code as MessageCode].split('. ').length).toBeGreaterThan(1);
    return answer as never;
  };
  return { services, caseload, saved, open, ask };
}

async function pair() {
  const [a, b] = [await laptop('MK'), await laptop('JB')];
  const key = (await b.ask<HandoverState>('handover.state')).value.recipient;
  const added = await a.ask<HandoverState>('handover.addColleague', { name: 'JB', key: ` ${key}\n` });
  expect(added.value.colleagues).toMatchObject([{ name: 'JB', recipient: key }]);
  const { id } = a.caseload.put('client', client({ name: 'Ada Invented', code: 'K1' }), doing);
  a.caseload.put('visit', visit(id), doing);
  return { a, b, key, id };
}
const take = async (b: Laptop) => {
  const looked = (await b.ask<LookedInto>('handover.look', { name: null })).value;
  return b.ask<{ changes: number }>('handover.take', {
    token: looked.token,
    clientIds: looked.clients.map(({ id }) => id),
  });
};

test('a file to a colleague: names no client outside, opens with her key only, arrives whole, twice changes nothing', async () => {
  const { a, b, key, id } = await pair();
  await a.ask('handover.make', { clientIds: [id], to: key, into: 'file' });
  const [file] = a.saved;
  expect(file?.name).toMatch(/^2026-03-04-[0-9a-f]{12}-[0-9a-f]{8}\.handover\.age$/);
  expect(Buffer.from(file!.bytes).toString('latin1')).not.toContain('Ada');
  expect(a.caseload.trail(id)[0]).toMatchObject({ kind: 'export', after: { what: 'hand-over to JB, encrypted' } });
  b.open.file = file!.bytes;
  const looked = (await b.ask<LookedInto>('handover.look', { name: null })).value;
  expect(looked).toMatchObject({ from: 'MK, Invented Clinic', clients: [{ id, state: 'new', changes: 2 }] });
  expect(b.caseload.clients()).toEqual([]);
  expect((await take(b)).value.changes).toBe(2);
  expect(b.caseload.record(id)).toEqual(a.caseload.record(id));
  expect((await take(b)).value.changes).toBe(0);

  const third = await laptop('LR');
  third.open.file = file!.bytes;
  expect((await third.ask('handover.look', { name: null })).code).toBe('handover-not-for-us');
});

test('half-written, spoiled, foreign and newer files: a sentence each, nothing taken in', async () => {
  const { a, b, key, id } = await pair();
  await a.ask('handover.make', { clientIds: null, to: key, into: 'file' });
  const whole = a.saved[0]!.bytes;
  const spoiled = Uint8Array.from(whole);
  spoiled[spoiled.length - 40] = 255 - spoiled[spoiled.length - 40]!;
  const files: [Uint8Array, MessageCode][] = [
    [whole.slice(0, whole.length / 2), 'not-a-handover'],
    [whole.slice(0, 100), 'not-a-handover'],
    [spoiled, 'not-a-handover'],
    [Buffer.from('a letter to somebody'), 'not-a-handover'],
    [new Uint8Array(0), 'not-a-handover'],
  ];
  for (const [file, code] of files) {
    b.open.file = file;
    expect((await b.ask('handover.look', { name: null })).code).toBe(code);
  }
  const identity = (b.caseload.setting('handoverKey') as { identity: string }).identity;
  await expect(readHandover(whole, identity, b.caseload.schemaVersion - 1)).rejects.toMatchObject({
    code: 'handover-newer',
  });
  // An older Fairhand kept a fact in another form: the whole file is refused.
  const handed = a.caseload.handover.handOver([id], doing);
  handed.entries[0]!.after = '{"of":"another form"}';
  const before = {
    schemaVersion: a.caseload.schemaVersion - 1,
    handover: { handOver: () => handed },
    blob: () => null,
  } as unknown as Caseload;
  const from = { initials: 'MK', clinic: '', recipient: key };
  b.open.file = await writeHandover(before, [id], key, from, doing);
  const older = (await b.ask<LookedInto>('handover.look', { name: null })) as { code?: string; value?: LookedInto };
  const token = older.value?.token ?? '';
  const code = older.code ?? (await b.ask('handover.take', { token, clientIds: [id] })).code;
  expect(code).toBe('handover-older');
  expect(b.caseload.clients()).toEqual([]);
  expect((await b.ask('handover.take', { token: 'x', clientIds: ['00000000-0000-4000-8000-000000000000'] })).code).toBe(
    'not-found',
  );
});

test('keys that are none: a letter changed, one’s own, a secret one, a sentence', async () => {
  const a = await laptop('MK');
  const own = (await a.ask<HandoverState>('handover.state')).value.recipient;
  const other = (await (await laptop('JB')).ask<HandoverState>('handover.state')).value.recipient;
  const changed = other.slice(0, -1) + (other.endsWith('q') ? 'p' : 'q');
  const cases: [string, MessageCode][] = [
    [changed, 'key-not-one'],
    ['age1', 'key-not-one'],
    ['my key is under the mat', 'key-not-one'],
    [own, 'key-is-own'],
    [await generateX25519Identity(), 'key-is-secret'],
  ];
  for (const [key, code] of cases) expect((await a.ask('handover.addColleague', { name: 'X', key })).code).toBe(code);
  expect((await a.ask<HandoverState>('handover.state')).value.colleagues).toEqual([]);
  // The secret half is in the encrypted file only.
  expect(JSON.stringify((await a.ask('handover.state')).value)).not.toContain('AGE-SECRET');
});

test('a shared folder: only one’s own files wait; a share that goes leaves nothing half; two laptops of one key are told', async () => {
  const { a, b, key, id } = await pair();
  const share = path.join(newFolder(), 'share');
  expect((await a.ask('handover.setFolder', { folder: share })).code).toBe('share-gone');
  mkdirSync(share);
  for (const each of [a, b]) await each.ask('handover.setFolder', { folder: share });
  expect((await a.ask('handover.make', { clientIds: [id], to: key, into: 'folder' })).ok).toBe(true);
  writeFileSync(path.join(share, 'holiday.jpg'), 'x');
  expect((await a.ask<HandoverState>('handover.state')).value.waiting).toEqual([]);
  const [name] = (await b.ask<HandoverState>('handover.state')).value.waiting;
  const looked = (await b.ask<LookedInto>('handover.look', { name })).value;
  await b.ask('handover.take', { token: looked.token, clientIds: [id] });
  expect((await b.ask<HandoverState>('handover.state')).value.waiting).toEqual([]);
  expect((await b.ask('handover.look', { name: '../caseload.db' })).code).toBe('not-found');

  renameSync(share, `${share}-away`);
  expect((await b.ask<HandoverState>('handover.state')).value).toMatchObject({ folderThere: false, waiting: [] });
  expect((await a.ask('handover.make', { clientIds: [id], to: key, into: 'folder' })).code).toBe('share-gone');
  expect((await b.ask('handover.look', { name })).code).toBe('share-gone');
  renameSync(`${share}-away`, share);
  expect(readdirSync(share).filter((each) => each.endsWith('.part'))).toEqual([]);

  // The same key on another laptop: its watch is younger than three minutes.
  const mark = readdirSync(share).find((each) => each.endsWith('.watch') && each.includes(name!.slice(11, 23)))!;
  const twin = path.join(share, mark.replace(/-[0-9a-f]{8}\.watch$/, '-00000000.watch'));
  writeFileSync(twin, '');
  utimesSync(twin, new Date(NOW), new Date(NOW));
  expect((await b.ask<HandoverState>('handover.state')).value.alsoWatched).toBe(NOW);
  expect(existsSync(twin)).toBe(true);
  expect(readFileSync(path.join(share, name!)).subarray(0, 21).toString()).toBe('age-encryption.org/v1');
});

test('a file that is still being copied waits until it is whole; a share that does not answer counts as gone', async () => {
  const { a, b, key, id } = await pair();
  const share = newFolder();
  for (const each of [a, b]) await each.ask('handover.setFolder', { folder: share });
  await a.ask('handover.make', { clientIds: [id], to: key, into: 'file' });
  const { name, bytes } = a.saved[0]!;
  const file = path.join(share, name);
  const waiting = async () => (await b.ask<{ waiting: number; arriving: number }>('handover.waiting')).value;
  writeFileSync(file, '');
  expect(await waiting()).toMatchObject({ waiting: 0, arriving: 1 });
  let written = 0;
  const copying = setInterval(() => appendFileSync(file, bytes.subarray(written, (written += 20))), 20);
  await new Promise((resolve) => setTimeout(resolve, 50));
  expect(await waiting()).toMatchObject({ there: true, waiting: 0, arriving: 1 });
  clearInterval(copying);
  appendFileSync(file, bytes.subarray(written));
  expect(await waiting()).toEqual({ folder: true, there: true, waiting: 1, arriving: 0 });
  expect((await b.ask<LookedInto>('handover.look', { name })).value.clients).toHaveLength(1);
  // Whoever never handed over has no key yet, and looking makes none.
  const third = await laptop('LR');
  await third.ask('handover.setFolder', { folder: share });
  expect((await third.ask<{ waiting: number }>('handover.waiting')).value.waiting).toBe(0);

  let answer: (value: string) => void = () => undefined;
  const dead = new Promise<string>((resolve) => (answer = resolve));
  await expect(inTime('/dead', () => dead, 20)).rejects.toMatchObject({ code: 'share-gone' });
  // It still owes an answer: no second thread is held by it.
  await expect(inTime('/dead', () => Promise.resolve('second'), 20)).rejects.toMatchObject({ code: 'share-gone' });
  answer('late');
  await dead;
  await new Promise((resolve) => setTimeout(resolve, 5));
  expect(await inTime('/dead', () => Promise.resolve('back'), 20)).toBe('back');
});

test('both sides changed: shown field by field, the other side is taken, the colleague learns of it', async () => {
  const { a, b, key, id } = await pair();
  const back = (await a.ask<HandoverState>('handover.state')).value.recipient;
  await b.ask('handover.addColleague', { name: 'MK', key: back });
  await a.ask('handover.make', { clientIds: [id], to: key, into: 'file' });
  b.open.file = a.saved.at(-1)!.bytes;
  await take(b);
  const at = (minute: string) => ({ at: `2026-03-05T10:${minute}:00.000Z`, by: 'XX' });
  a.caseload.put('client', { ...a.caseload.record(id).client, readers: 'the pharmacist' }, at('01'));
  b.caseload.put('client', { ...b.caseload.record(id).client, wants: 'a shopping list' }, at('02'));
  await b.ask('handover.make', { clientIds: [id], to: back, into: 'file' });
  a.open.file = b.saved.at(-1)!.bytes;
  await take(a);
  const [row] = (await a.ask<HandoverState>('handover.state')).value.bothChanged;
  expect(row).toMatchObject({
    code: 'K1',
    what: 'client details',
    fields: [
      { field: 'who reads it', kept: 'empty', other: 'the pharmacist' },
      { field: 'wants to write', kept: 'a shopping list', other: 'empty' },
    ],
  });
  const settled = await a.ask<HandoverState>('handover.settle', { id: row!.id, take: 'other' });
  expect(settled.value.bothChanged).toEqual([]);
  expect(a.caseload.record(id).client).toMatchObject({ readers: 'the pharmacist', wants: '' });
});
