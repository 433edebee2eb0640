/** A caseload of its own for each test. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterEach } from 'vitest';
import { createCaseload, openCaseload, type Caseload, type Doing } from '../../db/index.ts';

export { answer, client, page, sample, visit } from './plain-facts.ts';

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
