/** The smallest whole facts; usable outside the test runner too. */
import { randomUUID } from 'node:crypto';
import type { Unstamped } from '../../db/index.ts';
import { nothingWritten } from '../../renderer/logic/record/nothing-written.ts';
import { noConditions } from '../../renderer/logic/sample/carried-conditions.ts';
import { newClient } from '../../renderer/logic/caseload/new-client.ts';

const NOW = '2026-03-04T09:12:00.000Z';

export function client(more: Partial<Unstamped<'client'>> = {}): Unstamped<'client'> {
  const id = randomUUID();
  const empty = newClient(id, 'Test Person', `C${id.slice(0, 6)}`);
  return { ...empty, birthYear: 1955, handBefore: 'right', handNow: 'right', ...more };
}

export function visit(clientId: string, more: Partial<Unstamped<'visit'>> = {}): Unstamped<'visit'> {
  return {
    id: randomUUID(),
    clientId,
    date: '2026-03-04',
    kind: 'first',
    minutes: null,
    nextVisit: '',
    told: '',
    skilled: '',
    response: '',
    taughtBack: '',
    plan: '',
    ...more,
  };
}

export function answer(
  clientId: string,
  visitId: string,
  more: Partial<Unstamped<'intakeAnswer'>> = {},
): Unstamped<'intakeAnswer'> {
  return {
    id: randomUUID(),
    clientId,
    visitId,
    item: 'grasp',
    side: 'right',
    state: 'graded',
    grade: 2,
    reason: '',
    detail: null,
    before: null,
    after: null,
    note: '',
    ...more,
  };
}

export function sample(clientId: string, visitId: string): Unstamped<'sample'> {
  return {
    id: randomUUID(),
    clientId,
    visitId,
    takenAt: NOW,
    task: { kind: 'sentences', textCodes: [], text: 'Milk and bread', spellingNoted: false },
    conditions: { ...noConditions, hand: 'right' },
    fatigueBefore: null,
    fatigueAfter: null,
    painBefore: null,
    painAfter: null,
    seconds: null,
    baseline: true,
    typed: {},
    note: '',
  };
}

export function page(
  owner: { clientId: string; visitId: string; sampleId: string },
  blob: { id: string; sha256: string; bytes: number },
): Unstamped<'samplePage'> {
  return {
    id: randomUUID(),
    ...owner,
    order: 0,
    blob: blob.id,
    view: blob.id,
    pdfPage: 1,
    sha256: blob.sha256,
    mime: 'image/png',
    bytes: blob.bytes,
    widthPx: 100,
    heightPx: 100,
    scale: null,
    fileDpi: null,
    quarterTurns: 0,
  };
}

/** A bout with a pen that is being written: no blob yet. */
export function inkRecording(
  clientId: string,
  visitId: string,
  sampleId: string,
  more: Partial<Unstamped<'inkRecording'>> = {},
): Unstamped<'inkRecording'> {
  return {
    ...nothingWritten(),
    id: randomUUID(),
    clientId,
    visitId,
    sampleId,
    order: 0,
    task: 'writing',
    hand: 'right',
    mime: 'application/x-pen-samples',
    startedAt: NOW,
    pointerType: 'pen',
    surface: 'screen',
    device: 'Test pen',
    screen: { width: 1366, height: 768, devicePixelRatio: 1 },
    scale: { pxPerMmX: 5, pxPerMmY: 5, source: 'card', at: NOW },
    ...more,
  };
}
