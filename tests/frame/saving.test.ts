import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { Refusal } from '../../electron/contract/envelope.ts';
import { OpenRecord } from '../../renderer/window/frame/open-record.svelte.ts';
import type { SaveHost } from '../../renderer/window/frame/save-host.ts';
import { Saving } from '../../renderer/window/frame/saving.svelte.ts';
import { id, record, visitIds } from '../logic/pages/record.ts';

beforeEach(() => vi.useFakeTimers());
afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

const notNow = () => Promise.reject(new Refusal('disk-full'));
const refused = () => Promise.reject(new Refusal('date-in-future'));
/** Whether a promise has settled by now. */
async function settledAs(promise: Promise<unknown>): Promise<unknown> {
  const result = promise.then(
    (value) => value,
    (error: Refusal) => error.code,
  );
  await vi.advanceTimersByTimeAsync(0);
  return Promise.race([result, Promise.resolve('open')]);
}

test('a save that a newer one replaced while it waited settles with the newer result', async () => {
  const saving = new Saving();
  const first = saving.run('visit/1', notNow);
  expect(await settledAs(first)).toBe('open');
  const second = saving.run('visit/1', () => Promise.resolve('second'));
  expect(await settledAs(second)).toBe('second');
  expect(await settledAs(first)).toBe('second');
  expect(saving.unsaved).toBe(0);
  expect(saving.state).toBe('saved');
});

test('of two that wait the newer one is tried, and both settle with it', async () => {
  const saving = new Saving();
  let works = false;
  const written: string[] = [];
  const write = (name: string) => () => {
    if (!works) return notNow();
    written.push(name);
    return Promise.resolve(name);
  };
  const [first, second] = [saving.run('visit/1', write('first')), saving.run('visit/1', write('second'))];
  await vi.advanceTimersByTimeAsync(0);
  works = true;
  await vi.advanceTimersByTimeAsync(6000);
  expect([await settledAs(first), await settledAs(second)]).toEqual(['second', 'second']);
  expect(written).toEqual(['second']);
});

test('a slow older save that fails after a newer one was stored is not tried again', async () => {
  const saving = new Saving();
  let fail = (_: Refusal): void => undefined;
  const first = saving.run('visit/1', () => new Promise((_, reject) => (fail = reject)));
  const second = saving.run('visit/1', () => Promise.resolve('second'));
  expect(await settledAs(second)).toBe('second');
  fail(new Refusal('disk-full'));
  expect(await settledAs(first)).toBe('second');
  expect(saving.unsaved).toBe(0);
});

test('an older save goes on waiting where the newer one is refused', async () => {
  const saving = new Saving();
  let works = false;
  const first = saving.run('visit/1', () => (works ? Promise.resolve('first') : notNow()));
  await vi.advanceTimersByTimeAsync(0);
  const second = saving.run('visit/1', refused);
  expect(await settledAs(second)).toBe('date-in-future');
  expect(await settledAs(first)).toBe('open');
  works = true;
  await vi.advanceTimersByTimeAsync(6000);
  expect(await settledAs(first)).toBe('first');
});

/** An open record whose saves are answered by hand; the clinic's repeat pairs, asked for beside them, are none. */
function opened(more: Partial<SaveHost['status']> = {}) {
  const answers: ((answer: object) => void)[] = [];
  vi.stubGlobal('fairhand', {
    call: (json: string) =>
      (JSON.parse(json) as { name: string }).name === 'progress.repeatPairs'
        ? Promise.resolve(JSON.stringify({ ok: true, value: { pairs: [] } }))
        : new Promise<string>((resolve) => answers.push((answer) => resolve(JSON.stringify(answer)))),
  });
  const complaints: unknown[] = [];
  const app = {
    saving: new Saving(),
    status: { initials: 'JM', today: '2026-04-15', ...more },
    complain: (error: unknown) => void complaints.push(error),
  } as unknown as SaveHost;
  const open = new OpenRecord(app, record());
  return { open, complaints, answer: (at: number, with_: object) => answers[at]!(with_) };
}
const no = { ok: false, code: 'date-in-future' };

test('a refused save takes back its own fact and nothing that was saved meanwhile', async () => {
  const { open, answer, complaints } = opened();
  const [visit, goal] = [open.record.visits[0]!, open.record.goals[0]!];
  const first = open.save('visit', { ...visit, minutes: 5 });
  const second = open.save('goal', { ...goal, weight: 4 });
  answer(1, { ok: true, value: { ...goal, weight: 4 } });
  await second;
  answer(0, no);
  await expect(first).rejects.toThrow();
  expect(open.record.visits[0]!.minutes).toBe(visit.minutes);
  expect(open.record.goals[0]!.weight).toBe(4);
  expect(complaints).toHaveLength(1);
});

test('an answer that an assistant saves shows its visit as not co-signed at once', async () => {
  for (const assistant of [false, true]) {
    const { open, answer } = opened({ assistant });
    const [goal] = open.record.goals;
    const fact = { ...goal!, visitId: visitIds[2], at: '2026-04-15T09:00:00.000Z', by: 'AS' };
    const saved = open.save('goal', fact);
    answer(0, { ok: true, value: fact });
    await saved;
    const { coSign } = open.record.visits.find((each) => each.id === visitIds[2])!;
    expect(coSign).toEqual(assistant ? { recordedBy: 'AS', signedBy: null, signedAt: null } : undefined);
  }
});

test('a refused save leaves a newer edit of the same fact on the screen', async () => {
  const { open, answer } = opened();
  const [visit] = open.record.visits;
  const first = open.save('visit', { ...visit!, minutes: 5 });
  const second = open.save('visit', { ...visit!, minutes: 6 });
  answer(0, no);
  await expect(first).rejects.toThrow();
  expect(open.record.visits[0]!.minutes).toBe(6);
  answer(1, no);
  await expect(second).rejects.toThrow();
  expect(open.record.visits[0]!.minutes).toBe(visit!.minutes);
});

test('the answer to an older edit does not overwrite a newer one; a new fact that is refused goes away', async () => {
  const { open, answer } = opened();
  const [visit] = open.record.visits;
  const first = open.save('visit', { ...visit!, minutes: 5 });
  const second = open.save('visit', { ...visit!, minutes: 6 });
  answer(0, { ok: true, value: { ...visit!, minutes: 5 } });
  await first;
  expect(open.record.visits[0]!.minutes).toBe(6);
  answer(1, { ok: true, value: { ...visit!, minutes: 6 } });
  await second;
  const fresh = open.save('visit', { ...visit!, id: id() });
  expect(open.record.visits).toHaveLength(4);
  answer(2, no);
  await expect(fresh).rejects.toThrow();
  expect(open.record.visits).toHaveLength(3);
});

test('a removed sample takes its readings along; refused, all of it comes back where it was', async () => {
  const { open, answer } = opened();
  const { samples, readings } = open.record;
  const removing = open.remove('sample', samples[1]!.id);
  expect(open.record.samples).toHaveLength(2);
  expect(open.record.readings).toHaveLength(2);
  const goal = open.save('goal', { ...open.record.goals[0]!, weight: 4 });
  answer(1, { ok: true, value: { ...open.record.goals[0]!, weight: 4 } });
  await goal;
  answer(0, no);
  await expect(removing).rejects.toThrow();
  expect(open.record.samples).toEqual(samples);
  expect(open.record.readings).toEqual(readings);
  expect(open.record.goals[0]!.weight).toBe(4);
  const visitGone = open.remove('visit', visitIds[2]);
  expect(open.record.samples.map(({ visitId }) => visitId)).not.toContain(visitIds[2]);
  answer(2, { ok: true, value: {} });
  await visitGone;
});
