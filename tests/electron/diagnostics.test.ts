/** The text for whoever helps: made of a full caseload, it holds nothing of it; where one was, nothing of a client either. */
import { readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { afterEach, expect, test } from 'vitest';
import type { LastPlace } from '../../electron/contract/about.ts';
import { diagnosticText, withoutHome } from '../../electron/files/diagnostics.ts';
import { dispatch } from '../../electron/handlers/dispatch.ts';
import { Services } from '../../electron/handlers/services.ts';
import { client, doing, newCaseload, NOW, visit } from '../db/support.ts';

const running: Services[] = [];
afterEach(() => {
  for (const services of running.splice(0)) services.lock('asked');
});

test('no name, code, note, initials, clinic, folder of the account or error text is in it; counts and versions are', async () => {
  const caseload = await newCaseload();
  const words = ['Zebedee', 'ZX-99', 'slipped on the stairs', 'QQZ', 'Clinic of Nowhere', 'secret-name.pdf'];
  const { id } = caseload.put('client', client({ name: words[0]!, code: words[1]!, note: words[2]! }), doing);
  caseload.put('visit', visit(id, { told: words[2]! }), doing);
  caseload.putSetting('therapist', { initials: words[3], clinic: words[4], credentials: '' }, doing);
  writeFileSync(path.join(caseload.folder, words[5]!), 'x');
  const services = new Services({
    folder: caseload.folder,
    port: { keyStore: null } as never,
    shell: 'browser',
    version: '1.2.3',
    now: () => new Date(NOW),
    emit: () => undefined,
    demoSource: null,
  });
  running.push(services);
  services.caseload = caseload;
  const ask = async (name: string, input: unknown = {}) =>
    JSON.parse(await dispatch(services, JSON.stringify({ name, input }))) as { ok: boolean; value: { text: string } };
  await ask('client.open', { clientId: '00000000-0000-4000-8000-000000000000' });
  const { text } = (await ask('about.diagnostics')).value;
  for (const word of [...words, id]) expect(text).not.toContain(word);
  for (const part of ['Fairhand: 1.2.3', 'client: 1', 'visit: 1', 'client.open: not-found', 'something else (.pdf)']) {
    expect(text).toContain(part);
  }
  services.lock('asked');
  expect((await ask('about.diagnostics')).value.text).toContain('state: locked');
  expect((await ask('about.facts')).ok).toBe(true);
  expect((await ask('about.licences')).value.text).toContain('zod');
});

test('the account’s own folder is cut off; another folder is not told at all', () => {
  expect(withoutHome('/home/ada/fairhand', '/home/ada')).toBe('~/fairhand');
  expect(withoutHome('/srv/Ada Invented', '/home/ada')).not.toContain('Ada');
  const text = diagnosticText({
    version: '1',
    shell: 'electron',
    now: NOW,
    folder: '/nowhere/Ada',
    state: 'locked',
    demo: false,
    damageFound: true,
    missing: 'log',
    schema: null,
    counts: null,
    backups: 0,
    lastBackupAt: null,
    secondPlace: false,
  });
  expect(text).not.toContain('Ada');
  expect(text).toContain('damage found: yes');
});

test('the place of the therapist is kept as ids and numbers; a spoiled file is no place', async () => {
  const caseload = await newCaseload();
  const services = { folder: caseload.folder, signedIn: { id: null } } as Services;
  const { aboutHandlers } = await import('../../electron/handlers/about.ts');
  const at: LastPlace = {
    place: 'client',
    clientId: null,
    visitId: '',
    tab: 'goals',
    part: 'visit',
    scroll: [0, 40],
    field: 2,
    caret: null,
  };
  expect(aboutHandlers['about.lastPlace'](services, {})).toEqual({ at: null });
  aboutHandlers['about.keepPlace'](services, { at });
  expect(aboutHandlers['about.lastPlace'](services, {})).toEqual({ at });
  expect(Object.keys(JSON.parse(readFileSync(path.join(caseload.folder, 'caseload.place'), 'utf8')) as object)).toEqual(
    [...Object.keys(at), 'person'],
  );
  writeFileSync(path.join(caseload.folder, 'caseload.place'), '{"place":');
  expect(aboutHandlers['about.lastPlace'](services, {})).toEqual({ at: null });
});
