/** A caseload of its own for each test, and the smallest whole facts. */
import { randomUUID } from 'node:crypto';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterEach } from 'vitest';
import { createCaseload, openCaseload, type Caseload, type Doing, type Unstamped } from '../../db/index.ts';

export const PASSPHRASE = 'oak kettle seven lanterns';
export const NOW = '2026-03-04T09:12:00.000Z';
export const doing: Doing = { at: NOW, by: 'MK' };
/** 2^4 instead of 2^18: the tests' passphrase protects nothing. */
export const QUICK = 4;

const opened: Caseload[] = [];
const folders: string[] = [];

afterEach(() => {
  for (const caseload of opened.splice(0)) caseload.close();
  for (const folder of folders.splice(0)) rmSync(folder, { recursive: true, force: true });
});

export function newFolder(): string {
  const folder = mkdtempSync(path.join(tmpdir(), 'fairhand-test-'));
  folders.push(folder);
  return folder;
}

export async function newCaseload(folder = newFolder()): Promise<Caseload> {
  const created = await createCaseload({ folder, passphrase: PASSPHRASE, now: NOW, workFactor: QUICK });
  if (!created.ok) throw new Error(created.code);
  opened.push(created.caseload);
  return created.caseload;
}

export async function reopen(folder: string): Promise<Caseload> {
  const result = await openCaseload({ folder, passphrase: PASSPHRASE, now: NOW });
  if (!result.ok) throw new Error(result.code);
  opened.push(result.caseload);
  return result.caseload;
}

export function client(more: Partial<Unstamped<'client'>> = {}): Unstamped<'client'> {
  return {
    id: randomUUID(),
    code: `C${randomUUID().slice(0, 6)}`,
    name: 'Test Person',
    birthYear: 1955,
    handBefore: 'right',
    handNow: 'right',
    diagnoses: [],
    precautions: [],
    medicines: [],
    referrer: '',
    readers: '',
    wants: '',
    interests: '',
    callName: '',
    callNumber: '',
    language: 'en',
    largePrint: '14',
    familyConsent: false,
    familyConsentOn: null,
    note: '',
    archivedOn: null,
    ...more,
  };
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
    conditions: {
      hand: 'right',
      pen: '',
      paper: '',
      time: null,
      doseState: null,
      cue: null,
      minutesSinceDose: null,
      surfaceAngleDeg: null,
      seatMm: null,
      tableMm: null,
      armSupport: '',
      grip: '',
      glasses: null,
      instruction: null,
      style: null,
    },
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
  };
}
