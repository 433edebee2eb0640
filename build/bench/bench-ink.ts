/** Pen ink: half an hour of it measured away from the window and loaded into it, and the work of a frame while a pen writes. */
import { randomUUID } from 'node:crypto';
import type { Page } from 'playwright-core';
import { openClient, openTab } from '../../electron/browser/walk.ts';
import { measureInkInWorker } from '../../electron/files/ink/ink-in-worker.ts';
import { packSamples, RAW_BYTES } from '../../renderer/ink/index.ts';
import { penEvents } from '../demo/ink/pen-events.ts';
import { inkOf, strokesUpAndDown } from '../demo/ink/pen-model.ts';
import type { PenStep } from '../demo/ink/pen-model.ts';
import { playPen } from '../demo/ink/play-pen.ts';
import { inDemoWindow, longestTask, watchLongTasks } from './demo-window.ts';
import { nothingWritten } from '../../renderer/logic/record/nothing-written.ts';

const RATE_HZ = 240;
const PX_PER_MM = 5;
const MINUTES = 30;

/** Lines of eight words, each a contact of ten strokes, for half an hour. */
function halfAnHour(): Uint8Array {
  const steps: PenStep[] = [];
  let seconds = 0;
  for (let word = 0; seconds < MINUTES * 60; word += 1) {
    const atEnd = word % 8 === 7;
    steps.push(...strokesUpAndDown(10, () => 4, 0.2));
    steps.push({ kind: 'lift', dx: atEnd ? -100 : 5, dy: atEnd ? 1 : 0, seconds: 0.4 });
    seconds += 2.4;
  }
  const plan = { task: 'writing' as const, from: { x: 20, y: 30 }, steps, pressure: () => 0.5 };
  return packSamples(penEvents(inkOf(plan, { rateHz: RATE_HZ, noiseMm: 0.02, seed: 8 }), PX_PER_MM));
}

export interface InkTimes {
  samples: number;
  /** Half an hour measured in its worker, s, and the longest time in which this process answered nothing, ms. */
  measuredS: number;
  heldUpMs: number;
  /** Ten seconds of writing at 240 Hz: longest own work on an event or frame, ms, and events that got lost. */
  frameMs: number;
  lostEvents: number;
  /** Half an hour of ink opened in the window: longest task, ms (null: none of 50 ms), and until it can be replayed, s. */
  longestLoadMs: number | null;
  loadedS: number;
}

const recording = (ids: { clientId: string; visitId: string; sampleId: string }) => ({
  ...nothingWritten(),
  id: randomUUID(),
  ...ids,
  order: 0,
  task: 'writing' as const,
  hand: 'right' as const,
  mime: 'application/x-pen-samples' as const,
  startedAt: new Date().toISOString(),
  pointerType: 'pen' as const,
  surface: 'screen' as const,
  device: 'Bench pen',
  screen: { width: 1366, height: 768, devicePixelRatio: 1 },
  scale: { pxPerMmX: PX_PER_MM, pxPerMmY: PX_PER_MM, source: 'card' as const, at: new Date().toISOString() },
});

/** Measures away from this thread, and looks how long this thread was held up meanwhile. */
async function measured(bytes: Uint8Array): Promise<Pick<InkTimes, 'measuredS' | 'heldUpMs'>> {
  let heldUpMs = 0;
  let last = performance.now();
  const ticking = setInterval(() => {
    const now = performance.now();
    heldUpMs = Math.max(heldUpMs, now - last - 5);
    last = now;
  }, 5);
  const began = performance.now();
  const { id: _id, ...about } = recording({ clientId: '', visitId: '', sampleId: '' });
  await measureInkInWorker({ recording: about, text: '', bytes, draw: false });
  clearInterval(ticking);
  return { measuredS: (performance.now() - began) / 1000, heldUpMs };
}

type Ask = (name: string, input: unknown) => Promise<unknown>;

async function inWindow(
  page: Page,
  ask: Ask,
  bytes: Uint8Array,
): Promise<Omit<InkTimes, 'samples' | 'measuredS' | 'heldUpMs'>> {
  await openClient(page, 'Q-105');
  await page.getByRole('button', { name: 'Start a visit today' }).click();
  await openTab(page, 'Sample');
  await page.getByRole('button', { name: 'Start this sample' }).click();
  await page.getByRole('tab', { name: 'Pen' }).click();
  await page.getByRole('button', { name: 'Write on the screen' }).click();
  const sheet = page.getByRole('region', { name: 'Sheet to write on' });
  await sheet.waitFor();
  const plan = { task: 'writing' as const, from: { x: 20, y: 60 }, steps: strokesUpAndDown(50, () => 6, 0.2) };
  const sent = await playPen(page, inkOf(plan, { rateHz: RATE_HZ, noiseMm: 0, seed: 4 }), {
    pxPerMm: PX_PER_MM / 2,
    withPressure: true,
  });
  await page.waitForTimeout(600);
  const frameMs = Number(await sheet.getAttribute('data-busiest-ms'));
  await page.getByRole('button', { name: /^Finish the sample/ }).click();
  await page.getByRole('button', { name: 'Replay' }).first().waitFor();
  const clients = (await ask('caseload.list', {})) as { id: string; code: string }[];
  const { id: clientId } = clients.find(({ code }) => code === 'Q-105')!;
  const record = (await ask('client.open', { clientId })) as {
    inkRecordings: { sampleId: string; visitId: string; measured: { told: { source: { samples: number } } } }[];
  };
  const { sampleId, visitId, measured: kept } = record.inkRecordings.at(-1)!;
  // Contact samples; the lifting is one more.
  const lostEvents = sent - 1 - kept.told.source.samples;

  const long = recording({ clientId, visitId, sampleId });
  await ask('ink.save', long);
  const size = 12_000 * RAW_BYTES;
  for (let seq = 0; seq * size < bytes.length; seq += 1) {
    const piece = Buffer.from(bytes.subarray(seq * size, (seq + 1) * size)).toString('base64');
    await ask('ink.append', { recordingId: long.id, seq, bytes: piece });
  }
  await ask('ink.finish', { recordingId: long.id, palmTouches: 0, cancelled: 0 });
  await page.reload();
  await openClient(page, 'Q-105');
  await openTab(page, 'Sample');
  await page.getByRole('tab', { name: 'Text' }).click();
  await page.waitForTimeout(1000);
  await watchLongTasks(page);
  const began = performance.now();
  await page.getByRole('tab', { name: 'Pen' }).click();
  await page.getByText(/of 1[78]\d\d\.\d s/).waitFor();
  const loadedS = (performance.now() - began) / 1000;
  await page.waitForTimeout(3000);
  return { frameMs, lostEvents, loadedS, longestLoadMs: await longestTask(page) };
}

/** @returns a sentence where no window can be opened */
export async function inkTimes(): Promise<InkTimes | string> {
  const bytes = halfAnHour();
  const away = await measured(bytes);
  const done = await inDemoWindow(({ page, ask }) => inWindow(page, ask, bytes));
  return typeof done === 'string' ? done : { samples: bytes.length / RAW_BYTES, ...away, ...done };
}
