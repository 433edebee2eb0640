/**
 * One window that is walked through and then killed, crashed or closed. Arguments: folder, marker, which walk, which share of its screens.
 * Each line it says is JSON; after each screen it waits until a line comes back.
 */
import { createInterface } from 'node:readline';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { findBrowser } from '../../../electron/browser/find.js';
import { startSession } from '../../../electron/browser/session.ts';
import { saveWithoutDialog } from '../../../electron/files/save-into.ts';
import { openBackend } from '../../../electron/open-backend.ts';
import { crawl } from './crawl.ts';
import { NOTHING, screensOf, type Walk } from './screens.ts';

const [folder = '', marker = '', which = 'all', share = '0/1'] = process.argv.slice(2) as [
  string,
  string,
  Walk,
  string,
];
const [turn = 0, of = 1] = share.split('/').map(Number);
const appRoot = fileURLToPath(new URL('../../../', import.meta.url));
const lines = createInterface({ input: process.stdin })[Symbol.asyncIterator]();

async function say(what: object): Promise<void> {
  process.stdout.write(`${JSON.stringify(what)}\n`);
  await lines.next();
}

const session = await startSession({
  dataFolder: folder,
  rendererFolder: path.join(appRoot, 'dist', 'renderer'),
  executable: findBrowser()!,
  size: { width: 1280, height: 800 },
  save: saveWithoutDialog(path.join(folder, '..', 'saved')),
  openBackend: (port, emit) =>
    openBackend({ folder, port, emit, shell: 'browser', appRoot, state: path.join(folder, '..', 'state') }),
});
session.page.setDefaultTimeout(180_000);
const screens = screensOf(session.page, marker, which).filter((screen) => screen.walks.includes(which));
for (const [n, screen] of screens.entries()) {
  if (!screen.always && n % of !== turn) continue;
  await screen.go();
  await say({ screen: screen.name, ...(screen.typed ? await screen.typed() : NOTHING) });
}
await session.page.keyboard.press('Escape');
await session.page.keyboard.press('Control+L');
await session.page.getByRole('button', { name: 'Unlock', exact: true }).waitFor();
await say({ screen: 'locked', ...NOTHING });
const start = async () => undefined;
await say({ screen: 'Unlock', ...(which === 'few' ? NOTHING : await crawl(session.page, marker, start)) });
await session.close();
await say({ screen: 'closed', ...NOTHING });
process.exit(0);
