/**
 * One window that is walked through and then killed, crashed or closed. Arguments: folder, marker, 'all' or 'few'.
 * Each line it says is JSON; after each screen it waits until a line comes back.
 */
import { createInterface } from 'node:readline';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { findBrowser } from '../../../electron/browser/find.js';
import { startSession } from '../../../electron/browser/session.ts';
import { saveWithoutDialog } from '../../../electron/files/save-into.ts';
import { openBackend } from '../../../electron/open-backend.ts';
import { screensOf } from './screens.ts';

const [folder = '', marker = '', which = 'all'] = process.argv.slice(2);
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
  openBackend: (port, emit) => openBackend({ folder, port, emit, shell: 'browser', appRoot }),
});
session.page.setDefaultTimeout(30_000);
for (const screen of screensOf(session.page, marker)) {
  if (which === 'few' && !screen.few) continue;
  await screen.go();
  await say({ screen: screen.name, ...(screen.typed ? await screen.typed() : { words: 0, short: 0 }) });
}
await session.page.keyboard.press('Escape');
await session.page.keyboard.press('Control+L');
await session.page.getByRole('button', { name: 'Unlock', exact: true }).waitFor();
await say({ screen: 'locked', words: 0, short: 0 });
await session.close();
await say({ screen: 'closed', words: 0, short: 0 });
process.exit(0);
