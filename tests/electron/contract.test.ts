/** The contract between window and shell, carried to a real encrypted caseload in a folder of the test's own. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { messageTest, requestNames, wholeInput } from '../../build/torture/messages.ts';
import { seeded } from '../../build/torture/random.ts';
import { contract, whileLocked } from '../../electron/contract/index.ts';
import { messages, sentenceFor, type MessageCode } from '../../electron/contract/messages.ts';
import { dispatch, handlers } from '../../electron/handlers/dispatch.ts';
import { Services } from '../../electron/handlers/services.ts';
import { newClient } from '../../renderer/logic/caseload/new-client.ts';
import type { ShellPort } from '../../electron/shell-port.ts';

const folder = mkdtempSync(path.join(tmpdir(), 'fairhand-contract-'));
const port: ShellPort = {
  chooseOpen: async () => null,
  chooseSave: async () => ({ saved: false, name: null }),
  printPdf: async () => {
    throw new Error('/home/someone/secret path');
  },
  printPaper: async () => {},
  allowCameraOnce: async () => {},
  keyStore: null,
  close: () => {},
};
let now = new Date('2026-05-04T10:00:00Z');
const services = new Services({
  folder,
  port,
  shell: 'browser',
  version: '0',
  now: () => now,
  emit: () => {},
  demoSource: null,
});

const ask = async (name: string, input: unknown) =>
  JSON.parse(await dispatch(services, JSON.stringify({ name, input }))) as
    { ok: true; value: never } | { ok: false; code: MessageCode; detail?: string };
let recoveryKey = '';
const clientId = '018f7c1e-0000-4000-8000-000000000001';
const visitId = '018f7c1e-0000-4000-8000-000000000002';

beforeAll(async () => {
  const before = await ask('caseload.list', {});
  expect(before).toEqual({ ok: false, code: 'locked' });
  const created = await ask('app.create', { passphrase: 'calm river blue lantern', initials: 'QM', clinic: '' });
  expect(created.ok).toBe(true);
  if (created.ok) recoveryKey = (created.value as { recoveryKey: string }).recoveryKey;
  expect((await ask('client.save', newClient(clientId, 'Invented Person', 'T-1'))).ok).toBe(true);
  const visit = {
    id: visitId,
    clientId,
    date: '2026-05-04',
    kind: 'first',
    minutes: null,
    nextVisit: '',
    told: '',
    skilled: '',
    response: '',
    taughtBack: '',
    plan: '',
  };
  expect((await ask('visit.save', visit)).ok).toBe(true);
});
afterAll(async () => {
  services.lock('asked');
  rmSync(folder, { recursive: true, force: true });
});

const counts = () => services.need().counts();

test('every request of the contract has exactly one handler', () => {
  expect(Object.keys(handlers).sort()).toEqual(Object.keys(contract).sort());
});

test('an unknown request is refused by name and changes nothing', async () => {
  const before = counts();
  for (const name of ['client.nothing', '__proto__', 'constructor', 'toString', '']) {
    expect(await ask(name, {})).toMatchObject({ ok: false, code: 'unknown-request' });
  }
  expect(counts()).toEqual(before);
});

test('malformed messages of every kind are refused and change nothing', async () => {
  const before = counts();
  for (const json of ['', '{', 'null', '[]', '1', '"text"', '{"name":3}', '{}']) {
    expect(JSON.parse(await dispatch(services, json))).toMatchObject({ ok: false });
  }
  for (const [name, request] of Object.entries(contract)) {
    if (request.effect !== 'write') continue;
    for (const input of [undefined, null, 3, 'x', [], { id: 'not-an-id' }, { clientId: '../..', extra: true }]) {
      if (request.input.safeParse(input).success) continue;
      expect(await ask(name, input), name).toMatchObject({ ok: false, code: 'malformed-request' });
    }
  }
  expect(counts()).toEqual(before);
});

test('a message nested without end is refused, not fallen over', async () => {
  for (const depth of [1000, 100_000]) {
    const deep = '['.repeat(depth) + ']'.repeat(depth);
    const sent = `{"name":"rules.saveChanges","input":{"changes":${deep}}}`;
    expect(JSON.parse(await dispatch(services, sent))).toMatchObject({ ok: false, code: 'malformed-request' });
  }
});

test('random messages get only declared answers; refusals and reads leave the row counts alone (share)', async () => {
  const report = await messageTest(1000, 20260304);
  expect(report.faults).toEqual([]);
  expect(report.messages).toBe(1000);
  // Whole messages must be among them, or nothing was tried behind the first check.
  expect(report.answered).toBeGreaterThan(100);
  expect(report.written).toBeGreaterThan(3);
}, 300_000);

test('a handler’s own error crosses as a code with a sentence, never as its text', async () => {
  const answer = await ask('pages.savePdf', { name: 'summary', paper: 'A4', page: null });
  expect(answer).toEqual({ ok: false, code: 'print-failed' });
  expect(JSON.stringify(answer)).not.toContain('secret');
});

test('every code has a sentence that says what is safe or what to do', () => {
  for (const code of Object.keys(messages) as MessageCode[]) {
    const sentence = sentenceFor(code, 'x');
    expect(sentence, code).toMatch(/[.]$/);
    expect(sentence.split(/[.;] /).length, code).toBeGreaterThan(1);
    expect(sentence).not.toContain('{detail}');
  }
});

test('a visit in the future is refused, one of today is not', async () => {
  const record = (await ask('client.open', { clientId })) as {
    ok: true;
    value: { visits: { at?: string; by?: string }[] };
  };
  const { at: _at, by: _by, ...visit } = record.value.visits[0]!;
  expect(await ask('visit.save', { ...visit, date: '2027-01-01' })).toMatchObject({
    ok: false,
    code: 'date-in-future',
  });
});

test('approval asks the red flags again: unasked, open and reviewed are told apart', async () => {
  const id = '018f7c1e-0000-4000-8000-0000000000aa';
  const draft = {
    id,
    clientId,
    visitId,
    status: 'draft',
    ruleVersion: '2026.1',
    tier: 0,
    lines: [],
    vetoed: [],
    note: '',
    approvedAt: null,
    approvedBy: null,
  };
  expect((await ask('program.save', draft)).ok).toBe(true);
  expect(await ask('program.approve', { id })).toEqual({ ok: false, code: 'red-flags-not-asked' });
  const rules = (await ask('rules.current', {})) as {
    ok: true;
    value: { rules: { redFlagTable: { flags: { code: string; asked: boolean }[] } } };
  };
  const asked = rules.value.rules.redFlagTable.flags.filter((f) => f.asked);
  for (const [n, flag] of asked.entries()) {
    const answer = {
      id: `018f7c1e-0000-4000-8000-0000000001${String(n).padStart(2, '0')}`,
      clientId,
      visitId,
      flag: flag.code,
      present: n === 0,
      review: null,
      note: '',
    };
    expect((await ask('intake.flag', answer)).ok).toBe(true);
  }
  expect(await ask('program.approve', { id })).toEqual({ ok: false, code: 'red-flag-open' });
  const cleared = {
    id: '018f7c1e-0000-4000-8000-000000000100',
    clientId,
    visitId,
    flag: asked[0]!.code,
    present: false,
    review: null,
    note: '',
  };
  expect((await ask('intake.flag', cleared)).ok).toBe(true);
  expect((await ask('program.approve', { id })).ok).toBe(true);
  expect(await ask('program.save', draft)).toEqual({ ok: false, code: 'already-approved' });
});

test('wrong passphrases are slowed down, never destructive', async () => {
  await ask('app.lock', {});
  for (let n = 0; n < 3; n++)
    expect(await ask('app.unlock', { passphrase: 'not the passphrase' })).toMatchObject({
      ok: false,
      code: 'wrong-passphrase',
    });
  expect(await ask('app.unlock', { passphrase: 'calm river blue lantern' })).toMatchObject({
    ok: false,
    code: 'wait-before-retry',
  });
  now = new Date(now.getTime() + 61_000);
  expect((await ask('app.unlock', { passphrase: 'calm river blue lantern' })).ok).toBe(true);
  expect(((await ask('caseload.list', {})) as { ok: true; value: unknown[] }).value).toHaveLength(1);
});

test('locked means that every request of a client answers `locked` and no picture is read', async () => {
  await ask('app.lock', {});
  const random = seeded(3);
  for (const name of requestNames) {
    if (whileLocked.includes(name)) continue;
    let tried = 0;
    for (let n = 0; n < 400 && tried < 3; n++) {
      const input = wholeInput(name, random, [clientId, visitId]);
      if (!contract[name].input.safeParse(input).success) continue;
      tried++;
      expect(await ask(name, input), name).toEqual({ ok: false, code: 'locked' });
    }
    expect(tried, name).toBeGreaterThan(0);
  }
  expect(services.readBlob(clientId)).toBeNull();
  expect(() => services.stageBlob(new Uint8Array(3))).toThrow();
});

test('a clock that is set back neither lengthens the wait nor keeps an unattended caseload open', async () => {
  now = new Date(now.getTime() + 120_000);
  await ask('app.lock', {});
  for (let n = 0; n < 3; n++) await ask('app.unlock', { passphrase: 'not the passphrase' });
  now = new Date(now.getTime() - 365 * 86_400_000);
  const waiting = await ask('app.unlock', { passphrase: 'calm river blue lantern' });
  expect(waiting.ok ? 0 : Number(waiting.detail)).toBeLessThanOrEqual(60);
  now = new Date(now.getTime() + 61_000);
  expect((await ask('app.unlock', { passphrase: 'calm river blue lantern' })).ok).toBe(true);
  now = new Date(now.getTime() - 86_400_000);
  expect(services.idleMs).toBe(0);
  now = new Date(now.getTime() + 600_000);
  expect(services.idleMs).toBe(600_000);
});

test('the recovery key opens once: a new passphrase and a new sheet take the place of what was lost', async () => {
  const next = 'seven kettles under snow';
  await ask('app.lock', {});
  const typed = ` ${recoveryKey.toLowerCase().replaceAll('-', ' ')} `;
  expect(await ask('app.recover', { recoveryKey: typed, next: 'short' })).toMatchObject({
    code: 'passphrase-too-short',
  });
  expect(await ask('app.recover', { recoveryKey: 'AAAA-BBBB', next })).toMatchObject({ code: 'wrong-recovery-key' });
  const done = await ask('app.recover', { recoveryKey: typed, next });
  expect(done).toMatchObject({ ok: true, value: { status: { state: 'open' } } });
  const renewed = (done as { value: { recoveryKey: string } }).value.recoveryKey;
  expect(((await ask('caseload.list', {})) as { ok: true; value: unknown[] }).value).toHaveLength(1);
  await ask('app.lock', {});
  expect(await ask('app.recover', { recoveryKey, next })).toMatchObject({ code: 'wrong-recovery-key' });
  expect(await ask('app.unlock', { passphrase: 'calm river blue lantern' })).toMatchObject({
    code: 'wrong-passphrase',
  });
  now = new Date(now.getTime() + 61_000);
  expect((await ask('app.unlock', { passphrase: next })).ok).toBe(true);
  await ask('app.lock', {});
  // The new sheet is as good as the first was.
  expect((await ask('app.recover', { recoveryKey: renewed, next: 'calm river blue lantern' })).ok).toBe(true);
});

test('what is refused about a new file key leaves the caseload open', async () => {
  expect(await ask('app.rekey', { passphrase: 'not the passphrase', next: 'another long passphrase' })).toMatchObject({
    code: 'wrong-passphrase',
  });
  expect(await ask('app.rekey', { passphrase: 'calm river blue lantern', next: 'short' })).toMatchObject({
    code: 'passphrase-too-short',
  });
  expect((await ask('caseload.list', {})).ok).toBe(true);
});

test('a wrong passphrase at restoring or salvaging, and a name that is not set aside, leave the caseload open', async () => {
  now = new Date(now.getTime() + 120_000);
  const made = (await ask('backup.now', {})) as { ok: true; value: { name: string } };
  expect(await ask('backup.restore', { name: made.value.name, passphrase: 'not the passphrase' })).toMatchObject({
    code: 'wrong-passphrase',
  });
  expect((await ask('caseload.list', {})).ok).toBe(true);
  expect(await ask('records.salvage', { passphrase: 'not the passphrase' })).toMatchObject({
    code: 'wrong-passphrase',
  });
  expect((await ask('caseload.list', {})).ok).toBe(true);
  expect(await ask('backup.undoRestore', { keptAs: 'nothing' })).toMatchObject({ code: 'not-found' });
  expect((await ask('caseload.list', {})).ok).toBe(true);
  now = new Date(now.getTime() + 120_000);
});
