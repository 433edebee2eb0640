/** Keeping, printing and saving a page ask red flags and cautions again, whatever the window shows. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { shippedRedFlags } from '../../db/rules/screen/items-schema.ts';
import { dispatch } from '../../electron/handlers/dispatch.ts';
import { Services } from '../../electron/handlers/services.ts';
import { newClient } from '../../renderer/logic/caseload/new-client.ts';
import { id, programLine } from '../logic/pages/record.ts';

const folder = mkdtempSync(path.join(tmpdir(), 'fairhand-issue-'));
const services = new Services({
  folder,
  port: {
    chooseOpen: async () => null,
    chooseSave: async () => ({ saved: false, name: null }),
    printPdf: async () => new TextEncoder().encode('%PDF-1.4'),
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
const ask = async (name: string, input: unknown) =>
  JSON.parse(await dispatch(services, JSON.stringify({ name, input }))) as {
    ok: boolean;
    code?: string;
    detail?: string;
  };
const clientId = id();
const visitId = id();
/** Steps as [title, line of the program]. */
const page = (steps: [title: string, lineId: string | undefined][]) => ({
  id: id(),
  clientId,
  visitId,
  kind: 'home-program',
  paper: 'A4',
  model: {
    sheets: [
      {
        type: 'doc',
        sections: [
          {
            key: 'do',
            title: '',
            blocks: [{ kind: 'steps', items: steps.map(([title, lineId]) => ({ title, lineId })) }],
          },
        ],
      },
    ],
  },
});

type Made = Pick<ReturnType<typeof page>, 'clientId' | 'visitId'> & { model: unknown };
const shown = ({ clientId: client, visitId: visit, model }: Made) => ({ clientId: client, visitId: visit, model });
const toPrint = (made: Made) => ask('pages.print', { page: shown(made) });
const toPdf = (made: Made) => ask('pages.savePdf', { name: 'page', paper: 'A4', page: shown(made) });

beforeAll(async () => {
  expect((await ask('app.create', { passphrase: 'calm river blue lantern', initials: 'QM', clinic: '' })).ok).toBe(
    true,
  );
  expect((await ask('client.save', newClient(clientId, 'Invented Person', 'T-1'))).ok).toBe(true);
  const words = { nextVisit: '', told: '', skilled: '', response: '', taughtBack: '', plan: '' };
  const visit = { id: visitId, clientId, date: '2026-05-04', kind: 'first', minutes: null, ...words };
  expect((await ask('visit.save', visit)).ok).toBe(true);
});
afterAll(() => {
  services.lock('asked');
  rmSync(folder, { recursive: true });
});

test('practice that was never tested for is not kept; what needs no test is', async () => {
  const lines = [
    programLine({ item: 'slow-opening', kind: 'warm-up', title: 'Open the hand slowly' }),
    programLine({ item: null, title: 'A list' }),
  ];
  const draft = { id: id(), clientId, visitId, status: 'draft', ruleVersion: '2026.1', tier: 2, lines, vetoed: [] };
  expect(await ask('program.save', { ...draft, note: '', approvedAt: null, approvedBy: null })).toMatchObject({
    ok: true,
  });
  expect(await ask('pages.issue', page([['Open the hand slowly', lines[0]!.id]]))).toEqual({
    ok: false,
    code: 'practice-not-safe',
    detail: 'Open the hand slowly',
  });
  expect(await ask('pages.issue', page([['Abrir la mano despacio', lines[0]!.id]]))).toMatchObject({
    code: 'practice-not-safe',
  });
  expect(await ask('pages.issue', page([['A list, reworded', lines[1]!.id]]))).toMatchObject({ ok: true });
  // A step that names no line of the program cannot be checked.
  expect(await ask('pages.issue', page([['A list', undefined]]))).toMatchObject({ code: 'practice-not-safe' });
  expect(await ask('pages.issue', page([['A list', id()]]))).toMatchObject({ code: 'practice-not-safe' });
  // Printing and saving ask the same gate.
  for (const send of [toPrint, toPdf]) {
    expect(await send(page([['Open the hand slowly', lines[0]!.id]]))).toMatchObject({ code: 'practice-not-safe' });
    expect(await send(page([['A list, reworded', lines[1]!.id]]))).toMatchObject({ ok: true });
  }
  const sheet = (lineIds: string[] | undefined) => ({
    ...page([]),
    model: { sheets: [{ type: 'practice', title: 'Practice page', lineIds }] },
  });
  for (const send of [toPrint, toPdf, (made: unknown) => ask('pages.issue', made)]) {
    expect(await send(sheet([lines[1]!.id]))).toMatchObject({ ok: true });
    expect(await send(sheet([lines[0]!.id]))).toMatchObject({ code: 'practice-not-safe', detail: 'Practice page' });
    expect(await send(sheet([]))).toMatchObject({ code: 'practice-not-safe' });
    expect(await send(sheet(undefined))).toMatchObject({ code: 'practice-not-safe' });
  }
});

test('with an open red flag no page with practice is kept, one without is', async () => {
  const flag = shippedRedFlags.flags[0]!.code;
  const answer = { id: id(), clientId, visitId, flag, present: true, review: null, note: '' };
  expect((await ask('intake.flag', answer)).ok).toBe(true);
  expect(await ask('pages.issue', page([['A list', undefined]]))).toMatchObject({
    ok: false,
    code: 'practice-not-safe',
  });
  for (const send of [toPrint, toPdf])
    expect(await send(page([['A list', undefined]]))).toMatchObject({ code: 'practice-not-safe' });
  expect(await ask('pages.issue', page([]))).toMatchObject({ ok: true });
  expect(await toPrint(page([]))).toMatchObject({ ok: true });
});
