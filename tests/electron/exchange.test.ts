/** Files for another record system, through the contract to a real caseload and the shell's save. */
import type { Bundle } from 'fhir/r4';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { dispatch } from '../../electron/handlers/dispatch.ts';
import { Services } from '../../electron/handlers/services.ts';
import type { SaveOptions } from '../../electron/shell-port.ts';
import { newClient } from '../../renderer/logic/caseload/new-client.ts';

const folder = mkdtempSync(path.join(tmpdir(), 'fairhand-exchange-'));
const saved: SaveOptions[] = [];
let answer: 'saves' | 'cancels' | 'fails' = 'saves';
const services = new Services({
  folder,
  port: {
    chooseOpen: async () => null,
    chooseSave: async (options) => {
      if (answer === 'fails') throw new Error('/no/such/place');
      if (answer === 'saves') saved.push(options);
      return { saved: answer === 'saves', name: null };
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
const ask = async (name: string, input: unknown = {}) =>
  JSON.parse(await dispatch(services, JSON.stringify({ name, input }))) as { ok: boolean; value: never; code?: string };
const one = '018f7c1e-0000-4000-8000-000000000001';
const two = '018f7c1e-0000-4000-8000-000000000002';
const nothing = { withName: false, withPersonalText: false, withDocuments: false, withScans: false };
const trail = async (clientId: string) =>
  ((await ask('trail.list', { clientId })).value as { summary: string }[]).map((entry) => entry.summary);

beforeAll(async () => {
  await ask('app.create', { passphrase: 'calm river blue lantern', initials: 'QM', clinic: '' });
  await ask('client.save', newClient(one, 'Invented Person', 'T/1 ..'));
  await ask('client.save', newClient(two, 'Another Person', 'T-2'));
});
afterAll(() => {
  services.lock('asked');
  rmSync(folder, { recursive: true, force: true });
});

test('the record file is saved under the code, without the name, and noted in the trail', async () => {
  expect(await ask('exchange.bundle', { clientId: one, ...nothing })).toMatchObject({
    ok: true,
    value: { saved: true },
  });
  const { suggestedName, bytes, mime } = saved.at(-1)!;
  expect(suggestedName).toBe('T-1--2026-05-04.fhir.json');
  expect(mime).toBe('application/fhir+json');
  const text = new TextDecoder().decode(bytes);
  expect(text).not.toContain('Invented Person');
  const bundle = JSON.parse(text) as Bundle;
  expect(bundle).toMatchObject({ resourceType: 'Bundle', type: 'collection', timestamp: '2026-05-04T10:00:00.000Z' });
  expect(bundle.entry![0]!.resource).toMatchObject({ resourceType: 'Patient', identifier: [{ value: 'T/1 ..' }] });
  expect((await trail(one))[0]).toBe('exported: FHIR file for another record system');
});

test('measures of all clients are one file, noted in the trail of each; the dictionary holds nobody', async () => {
  expect(await ask('exchange.csv', { clientId: null })).toMatchObject({ ok: true, value: { saved: true } });
  expect(saved.at(-1)!.suggestedName).toBe('measures-all-clients-2026-05-04.csv');
  expect((await trail(one))[0]).toBe('exported: measures as CSV');
  expect((await trail(two))[0]).toBe('exported: measures as CSV');
  const entries = services.need().lastSeq();
  expect(await ask('exchange.dictionary')).toMatchObject({ ok: true, value: { saved: true } });
  expect(services.need().lastSeq()).toBe(entries);
});

test('what was not saved is not noted: cancelled, no place, no such client', async () => {
  const entries = services.need().lastSeq();
  answer = 'cancels';
  expect(await ask('exchange.csv', { clientId: one })).toMatchObject({ ok: true, value: { saved: false } });
  answer = 'fails';
  expect(await ask('exchange.bundle', { clientId: one, ...nothing })).toEqual({ ok: false, code: 'save-failed' });
  expect(await ask('exchange.csv', { clientId: '018f7c1e-0000-4000-8000-0000000000ff' })).toMatchObject({
    ok: false,
    code: 'not-found',
  });
  expect(services.need().lastSeq()).toBe(entries);
});
