/** A word corrected on the screen: the page is decoded and measured once, and what it gave before stays beside it. */
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { PageMeasurement } from '../../db/types/sample.ts';
import type { RequestName, ShellEvent } from '../../electron/contract/index.ts';
import { dispatch } from '../../electron/handlers/dispatch.ts';
import { Services } from '../../electron/handlers/services.ts';
import { client, doing, newCaseload, NOW, PASSPHRASE, visit } from '../db/support.ts';
import { sample } from '../db/plain-facts.ts';
import { makePage } from '../measure/pages/generate.ts';
import { SPECS } from '../measure/pages/specs.ts';

const uuid = (n: number): string => `018f7c1e-0000-4000-8000-${String(n).padStart(12, '0')}`;
let now = Date.parse(NOW) + 60_000;
let events: ShellEvent[] = [];
let services: Services;

async function ask<T = object>(name: RequestName, input: unknown): Promise<T> {
  const answer = JSON.parse(await dispatch(services, JSON.stringify({ name, input }))) as { ok: boolean; value: T };
  expect(answer, name).toMatchObject({ ok: true });
  return answer.value;
}

const stages = (): string[] => events.flatMap((event) => (event.kind === 'progress' ? [event.task] : []));
const timesOf = (stage: string): number => stages().filter((each) => each === stage).length;

beforeAll(async () => {
  const spec = SPECS.find(({ name }) => name === 'plain-patrick')!;
  const { bytes } = await makePage({ ...spec, writing: { ...spec.writing, lines: 2, wordsPerLine: 3 } });
  const caseload = await newCaseload();
  const { id: clientId } = caseload.put('client', client({ name: 'Kept Here' }), doing);
  const { id: visitId } = caseload.put('visit', visit(clientId), doing);
  caseload.put('sample', { ...sample(clientId, visitId), id: uuid(1) }, doing);
  caseload.close();
  services = new Services({
    folder: caseload.folder,
    port: { keyStore: null } as never,
    shell: 'browser',
    version: '0',
    // Each act is a moment later than the one before.
    now: () => new Date((now += 1000)),
    emit: (event) => events.push(event),
    demoSource: null,
  });
  await ask('app.unlock', { passphrase: PASSPHRASE });
  await ask('sample.addPage', { id: uuid(2), sampleId: uuid(1), token: services.stageBlob(bytes), pdfPage: 1 });
  await ask('sample.setScale', { pageId: uuid(2), pxPerMm: 300 / 25.4, source: 'dpi' });
});
afterAll(() => services.lock('asked'));

test('a correction decodes and measures the page once; its result and the one without it are what they were', async () => {
  const first = await ask<PageMeasurement>('sample.measure', { id: uuid(3), pageId: uuid(2), corrections: [] });
  expect(first.uncorrected).toBeNull();
  const { box } = first.result.lines[0]!.words[0]!;
  const at = { xMm: box.xMm + box.widthMm / 2, yMm: box.yMm + box.heightMm / 2 };
  const corrections = [{ kind: 'exclude-word', at }];
  events = [];
  const second = await ask<PageMeasurement>('sample.measure', { id: uuid(4), pageId: uuid(2), corrections });
  expect([timesOf('decode'), timesOf('Done')]).toEqual([1, 1]);
  expect(second.uncorrected).toEqual(first.result);
  expect(second.result.lines[0]!.words[0]!.excluded).toBe(true);

  // A second correction still knows what there was without any.
  events = [];
  const third = await ask<PageMeasurement>('sample.measure', {
    id: uuid(5),
    pageId: uuid(2),
    corrections: [...corrections, { kind: 'set-text', at, text: 'word' }],
  });
  expect([timesOf('decode'), timesOf('Done')]).toEqual([1, 1]);
  expect(third.uncorrected).toEqual(first.result);
});

test('after the scale was changed the page is measured without corrections too, from one decoding', async () => {
  await ask('sample.setScale', { pageId: uuid(2), pxPerMm: 150 / 25.4, source: 'dpi' });
  const corrections = [{ kind: 'exclude-word', at: { xMm: 1, yMm: 1 } }];
  events = [];
  const made = await ask<PageMeasurement>('sample.measure', { id: uuid(6), pageId: uuid(2), corrections });
  expect([timesOf('decode'), timesOf('Done')]).toEqual([1, 2]);
  expect(made.uncorrected?.page.dpi).toBeCloseTo(150, 3);
  expect(made.result.page.dpi).toBeCloseTo(150, 3);
});
