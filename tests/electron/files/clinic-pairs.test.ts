/**
 * The clinic's repeat pairs speak everywhere alike: the window's verdict, the red flag, the proposal, the files for
 * other systems and the `change` command say the same of one client, asked through the contract of a real caseload.
 * Chances and spreads of both clients, with and without the others' pairs: worked by the prototype of the model.
 */
import type { Bundle, Observation } from 'fhir/r4';
import { createHash } from 'node:crypto';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { Readable, Writable } from 'node:stream';
import { afterAll, beforeAll, expect, test, vi } from 'vitest';
import type { ClientRecord } from '../../../db/types/record.ts';
import type { RulesInUse } from '../../../db/types/rules-in-use.ts';
import { changeCommand } from '../../../electron/commands/change.ts';
import { dispatch } from '../../../electron/handlers/dispatch.ts';
import { Services } from '../../../electron/handlers/services.ts';
import type { SaveOptions } from '../../../electron/shell-port.ts';
import type { ChangeVerdict } from '../../../renderer/change/index.ts';
import { newClient } from '../../../renderer/logic/caseload/new-client.ts';
import { flagsOf } from '../../../renderer/logic/program/facts/from-record.ts';
import { stepSignsOf } from '../../../renderer/logic/program/ladder/sessions.ts';
import { changeOf, changeSamples } from '../../../renderer/logic/record/change-samples.ts';
import { occasionsOf } from '../../../renderer/logic/record/occasions.ts';
import { limitsOf } from '../../../renderer/logic/rules/limits.ts';

const folder = mkdtempSync(path.join(tmpdir(), 'fairhand-pairs-'));
const saved: SaveOptions[] = [];
const services = new Services({
  folder,
  port: {
    chooseOpen: async () => null,
    chooseSave: async (options) => {
      saved.push(options);
      return { saved: true, name: null };
    },
    printPdf: async () => new Uint8Array(),
    printPaper: async () => {},
    allowCameraOnce: async () => {},
    keyStore: null,
    close: () => {},
  },
  shell: 'browser',
  version: '0',
  now: () => new Date('2026-05-04T10:00:00Z'),
  emit: () => {},
  demoSource: null,
});

async function ask<T>(name: string, input: unknown = {}): Promise<T> {
  const answer = JSON.parse(await dispatch(services, JSON.stringify({ name, input }))) as { ok: boolean; value: T };
  expect(answer, name).toMatchObject({ ok: true });
  return answer.value;
}

/** The same name gives the same id. */
function idOf(name: string): string {
  const hex = createHash('sha256').update(name).digest('hex');
  return `${hex.slice(0, 8)}-${hex.slice(8, 12)}-4${hex.slice(13, 16)}-8${hex.slice(17, 20)}-${hex.slice(20, 32)}`;
}

const conditions = {
  hand: 'right',
  pen: '',
  paper: '',
  time: '09:30',
  doseState: 'on',
  cue: 'none',
  minutesSinceDose: 60,
  surfaceAngleDeg: 0,
  seatMm: null,
  tableMm: null,
  armSupport: '',
  grip: '',
  glasses: null,
  instruction: 'usual',
  style: null,
};

const WORDS = 60;

/** A client with one sample a week, so many of 60 words read by the same stranger; the first ones are baseline. */
async function client(name: string, rights: readonly number[], baselines: number): Promise<string> {
  const clientId = idOf(name);
  await ask('client.save', newClient(clientId, `${name} Invented`, name));
  for (const [i, right] of rights.entries()) {
    const date = new Date(Date.UTC(2026, 0, 5 + 7 * i)).toISOString().slice(0, 10);
    const visitId = idOf(`${name} visit ${i}`);
    const own = { minutes: 45, nextVisit: '', told: '', skilled: '', response: '', taughtBack: '', plan: '' };
    await ask('visit.save', { id: visitId, clientId, date, kind: i === 0 ? 'first' : 'treatment', ...own });
    const sampleId = idOf(`${name} sample ${i}`);
    await ask('sample.save', {
      id: sampleId,
      clientId,
      visitId,
      takenAt: `${date}T09:30:00.000Z`,
      task: { kind: 'sentences', textCodes: ['F1'], text: 'The plumber is coming at two', spellingNoted: false },
      conditions,
      fatigueBefore: null,
      fatigueAfter: null,
      painBefore: null,
      painAfter: null,
      seconds: 120,
      baseline: i < baselines,
      typed: {},
      note: '',
    });
    await ask('reading.save', {
      id: idOf(`${name} reading ${i}`),
      clientId,
      visitId,
      sampleId,
      readAt: `${date}T15:00:00.000Z`,
      reader: 'unfamiliar',
      readerInitials: 'QR',
      blind: true,
      lines: [],
      counted: { right, of: WORDS },
    });
  }
  return clientId;
}

/** What the command answers to the same samples and pairs. */
async function byCommand(record: ClientRecord, pairs: RulesInUse['repeatPairs']): Promise<ChangeVerdict> {
  const question = {
    samples: changeSamples(occasionsOf(record), record.inkRecordings),
    pairs: pairs!.map(({ task, kind, first, second }) => ({
      task,
      kind,
      first: [first.right, first.words],
      second: [second.right, second.words],
    })),
  };
  let said = '';
  const output = new Writable({ write: (chunk, _encoding, done) => ((said += String(chunk)), done()) });
  await changeCommand([], { input: Readable.from([`${JSON.stringify(question)}\n`]), output });
  return JSON.parse(said) as ChangeVerdict;
}

let gained: string;
let lost: string;
beforeAll(async () => {
  await ask('app.create', { passphrase: 'calm river blue lantern', initials: 'QM', clinic: '' });
  gained = await client('gained', [32, 31, 45, 46], 2);
  lost = await client('lost', [42, 44, 43, 31, 30, 29], 3);
});
afterAll(() => {
  services.lock('asked');
  rmSync(folder, { recursive: true, force: true });
});

/** The verdict on one client from every side; `rules` are what the window has once the shell has answered. */
async function everywhere(clientId: string) {
  const record = await ask<ClientRecord>('client.open', { clientId });
  const { rules: table } = await ask<{ rules: RulesInUse }>('rules.current');
  const { pairs } = await ask<{ pairs: RulesInUse['repeatPairs'] }>('progress.repeatPairs');
  const rules: RulesInUse = { ...table, repeatPairs: pairs };
  const limits = limitsOf(rules);

  const bundleOptions = { withName: false, withPersonalText: false, withDocuments: false, withScans: false };
  await ask('exchange.bundle', { clientId, ...bundleOptions });
  const bundle = JSON.parse(new TextDecoder().decode(saved.at(-1)!.bytes)) as Bundle<Observation>;
  await ask('exchange.csv', { clientId });
  const csv = new TextDecoder().decode(saved.at(-1)!.bytes);
  const work = await ask<{ flagsOpen: number }[]>('caseload.work', { clientIds: [clientId] });

  return {
    pairs: pairs!.length,
    window: changeOf(record, limits).answer,
    command: await byCommand(record, pairs),
    fhir: bundle
      .entry!.map(({ resource }) => resource!)
      .filter(({ resourceType, code }) => resourceType === 'Observation' && code.coding?.[0]?.code === 'change'),
    csv: csv.split('\r\n').filter((row) => row.includes(',change,')),
    flags: flagsOf(record, rules).open.map(({ code }) => code),
    flagsInList: work[0]!.flagsOpen,
    signs: stepSignsOf(record, limits),
  };
}

test('own pairs alone: cannot tell, in the window, the files, the proposal and by command', async () => {
  const { window, command, fhir, csv, signs, pairs, flags } = await everywhere(gained);
  // Of each of the two clients one pair.
  expect(pairs).toBe(2);
  expect(window).toMatchObject({ verdict: 'cannot-tell', loss: null });
  expect(window.chances!.up).toBeCloseTo(0.9795, 3);
  expect(window.visitSd).toBeCloseTo(0.367, 2);
  expect(command).toMatchObject({ verdict: 'cannot-tell', better: window.better });
  expect(JSON.stringify(fhir)).toContain('Cannot tell yet');
  expect(csv.join()).toContain('Cannot tell yet');
  expect(signs.better).toBe(window.better);
  expect(flags).toEqual([]);
  const less = await everywhere(lost);
  expect(less.window).toMatchObject({ verdict: 'cannot-tell', loss: 'ask-repeat' });
  expect(less.window.chances!.up).toBeCloseTo(0.0089, 3);
  expect(less.command.loss).toBe('ask-repeat');
  expect([less.flags, less.flagsInList]).toEqual([[], 0]);
});

test('with steady pairs of other clients the same numbers say more, everywhere at once', async () => {
  for (let i = 0; i < 30; i++) await client(`steady ${i}`, [36 + (i % 9), 36 + (i % 9)], 2);

  const up = await everywhere(gained);
  expect(up.pairs).toBe(32);
  expect(up.window.verdict).toBe('up');
  expect(up.window.chances!.up).toBeCloseTo(0.997, 3);
  expect(up.window.visitSd).toBeCloseTo(0.213, 2);
  expect(up.command.verdict).toBe('up');
  expect(up.command.probability).toBeCloseTo(up.window.probability!, 3);
  expect(up.command.visitSd).toBeCloseTo(up.window.visitSd!, 3);
  expect(up.fhir).toHaveLength(1);
  expect(up.fhir[0]!.valueQuantity!.value).toBeCloseTo(up.window.change!.mid, 0);
  expect(up.csv).toHaveLength(1);
  expect(up.csv[0]).toContain(`chance ${up.window.probability!.toFixed(3)}`);
  expect(JSON.stringify(up.fhir)).toContain(`chance ${up.window.probability!.toFixed(3)}`);
  expect(up.signs.better).toBe(true);

  const down = await everywhere(lost);
  expect(down.window).toMatchObject({ verdict: 'down', loss: 'flag' });
  expect(down.window.chances!.up).toBeCloseTo(0.0011, 3);
  expect(down.command.loss).toBe('flag');
  expect(down.flags).toEqual(['steady-loss']);
  expect(down.flagsInList).toBe(1);
});

test('asked for soon, the list reads its own clients alone; the settled one has the flag that rests on pairs', async () => {
  services.lock('asked');
  await ask('app.unlock', { passphrase: 'calm river blue lantern' });
  const read = vi.spyOn(services.need(), 'record');
  const flagsOpen = async (more = {}) =>
    (await ask<{ flagsOpen: number }[]>('caseload.work', { clientIds: [lost], ...more }))[0]!.flagsOpen;
  expect(await flagsOpen({ soon: true })).toBe(0);
  expect(read).toHaveBeenCalledTimes(1);
  expect(await flagsOpen()).toBe(1);
  // The 31 others once for their pairs, this one again with all pairs.
  expect(read).toHaveBeenCalledTimes(33);
  expect(await flagsOpen({ soon: true })).toBe(1);
  expect(read).toHaveBeenCalledTimes(33);
});

test('an explanation noted holds back the flag alone, until the next sample', async () => {
  const visitId = idOf('lost visit 5');
  const answer = { flag: 'steady-loss', present: false, review: null, note: 'Medicine came two hours late.' };
  await ask('intake.flag', { id: idOf('explained'), clientId: lost, visitId, ...answer });
  const { window, flags, flagsInList } = await everywhere(lost);
  expect(window).toMatchObject({ verdict: 'down', loss: 'ask-repeat' });
  expect([flags, flagsInList]).toEqual([[], 0]);
});
