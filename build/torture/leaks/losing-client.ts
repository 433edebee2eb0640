/** A client whose words were read worse and worse: the one whose red flag may be explained. */
import { randomUUID } from 'node:crypto';
import { newClient } from '../../../renderer/logic/caseload/new-client.ts';

/** Asks the caseload as the window does; answers the value. Rejects with the code of a refusal. */
export type Ask = (name: string, input: unknown) => Promise<unknown>;

/** Words read at each visit, of 60: three baselines, then far fewer. */
const READ = [54, 55, 54, 53, 54, 18, 15];
const OF = 60;
const CODE = 'L-001';

/** Of a visit, unwritten. */
export const words = { nextVisit: '', told: '', skilled: '', response: '', taughtBack: '', plan: '' };

/** Adds the client with a visit a week, the last one a week ago. Answers the code. */
export async function addLosingClient(ask: Ask): Promise<string> {
  const clientId = randomUUID();
  await ask('client.save', { ...newClient(clientId, 'Lorcan Less (invented)', CODE), handNow: 'right' });
  for (const [n, right] of READ.entries()) {
    const date = new Date(Date.now() - (READ.length - n) * 7 * 86_400_000).toISOString().slice(0, 10);
    const [visitId, sampleId] = [randomUUID(), randomUUID()];
    const kind = n === 0 ? 'first' : 'treatment';
    await ask('visit.save', { id: visitId, clientId, date, kind, minutes: 45, ...words });
    await ask('sample.save', {
      ...{ id: sampleId, clientId, visitId, takenAt: `${date}T09:30:00.000Z`, baseline: n < 3, typed: {}, note: '' },
      task: { kind: 'sentences', textCodes: ['F1', 'F4'], text: 'Please call me back', spellingNoted: false },
      conditions: {
        ...{ hand: 'right', pen: 'gel pen', paper: 'ruled, 8 mm', time: '09:30', doseState: 'on', cue: 'none' },
        ...{ minutesSinceDose: null, surfaceAngleDeg: 0, seatMm: null, tableMm: null, armSupport: '', grip: '' },
        ...{ glasses: null, instruction: 'usual', style: null },
      },
      ...{ fatigueBefore: 2, fatigueAfter: 3, painBefore: 0, painAfter: 0, seconds: 120 },
    });
    await ask('reading.save', {
      ...{ id: randomUUID(), clientId, visitId, sampleId, readAt: `${date}T15:00:00.000Z` },
      ...{ reader: 'unfamiliar', readerInitials: 'QR', blind: true, lines: [], counted: { right, of: OF } },
    });
  }
  return CODE;
}
