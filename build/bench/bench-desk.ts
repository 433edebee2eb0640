/**
 * What the desk costs: what visits to a screen leave behind, 5,001 clients in the caseload, three years of weekly
 * visits, typing in a note, and the first screen against a bare window of the same browser.
 */
import { randomUUID } from 'node:crypto';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { chromium, type CDPSession, type Page } from 'playwright-core';
import { createCaseload } from '../../db/index.ts';
import { findBrowser } from '../../electron/browser/find.js';
import { hiddenProblems, inHiddenWindow } from '../../electron/browser/hidden.ts';
import { openClient, openTab } from '../../electron/browser/walk.ts';
import { newClient } from '../../renderer/logic/caseload/new-client.ts';
import { median } from '../../renderer/statistics/order-statistics.ts';
import { inDemoWindow, longestTask, watchLongTasks } from './demo-window.ts';

const PASSPHRASE = 'calm river blue lantern';
const CLIENTS = 5001;
const VISITS = 20;
const YEARS_OF_WEEKS = 156;
const STARTS = 3;

/** One figure: its name, value, unit and limit. */
interface DeskFigure {
  what: string;
  value: number;
  unit: string;
  most: number;
}

interface Left {
  nodes: number;
  listeners: number;
}

/** Nodes and listeners that live after the garbage is collected. */
async function left(cdp: CDPSession): Promise<Left> {
  await cdp.send('HeapProfiler.collectGarbage');
  const { metrics } = await cdp.send('Performance.getMetrics');
  const of = (name: string) => metrics.find((one) => one.name === name)?.value ?? NaN;
  return { nodes: of('Nodes'), listeners: of('JSEventListeners') };
}

/** What 20 visits to a screen leave behind, the first ones apart: they fill what is kept once. */
async function leftBehind(page: Page, screen: string): Promise<DeskFigure[]> {
  const cdp = await page.context().newCDPSession(page);
  await cdp.send('Performance.enable');
  const there = async (times: number) => {
    for (let i = 0; i < times; i++) {
      await openTab(page, screen);
      await page.getByRole('heading', { level: 1, name: screen, exact: true }).waitFor();
      await openTab(page, 'Goal');
      await page.getByRole('heading', { level: 1, name: 'Goal', exact: true }).waitFor();
    }
  };
  await there(3);
  await page.waitForTimeout(500);
  const before = await left(cdp);
  await there(VISITS);
  await page.waitForTimeout(500);
  const after = await left(cdp);
  await cdp.detach();
  // One screen may still be on its way out: less than a tenth of what one visit draws.
  return [
    {
      what: `nodes left by ${VISITS} visits to ${screen}`,
      value: after.nodes - before.nodes,
      unit: 'nodes',
      most: 100,
    },
    {
      what: `listeners left by ${VISITS} visits to ${screen}`,
      value: after.listeners - before.listeners,
      unit: 'listeners',
      most: 5,
    },
  ];
}

/** Longest work of the window while a note is typed, key by key. */
async function typing(page: Page): Promise<number> {
  const note = page.getByLabel('What the client told');
  await note.fill('');
  await note.focus();
  await watchLongTasks(page);
  await page.keyboard.type('The club could read the seed list, and he wrote it after breakfast. '.repeat(3), {
    delay: 15,
  });
  await page.waitForTimeout(800);
  return (await longestTask(page)) ?? 0;
}

/** From the key to a screen with its title, ms. */
async function shownIn(page: Page, screen: string): Promise<number> {
  const times: number[] = [];
  for (let i = 0; i < 5; i++) {
    await openTab(page, 'Goal');
    await page.getByRole('heading', { level: 1, name: 'Goal', exact: true }).waitFor();
    const from = await page.evaluate(() => performance.now());
    await openTab(page, screen);
    await page.getByRole('heading', { level: 1, name: screen, exact: true }).waitFor();
    times.push(
      (await page.evaluate(() => new Promise<number>((done) => requestAnimationFrame(() => done(performance.now()))))) -
        from,
    );
  }
  return median(times)!;
}

/** A caseload of 5,001 clients; the first has three years of weekly visits, each read. */
async function largeCaseload(folder: string): Promise<void> {
  const now = new Date().toISOString();
  const created = await createCaseload({ folder, passphrase: PASSPHRASE, now });
  if (!created.ok) throw new Error(created.code);
  created.caseload.together({ at: now, by: 'QM' }, (write) => {
    for (let n = 1; n <= CLIENTS; n++) {
      const code = `C-${String(n).padStart(4, '0')}`;
      write.put('client', newClient(randomUUID(), `Invented ${code}`, code));
    }
  });
  created.caseload.close();
}

const conditions = { hand: 'right', pen: '', paper: '', time: '09:30', doseState: 'on', cue: 'none' };
const more = { minutesSinceDose: null, surfaceAngleDeg: null, seatMm: null, tableMm: null, armSupport: '', grip: '' };
const rest = { glasses: null, instruction: 'usual', style: null };

/** Gives a client weekly visits with a counted sample each. */
async function threeYears(ask: (name: string, input: unknown) => Promise<unknown>, clientId: string): Promise<void> {
  const WEEK_MS = 7 * 86_400_000;
  for (let i = 0; i < YEARS_OF_WEEKS; i++) {
    const date = new Date(Date.now() - (YEARS_OF_WEEKS - i) * WEEK_MS).toISOString().slice(0, 10);
    const [visitId, sampleId] = [randomUUID(), randomUUID()];
    const words = { nextVisit: '', told: '', skilled: '', response: '', taughtBack: '', plan: '' };
    await ask('visit.save', { id: visitId, clientId, date, kind: i ? 'treatment' : 'first', minutes: 45, ...words });
    await ask('sample.save', {
      ...{ id: sampleId, clientId, visitId, takenAt: `${date}T09:30:00.000Z`, typed: {}, note: '', seconds: 120 },
      task: { kind: 'sentences', textCodes: ['F1'], text: 'Please call me back', spellingNoted: false },
      conditions: { ...conditions, ...more, ...rest },
      ...{ fatigueBefore: 2, fatigueAfter: 4, painBefore: 0, painAfter: 0, baseline: i < 3 },
    });
    await ask('reading.save', {
      ...{ id: randomUUID(), clientId, visitId, sampleId, readAt: `${date}T15:00:00.000Z`, lines: [], blind: true },
      ...{ reader: 'unfamiliar', readerInitials: 'QR', counted: { right: 11 + Math.floor(i / 14), of: 24 } },
    });
  }
}

async function inLargeCaseload(): Promise<DeskFigure[] | string> {
  const folder = mkdtempSync(path.join(tmpdir(), 'bench-desk-'));
  const dataFolder = path.join(folder, 'caseload');
  try {
    await largeCaseload(dataFolder);
    const save = async () => ({ saved: false as const, name: null });
    const outcome = await inHiddenWindow({ dataFolder, save }, async ({ page, ask }) => {
      await ask('app.unlock', { passphrase: PASSPHRASE });
      const [first] = (await ask('caseload.list', {})) as { id: string; code: string }[];
      await threeYears(ask, first!.id);
      await page.reload();
      await page.getByRole('navigation', { name: 'Lists' }).getByText(String(CLIENTS)).first().waitFor();
      const rows = await page.locator('main tbody tr').count();
      await openClient(page, first!.code);
      const typed = await typing(page);
      const [pages, progress, readback] = [
        await shownIn(page, 'Pages'),
        await shownIn(page, 'Progress'),
        await shownIn(page, 'Read back'),
      ];
      return [
        { what: `rows drawn of ${CLIENTS} clients`, value: rows, unit: 'rows', most: 60 },
        { what: `longest work while a note is typed, ${CLIENTS} clients`, value: typed, unit: 'ms', most: 50 },
        { what: `Progress with ${YEARS_OF_WEEKS} visits, against Pages`, value: progress / pages, unit: 'x', most: 2 },
        { what: `Read back with ${YEARS_OF_WEEKS} visits, against Pages`, value: readback / pages, unit: 'x', most: 2 },
      ];
    });
    return 'problem' in outcome ? hiddenProblems[outcome.problem] : outcome.done;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Time to the first picture of a window, ms: ours on an empty folder, and a bare one of the same browser. */
async function firstScreen(): Promise<DeskFigure | string> {
  const executablePath = findBrowser();
  if (!executablePath) return hiddenProblems['no-browser'];
  const headless = process.platform === 'linux' && !process.env['DISPLAY'] && !process.env['WAYLAND_DISPLAY'];
  const bare: number[] = [];
  const ours: number[] = [];
  for (let i = 0; i < STARTS; i++) {
    const folder = mkdtempSync(path.join(tmpdir(), 'bench-start-'));
    let from = performance.now();
    const args = process.getuid?.() === 0 ? ['--no-sandbox'] : [];
    const context = await chromium.launchPersistentContext(path.join(folder, 'bare'), {
      executablePath,
      headless,
      args,
    });
    await (context.pages()[0] ?? (await context.newPage())).setContent('<h1>Bare</h1>');
    bare.push(performance.now() - from);
    await context.close();
    from = performance.now();
    const save = async () => ({ saved: false as const, name: null });
    await inHiddenWindow({ dataFolder: path.join(folder, 'caseload'), save }, async ({ page }) => {
      await page.getByRole('heading', { level: 1 }).waitFor();
      ours.push(performance.now() - from);
    });
    rmSync(folder, { recursive: true, force: true });
  }
  return { what: 'first screen, against a bare window', value: median(ours)! / median(bare)!, unit: 'x', most: 1.2 };
}

/** @returns each figure, or a sentence for what could not be measured */
export async function deskFigures(): Promise<(DeskFigure | string)[]> {
  const screens = await inDemoWindow(async ({ page }) => {
    await page.getByRole('navigation', { name: 'Lists' }).waitFor();
    await openClient(page, 'Q-101');
    const figures: DeskFigure[] = [];
    for (const screen of ['Sample', 'Progress', 'Pages']) figures.push(...(await leftBehind(page, screen)));
    return figures;
  });
  return [screens, await inLargeCaseload(), await firstScreen()].flat();
}
