/** Invented caseloads for the bench of the desk: many clients of whom nothing is known, or one with three years of visits. */
import { randomUUID } from 'node:crypto';
import { createCaseload } from '../../db/index.ts';
import { newClient } from '../../renderer/logic/caseload/new-client.ts';
import { noConditions } from '../../renderer/logic/sample/carried-conditions.ts';
import { sample, visit } from '../../tests/db/plain-facts.ts';

export const PASSPHRASE = 'a passphrase that protects nothing';
/** Code and name of the client whom the bench opens. */
export const ONE = { code: 'C-0001', name: 'Ines Invented' } as const;

const DAY_MS = 86_400_000;
const TEXT = 'Please call me back before half past eight\nThe plumber is coming at two on Thursday';
const conditions = {
  ...noConditions,
  hand: 'right',
  pen: 'gel pen',
  paper: 'ruled, 8 mm',
  time: '09:30',
  doseState: 'on',
  cue: 'none',
  minutesSinceDose: 60,
  surfaceAngleDeg: 0,
  instruction: 'usual',
} as const;

/**
 * Writes a caseload into an empty folder: so many clients, the first of them (`ONE`) with weekly visits, a sample and a
 * stranger's reading each.
 */
export async function writeCaseload(folder: string, clients: number, visits: number): Promise<void> {
  const now = new Date().toISOString();
  const made = await createCaseload({ folder, passphrase: PASSPHRASE, now, workFactor: 4 });
  if (!made.ok) throw new Error(made.code);
  const { caseload } = made;
  const by = { at: now, by: 'AB' };
  const one = randomUUID();
  for (let first = 0; first < clients; first += 500)
    caseload.together(by, (write) => {
      for (let n = first; n < Math.min(clients, first + 500); n += 1) {
        const code = `C-${String(n + 1).padStart(4, '0')}`;
        const name = n === 0 ? ONE.name : `Invented ${code}`;
        write.put('client', { ...newClient(n === 0 ? one : randomUUID(), name, code), birthYear: 1957 });
      }
    });
  caseload.together(by, (write) => {
    for (let week = visits; week >= 1; week -= 1) {
      const date = new Date(Date.now() - week * 7 * DAY_MS).toISOString().slice(0, 10);
      const kind = week === visits ? 'first' : 'treatment';
      const { id: visitId } = write.put('visit', visit(one, { date, kind, minutes: 45 }));
      const { id: sampleId } = write.put('sample', {
        ...sample(one, visitId),
        takenAt: `${date}T09:30:00.000Z`,
        task: { kind: 'sentences', textCodes: ['F1', 'F4'], text: TEXT, spellingNoted: false },
        conditions,
        fatigueBefore: 2,
        fatigueAfter: 4,
        painBefore: 0,
        painAfter: 1,
        seconds: 120,
        baseline: visits - week < 3,
      });
      write.put('reading', {
        id: randomUUID(),
        clientId: one,
        visitId,
        sampleId,
        readAt: `${date}T15:00:00.000Z`,
        reader: 'unfamiliar',
        readerInitials: ['QR', 'ST', 'UV', 'WX', 'YZ'][week % 5]!,
        blind: true,
        lines: [],
        counted: { right: 9 + ((7 * week) % 11), of: 24 },
      });
    }
  });
  caseload.close();
}
