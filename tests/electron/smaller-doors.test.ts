/** Doors that stood open once: days nobody was seen on, a demo folder with somebody else's files, plain bytes on their way in. */
import { randomUUID } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, watch, writeFileSync } from 'node:fs';
import path from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { afterEach, expect, test } from 'vitest';
import { createCaseload } from '../../db/index.ts';
import { caseloadFile } from '../../db/files.ts';
import type { RequestName } from '../../electron/contract/index.ts';
import { messages } from '../../electron/contract/messages.ts';
import { demoPassphrase } from '../../electron/handlers/app.ts';
import { dispatch } from '../../electron/handlers/dispatch.ts';
import { Services } from '../../electron/handlers/services.ts';
import { answer, client, doing, newCaseload, newFolder, NOW, PASSPHRASE, QUICK, visit } from '../db/support.ts';

const running: Services[] = [];
afterEach(() => {
  for (const services of running.splice(0)) services.lock('asked');
});

const bringable = { bytes: new Uint8Array(), name: '' };

function servicesIn(folder: string, demoSource: string | null = null) {
  const port = {
    keyStore: null,
    chooseOpen: async () => ({ name: bringable.name, read: async () => bringable.bytes }),
  } as never;
  const now = () => new Date(NOW);
  const services = new Services({
    folder,
    port,
    shell: 'browser',
    version: '0',
    now,
    emit: () => undefined,
    demoSource,
  });
  running.push(services);
  const ask = async (name: RequestName, input: unknown = {}) =>
    JSON.parse(await dispatch(services, JSON.stringify({ name, input }))) as {
      ok: boolean;
      code?: keyof typeof messages;
      value?: Record<string, string>;
    };
  return { services, ask };
}

test('a visit dated 0001, 1700 or years ahead is a sentence, and the visit stays on its day', async () => {
  const caseload = await newCaseload();
  const { id } = caseload.put('client', client(), doing);
  const seen = caseload.put('visit', visit(id), doing);
  caseload.close();
  const { services, ask } = servicesIn(caseload.folder);
  expect((await ask('app.unlock', { passphrase: PASSPHRASE })).ok).toBe(true);
  const { at: _at, by: _by, ...bare } = seen;
  for (const [date, code] of [
    ['0001-01-01', 'date-too-old'],
    ['1700-05-04', 'date-too-old'],
    ['1949-12-31', 'date-too-old'],
    ['2099-01-01', 'date-in-future'],
  ] as const) {
    expect(await ask('visit.save', { ...bare, date }), date).toMatchObject({ ok: false, code });
    expect(messages[code]).toContain('Nothing was changed');
  }
  expect(services.need().get('visit', seen.id)?.date).toBe(seen.date);
  expect((await ask('visit.save', { ...bare, date: '1950-01-01' })).ok).toBe(true);
});

test('an answer alone of an assistant makes the visit wait for a co-signature, and is undone with it', async () => {
  const caseload = await newCaseload();
  const { id } = caseload.put('client', client(), doing);
  const seen = caseload.put('visit', visit(id), doing);
  caseload.close();
  const { services, ask } = servicesIn(caseload.folder);
  await ask('app.unlock', { passphrase: PASSPHRASE });
  const therapist = (initials: string, assistant: boolean) =>
    ask('app.therapist', { initials, clinic: 'Invented Clinic', credentials: '', assistant });
  const coSign = () => services.need().get('visit', seen.id)?.coSign;
  expect((await therapist('QM', false)).ok).toBe(true);
  expect((await ask('intake.answer', answer(id, seen.id, { item: 'touch' }))).ok).toBe(true);
  expect(coSign()).toBeUndefined();
  expect((await therapist('AS', true)).ok).toBe(true);
  expect((await ask('intake.answer', answer(id, seen.id))).ok).toBe(true);
  expect(coSign()).toEqual({ recordedBy: 'AS', signedBy: null, signedAt: null });
  expect((await ask('client.undo', { clientId: id })).ok).toBe(true);
  expect(coSign()).toBeUndefined();
  // Her draft of a home program waits by itself; what the window sends of a signature decides nothing.
  const draft = { id: randomUUID(), clientId: id, visitId: seen.id, status: 'draft', ruleVersion: '2026.1', tier: 0 };
  const empty = { lines: [], vetoed: [], note: '', approvedAt: null, approvedBy: null };
  const program = () => services.need().get('program', draft.id)?.coSign;
  const signed = { recordedBy: 'AS', signedBy: 'AS', signedAt: NOW };
  expect((await ask('program.save', { ...draft, ...empty, coSign: signed })).ok).toBe(true);
  expect(program()).toEqual({ recordedBy: 'AS', signedBy: null, signedAt: null });
  expect(await ask('program.save', { ...draft, ...empty, coSign: signed })).toMatchObject({ code: 'co-sign-self' });
  expect((await therapist('BT', true)).ok).toBe(true);
  expect(await ask('program.save', { ...draft, ...empty, coSign: signed })).toMatchObject({
    code: 'co-sign-assistant',
  });
  expect((await therapist('QM', false)).ok).toBe(true);
  expect((await ask('program.save', { ...draft, ...empty })).ok).toBe(true);
  expect(program()?.signedBy).toBe(null);
  expect((await ask('program.save', { ...draft, ...empty, coSign: signed })).ok).toBe(true);
  expect(program()).toMatchObject({ recordedBy: 'AS', signedBy: 'QM' });
  expect((await ask('client.undo', { clientId: id })).ok).toBe(true);
  expect(program()?.signedBy).toBe(null);
  expect(
    services
      .need()
      .record(id)
      .intakeAnswers.map(({ item }) => item),
  ).toEqual(['touch']);
});

async function demoSource(passphrase: string): Promise<string> {
  const folder = newFolder();
  const made = await createCaseload({ folder, passphrase, now: NOW, workFactor: QUICK });
  if (!made.ok) throw new Error(made.code);
  made.caseload.put('client', client(), doing);
  made.caseload.close();
  return folder;
}

test('removing the demo deletes what the demo consists of, and nothing that was put beside it', async () => {
  const { services, ask } = servicesIn(newFolder(), await demoSource(demoPassphrase));
  expect((await ask('app.openDemo')).ok).toBe(true);
  const folder = services.demoFolder;
  mkdirSync(path.join(folder, 'my pictures'));
  const own = ['letter.txt', 'caseload.txt', path.join('my pictures', 'scan.png')];
  for (const name of own) writeFileSync(path.join(folder, name), 'of the therapist');
  expect((await ask('app.removeDemo')).ok).toBe(true);
  expect(existsSync(caseloadFile(folder))).toBe(false);
  for (const name of own) expect(readFileSync(path.join(folder, name), 'utf8')).toBe('of the therapist');
  expect(readdirSync(folder).sort()).toEqual(['caseload.txt', 'letter.txt', 'my pictures']);
});

test('a caseload that the demo’s passphrase does not open is somebody’s own: it is not removed', async () => {
  const { services, ask } = servicesIn(newFolder(), await demoSource(PASSPHRASE));
  const folder = services.demoFolder;
  const made = await createCaseload({ folder, passphrase: PASSPHRASE, now: NOW, workFactor: QUICK });
  if (!made.ok) throw new Error(made.code);
  made.caseload.close();
  const before = readFileSync(caseloadFile(folder));
  expect(await ask('app.removeDemo')).toMatchObject({ ok: false, code: 'demo-not-ours' });
  expect(readFileSync(caseloadFile(folder)).equals(before)).toBe(true);
});

test('a client file on its way in is never written to the disk in the clear', async () => {
  const words = 'Zweigstelle Invented Person';
  const from = await newCaseload();
  const { id } = from.put('client', client({ name: words, code: 'P-9' }), doing);
  from.close();
  const giving = servicesIn(from.folder);
  await giving.ask('app.unlock', { passphrase: PASSPHRASE });
  const exported = (await giving.ask('client.export', { clientId: id })).value!['file']!;
  Object.assign(bringable, { bytes: readFileSync(exported), name: 'client.tar' });
  expect(Buffer.from(bringable.bytes).includes(words)).toBe(true);

  const to = await newCaseload();
  to.close();
  const { ask } = servicesIn(to.folder);
  await ask('app.unlock', { passphrase: PASSPHRASE });
  const changed = new Set<string>();
  const plain = new Set<string>();
  const look = (name: string) => {
    changed.add(name);
    try {
      if (readFileSync(path.join(to.folder, name)).includes(words)) plain.add(name);
    } catch {
      // A folder, or gone already.
    }
  };
  const watcher = watch(to.folder, { recursive: true }, (_kind, name) => name && look(name));
  expect((await ask('client.import')).ok).toBe(true);
  await pause(300);
  watcher.close();
  for (const name of readdirSync(to.folder, { recursive: true, encoding: 'utf8' })) look(name);
  expect([...plain]).toEqual([]);
  // Not even a file that was there for a moment, besides those of the caseload.
  expect([...changed].filter((name) => !/^(caseload\.|backups|copies|set-aside|exports)/.test(name))).toEqual([]);
});
