/**
 * Pictures of states that a screen is seldom seen in: nobody yet, no visit, one, three years of them, the longest name, a
 * name from right to left, 40 precautions, a note as long as a field holds, saves that fail. Each is a window of a clinic
 * laptop, or of another size (683x384 is 200 % zoom). `node build/demo/bad-states.ts FOLDER
 * [light|dark|contrast|forced-light|forced-dark] [WIDTHxHEIGHT]`
 */
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { randomUUID } from 'node:crypto';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Page } from 'playwright-core';
import { createCaseload } from '../../db/index.ts';
import { findBrowser } from '../../electron/browser/find.js';
import { startSession } from '../../electron/browser/session.ts';
import { openClient, still } from '../../electron/browser/walk.ts';
import { openBackend } from '../../electron/open-backend.ts';
import { newClient } from '../../renderer/logic/caseload/new-client.ts';
import { visit } from '../../tests/db/plain-facts.ts';
import { PASSPHRASE, writeCaseload } from '../bench/desk-caseload.ts';

const root = fileURLToPath(new URL('../../', import.meta.url));
const [out = path.join(root, 'out/bad-states'), look = 'light', size = '1366x768'] = process.argv.slice(2);
const [width = 0, height = 0] = size.split('x').map(Number);
/** The system’s forced colors, dark or light, in place of a theme of the app. */
const forced = look.startsWith('forced-');
const colorScheme = look.endsWith('dark') ? 'dark' : 'light';
const SCREENS = {
  record: '7',
  screen: '1',
  sample: '2',
  'read-back': '3',
  program: '4',
  goal: '5',
  pages: '6',
  progress: '8',
};
type Screen = keyof typeof SCREENS;
const all = Object.keys(SCREENS) as Screen[];

const today = new Date().toISOString().slice(0, 10);
const LONG_NAME = 'Wilhelmina Bartholomea van der Invented-Longfellow of Upper and Lower Nowhere IV';
/** Arabic and Hebrew letters, invented. */
const RIGHT_TO_LEFT = 'ليلى المخترعة (לילה)';
const PRECAUTIONS = 40;
const NOTE = 'She says the pen slips when her hand is damp. '.repeat(500).slice(0, 19_990);

/** A caseload with a client for each state. */
async function write(folder: string): Promise<void> {
  const now = new Date().toISOString();
  const made = await createCaseload({ folder, passphrase: PASSPHRASE, now, workFactor: 4 });
  if (!made.ok) throw new Error(made.code);
  const { caseload } = made;
  caseload.together({ at: now, by: 'AB' }, (put) => {
    const client = (code: string, name: string, more = {}) =>
      put.put('client', { ...newClient(randomUUID(), name, code), birthYear: 1957, ...more }).id;
    client('B-NONE', 'Nora Invented');
    for (const [code, name] of [
      ['B-LONG', LONG_NAME],
      ['B-RTL', RIGHT_TO_LEFT],
    ] as const)
      put.put('visit', visit(client(code, name), { date: today }));
    put.put('visit', visit(client('B-ONE', 'Oswin Invented'), { date: today }));
    const precautions = Array.from({ length: PRECAUTIONS }, (_, n) => ({
      code: null,
      text: `Precaution ${n + 1}: the right wrist bears no weight until the surgeon says so`,
    }));
    put.put('visit', visit(client('B-CARE', 'Petra Invented', { precautions }), { date: today }));
    put.put('visit', visit(client('B-NOTE', 'Quinn Invented'), { date: today, told: NOTE }));
  });
  caseload.close();
}

/** Shows a caseload and takes the pictures. `saves.fail`: every save is refused, as in a folder gone read-only. */
async function show(
  dataFolder: string,
  walk: (page: Page, saves: { fail: boolean }, shot: (name: string) => Promise<void>) => Promise<void>,
): Promise<void> {
  const executable = findBrowser();
  if (!executable) throw new Error('No Chromium-family browser was found.');
  const saves = { fail: false };
  const session = await startSession({
    dataFolder,
    rendererFolder: path.join(root, 'dist', 'renderer'),
    executable,
    size: { width, height },
    headless: process.platform === 'linux' && !process.env['DISPLAY'] && !process.env['WAYLAND_DISPLAY'],
    save: async () => ({ saved: false, name: null }),
    openBackend: (port, emit) => {
      const backend = openBackend({ folder: dataFolder, port, emit, shell: 'browser', appRoot: root, state: null });
      const refused = JSON.stringify({ ok: false, code: 'folder-not-writable' });
      return {
        ...backend,
        call: async (json) => (saves.fail && /"name":"\w+\.save"/.test(json) ? refused : backend.call(json)),
      };
    },
  });
  try {
    const { page, backend } = session;
    await page.setViewportSize({ width, height });
    if (forced) await page.emulateMedia({ forcedColors: 'active', colorScheme });
    const ask = async (name: string, input: unknown) => backend.call(JSON.stringify({ name, input }));
    await ask('app.unlock', { passphrase: PASSPHRASE });
    const { value } = JSON.parse(await ask('app.status', {})) as { value: { preferences: object } };
    await ask('app.prefer', { ...value.preferences, ...(!forced && { theme: look }) });
    await page.reload();
    await walk(page, saves, async (name) => {
      await still(page);
      await page.waitForTimeout(300);
      await page.screenshot({ path: path.join(out, `${name}.png`) });
    });
  } finally {
    await session.close();
  }
}

const open = async (page: Page, code: string, screen: Screen): Promise<void> => {
  await openClient(page, code);
  await page.keyboard.press(`Alt+${SCREENS[screen]}`);
  await page
    .locator(`#rail [aria-keyshortcuts="Alt+${SCREENS[screen]}"][aria-current="page"]`)
    .waitFor({ state: 'attached' });
};

mkdirSync(out, { recursive: true });
const folder = mkdtempSync(path.join(tmpdir(), 'bad-states-'));
const [none, states, years] = ['none', 'states', 'years'].map((name) => path.join(folder, name)) as [
  string,
  string,
  string,
];
try {
  await createCaseload({ folder: none, passphrase: PASSPHRASE, now: new Date().toISOString(), workFactor: 4 }).then(
    (made) => made.ok && made.caseload.close(),
  );
  await write(states);
  await writeCaseload(years, 1, 156);
  await show(none, (page, _, shot) =>
    page
      .locator('h1')
      .first()
      .waitFor()
      .then(() => shot('no-clients')),
  );
  await show(states, async (page, saves, shot) => {
    const pictures: readonly [string, string, readonly Screen[]][] = [
      ['no-visits', 'B-NONE', all],
      ['one-visit', 'B-ONE', all],
      ['long-name', 'B-LONG', ['record', 'pages']],
      ['right-to-left', 'B-RTL', ['record', 'pages']],
      ['40-precautions', 'B-CARE', ['record', 'program', 'pages']],
      ['20000-letters', 'B-NOTE', ['record', 'pages']],
    ];
    for (const [state, code, screens] of pictures)
      for (const screen of screens) {
        await open(page, code, screen);
        await shot(`${state}-${screen}`);
      }
    await page.keyboard.press('Alt+0');
    await shot('names-caseload');
    await open(page, 'B-ONE', 'record');
    saves.fail = true;
    await page.getByRole('textbox', { name: 'Plan', exact: true }).fill('Ask for a thicker pen');
    await page.keyboard.press('Tab');
    await page.getByRole('alert').filter({ hasText: 'Not saved.' }).waitFor();
    for (const screen of all) {
      await open(page, 'B-ONE', screen);
      await shot(`failed-save-${screen}`);
    }
    await page.keyboard.press('Alt+0');
    await shot('failed-save-caseload');
    saves.fail = false;
    await page.getByRole('contentinfo').getByRole('button', { name: 'Retry' }).click();
    await page
      .locator('footer')
      .getByText(/^Saved \d/)
      .waitFor({ state: 'attached' });
  });
  await show(years, async (page, _, shot) => {
    for (const screen of all) {
      await open(page, 'C-0001', screen);
      await page.waitForTimeout(1500);
      await shot(`156-visits-${screen}`);
    }
  });
} finally {
  rmSync(folder, { recursive: true, force: true });
}
