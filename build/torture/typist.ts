/**
 * A therapist who never stops typing: opens a caseload and saves one entry after the other until it is killed.
 * After each save it tells the number of the last trail entry on standard output.
 * Arguments: folder, seed. The passphrase comes from the environment.
 */
import { randomUUID } from 'node:crypto';
import { writeSync } from 'node:fs';
import { openCaseload, type Caseload, type Doing } from '../../db/index.ts';
import { pick, seeded } from './random.ts';
import { newClient as emptyClient } from '../../renderer/logic/caseload/new-client.ts';

const [folder = '', seed = '1'] = process.argv.slice(2);
const random = seeded(Number(seed));
const now = (): string => new Date().toISOString();
const doing = (): Doing => ({ at: now(), by: 'TY' });

const opened = await openCaseload({ folder, passphrase: process.env['FAIRHAND_PASSPHRASE'] ?? '', now: now() });
if (!opened.ok) {
  writeSync(2, `${opened.code}\n`);
  process.exit(3);
}
const caseload = opened.caseload;

function newClient(): string {
  const id = randomUUID();
  caseload.put(
    'client',
    { ...emptyClient(id, `Client ${id.slice(0, 4)}`, id.slice(0, 13)), birthYear: 1950, handBefore: 'right' },
    doing(),
  );
  return id;
}

function newVisit(clientId: string): string {
  const id = randomUUID();
  const words = { nextVisit: '', told: '', skilled: '', response: '', taughtBack: '', plan: '' };
  const date = `2026-0${1 + Math.floor(random() * 9)}-1${Math.floor(random() * 10)}`;
  caseload.put('visit', { id, clientId, date, kind: 'treatment', minutes: 45, ...words }, doing());
  return id;
}

function answer(clientId: string, visitId: string): void {
  const item = `item-${Math.floor(random() * 12)}`;
  const grade = pick(random, [0, 1, 2, 3] as const);
  const empty = { reason: '', detail: null, before: null, after: null, note: 'n'.repeat(random() * 2000) };
  const fact = { id: randomUUID(), clientId, visitId, item, side: 'right', state: 'graded', grade, ...empty } as const;
  caseload.put('intakeAnswer', fact, doing());
}

/** One thing a therapist does; chosen by chance. */
function act(open: Caseload, clientId: string, visitId: string): void {
  const chance = random();
  if (chance < 0.6) answer(clientId, visitId);
  else if (chance < 0.7)
    open.putBlob(clientId, 'image/png', Buffer.alloc(1 + random() * 400_000, random() * 256), doing());
  else if (chance < 0.8 && open.canUndo(clientId).undo) open.undo(clientId, doing());
  else if (chance < 0.85 && open.canUndo(clientId).redo) open.redo(clientId, doing());
  else if (chance < 0.95) newVisit(clientId);
  else {
    const extra = newVisit(clientId);
    answer(clientId, extra);
    open.remove('visit', extra, doing());
  }
}

for (;;) {
  const clientId = newClient();
  for (let visits = 0; visits < 5; visits++) {
    const visitId = newVisit(clientId);
    for (let acts = 0; acts < 20; acts++) {
      // An undo may have taken the visit away: then another is begun.
      if (caseload.get('client', clientId) === null || caseload.get('visit', visitId) === null) break;
      act(caseload, clientId, visitId);
      writeSync(1, `${caseload.lastSeq()}\n`);
    }
    if (caseload.get('client', clientId) === null) break;
  }
}
