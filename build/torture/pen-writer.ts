/**
 * A pen that writes until it is killed: keeps a piece of its samples every half second, as the window does. After each
 * it tells on standard output how many samples the pen has sent in all; those of the piece to come are told too.
 * Arguments: folder. The passphrase comes from the environment.
 */
import { randomUUID } from 'node:crypto';
import { writeSync } from 'node:fs';
import { setTimeout as wait } from 'node:timers/promises';
import { openCaseload, type Doing } from '../../db/index.ts';
import { packSamples } from '../../renderer/ink/index.ts';
import { client, inkRecording, sample, visit } from '../../tests/db/plain-facts.ts';
import { penEvents } from '../demo/ink/pen-events.ts';
import { inkOf, strokesUpAndDown } from '../demo/ink/pen-model.ts';

const [folder = ''] = process.argv.slice(2);
const now = new Date().toISOString();
const doing: Doing = { at: now, by: 'TY' };
const opened = await openCaseload({ folder, passphrase: process.env['FAIRHAND_PASSPHRASE'] ?? '', now });
if (!opened.ok) {
  writeSync(2, `${opened.code}\n`);
  process.exit(3);
}
const { caseload } = opened;
const { id: clientId } = caseload.put('client', client(), doing);
const { id: visitId } = caseload.put('visit', visit(clientId), doing);
const { id: sampleId } = caseload.put('sample', sample(clientId, visitId), doing);
const recordingId = randomUUID();
caseload.put('inkRecording', inkRecording(clientId, visitId, sampleId, { id: recordingId }), doing);

const PIECE_MS = 500;
const steps = strokesUpAndDown(400, () => 5, 0.25);
const ink = inkOf({ task: 'writing', from: { x: 20, y: 40 }, steps }, { rateHz: 240, noiseMm: 0.01, seed: 3 });
const events = penEvents(ink, 5);
const zero = events[0]!.timeStamp;
const began = performance.now();
/** Samples that the pen has sent by now. */
const sent = (): number => {
  const until = zero + performance.now() - began;
  const at = events.findIndex(({ timeStamp }) => timeStamp > until);
  return at < 0 ? events.length : at;
};
let kept = 0;
for (let seq = 0; kept < events.length; seq += 1) {
  for (let tick = 0; tick < PIECE_MS / 20; tick += 1) {
    await wait(20);
    writeSync(1, `${recordingId} ${sent()}\n`);
  }
  const until = sent();
  caseload.keepInkPiece(recordingId, seq, packSamples(events.slice(kept, until)));
  kept = until;
}
