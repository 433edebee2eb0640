/** The writing sheet as tests open, leave and read it. */
import type { InkResult } from '../../../renderer/ink/index.ts';
import { unpackSamples } from '../../../renderer/ink/index.ts';
import { expect, openClient } from '../app.ts';
import type { LaunchedApp } from '../app.ts';

export const PX_PER_MM = 5;

/** A visit with a sample of today, at its Pen tab, on a surface whose true size is known. */
export async function openPenTab({ page, ask }: LaunchedApp, surface = 'screen'): Promise<void> {
  const screenNow = await page.evaluate(() => ({ width: screen.width, height: screen.height, devicePixelRatio }));
  const scale = { pxPerMmX: PX_PER_MM, pxPerMmY: PX_PER_MM, source: 'card', at: '2026-03-04T09:12:00.000Z' };
  await ask('ink.setDevice', { device: { device: 'Test pen', surface, screen: screenNow, scale } });
  await openClient(page, 'Margit Oszlan');
  await page.getByRole('button', { name: 'Start a visit today' }).click();
  await page.keyboard.press('Alt+2');
  await page.getByRole('button', { name: 'Start this sample' }).click();
  await page.getByRole('tab', { name: 'Pen' }).click();
}

export const sheetOf = ({ page }: LaunchedApp) => page.getByRole('region', { name: 'Sheet to write on' });

export async function openSheet(app: LaunchedApp, surface = 'screen'): Promise<void> {
  await openPenTab(app, surface);
  await app.page.getByRole('button', { name: 'Write on the screen' }).click();
  await expect(sheetOf(app)).toBeVisible();
}

export interface Told {
  recording: {
    id: string;
    blob: string;
    task: string;
    hand: string;
    palmTouches: number;
    otherPens: number;
    scale: object | null;
    cues: object | null;
    drift: { beforeMm: number; afterMm: number; movedMm: number } | null;
    measured: { told: InkResult; lines?: { inBand: number; strokes: number }[] };
  };
  samples: number;
  measures: InkResult;
}

export async function finish(app: LaunchedApp): Promise<Told> {
  const { page } = app;
  const before = await page.getByRole('article').count();
  await page.getByRole('button', { name: /^Finish the sample/ }).click();
  await expect(page.getByRole('article')).toHaveCount(before + 1);
  return kept(app);
}

/** The latest recording of the client, with its samples and what was told of them. */
export async function kept({ page, ask }: LaunchedApp): Promise<Told> {
  const clients = (await ask('caseload.list', {})) as { id: string; name: string }[];
  const { id } = clients.find(({ name }) => name === 'Margit Oszlan')!;
  const record = (await ask('client.open', { clientId: id })) as { inkRecordings: Told['recording'][] };
  const recording = record.inkRecordings.at(-1)!;
  const bytes = await page.evaluate(async (blob) => {
    const answer = await fetch(`/blob/${blob}`);
    return [...new Uint8Array(await answer.arrayBuffer())];
  }, recording.blob);
  return { recording, samples: unpackSamples(Uint8Array.from(bytes)).length, measures: recording.measured.told };
}

export const valueOf = (result: InkResult, code: string): number | null =>
  result.measures.find((each) => each.code === code)!.value;
