/** Pen events as a browser that was kept waiting tells them: moves of the next touch before the lift of this one. */
import { expect, it } from 'vitest';
import { documentOfRaw, packSamples, unpackSamples } from '../../renderer/ink/index.ts';
import type { RawPhase, RawSample } from '../../renderer/ink/index.ts';

const at = (timeStamp: number, phase: RawPhase): RawSample => ({
  timeStamp,
  clientX: timeStamp,
  clientY: 0,
  pressure: phase === 'up' || phase === 'hover' ? 0 : 0.5,
  tiltX: 0,
  tiltY: 0,
  twist: 0,
  altitudeAngle: 0,
  azimuthAngle: 0,
  buttons: phase === 'up' || phase === 'hover' ? 0 : 1,
  phase,
  pointer: 'pen',
});
const about = { scale: null, task: 'writing', text: null, startedAtMs: null };
const contacts = (samples: readonly RawSample[]): number[][] =>
  documentOfRaw(samples, about)
    .traces.filter(({ kind }) => kind === 'down')
    .map(({ t }) => Array.from(t!));
const written = [at(0, 'down'), at(8, 'contact'), at(16, 'contact'), at(24, 'up'), at(60, 'hover')];
const next = [at(100, 'down'), at(108, 'contact'), at(116, 'contact'), at(124, 'up')];

/** Seen in Chromium under load: moves at 108 and 116 heard while the first touch seemed to go on. */
it('gives moves to the touch in whose time they lie, and keeps the recording as it was heard', () => {
  const inTime = [...written, ...next];
  const heard = [...written.slice(0, 3), at(108, 'contact'), ...written.slice(3), next[0]!, ...next.slice(2)];
  expect(contacts(heard)).toEqual([
    [0, 8, 16],
    [100, 108, 116],
  ]);
  expect(contacts(heard)).toEqual(contacts(inTime));
  expect(unpackSamples(packSamples(heard)).map(({ timeStamp }) => timeStamp)).toEqual(
    heard.map(({ timeStamp }) => timeStamp),
  );
  const inAir = [...written.slice(0, 3), at(60, 'contact'), written[3]!, ...next];
  expect(contacts(inAir)).toEqual(contacts(inTime));
});

it('finds moves that were told before their first touch', () => {
  const [down, ...moves] = written;
  expect(contacts([{ ...moves[0]!, phase: 'hover' }, down!, ...moves.slice(1)])).toEqual([[0, 8, 16]]);
});

it('leaves a clock that goes back inside a touch as it is, and ends of equal time in their order', () => {
  expect(contacts([at(0, 'down'), at(16, 'contact'), at(8, 'contact'), at(24, 'contact'), at(24, 'up')])).toEqual([
    [0, 16, 8, 24],
  ]);
  expect(contacts([at(0, 'down'), at(0, 'contact'), at(0, 'up')])).toEqual([[0, 0]]);
});
