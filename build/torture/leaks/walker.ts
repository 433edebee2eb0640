/**
 * One window that is walked through and then killed, crashed or closed. Arguments: folder, marker, which walk, which share of its screens, the built window.
 * Each line it says is JSON; after each screen it waits until a line comes back.
 */
import { createInterface } from 'node:readline';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { findBrowser } from '../../../electron/browser/find.js';
import { startSession } from '../../../electron/browser/session.ts';
import { saveWithoutDialog } from '../../../electron/files/save-into.ts';
import type { KeyStore } from '../../../electron/key-store.ts';
import { openBackend } from '../../../electron/open-backend.ts';
import { crawl } from './crawl.ts';
import { nothingTyped, type Typed } from './fields.ts';
import { screensOf, type Walk } from './screens.ts';

const [folder = '', marker = '', which = 'all', share = '0/1', built = ''] = process.argv.slice(2) as [
  string,
  string,
  Walk,
  string,
  string,
];
const [turn = 0, of = 1] = share.split('/').map(Number);
const appRoot = fileURLToPath(new URL('../../../', import.meta.url));
const lines = createInterface({ input: process.stdin })[Symbol.asyncIterator]();

async function say(what: object): Promise<void> {
  process.stdout.write(`${JSON.stringify(what)}\n`);
  await lines.next();
}

/** The browser shell has no key store of the system; with this one its passphrase field is shown and typed into. */
const standIn: KeyStore = {
  state: () => Promise.resolve('usable'),
  seal: (secret) => Promise.resolve(Buffer.from(secret).map((byte) => byte ^ 0x5a)),
  open: (sealed) => Promise.resolve(Buffer.from(sealed.map((byte) => byte ^ 0x5a)).toString()),
};

const session = await startSession({
  dataFolder: folder,
  rendererFolder: built || path.join(appRoot, 'dist', 'renderer'),
  executable: findBrowser()!,
  size: { width: 1280, height: 800 },
  save: saveWithoutDialog(path.join(folder, '..', 'saved')),
  openBackend: (port, emit) =>
    openBackend({
      folder,
      port: { ...port, keyStore: standIn },
      emit,
      shell: 'browser',
      appRoot,
      state: path.join(folder, '..', 'state'),
    }),
});
session.page.setDefaultTimeout(60_000);
const ask = async (name: string, input: unknown): Promise<unknown> => {
  const answer = JSON.parse(await session.backend.call(JSON.stringify({ name, input }))) as {
    ok: boolean;
    value: unknown;
  };
  if (!answer.ok) throw new Error(`${name} was refused`);
  return answer.value;
};
const screens = screensOf(session.page, ask, marker, which).filter((screen) => screen.walks.includes(which));
let group = -1;
for (const [n, screen] of screens.entries()) {
  if (!screen.always && !screen.goesOn) group++;
  if (!screen.always && group % of !== turn) continue;
  let typed: Typed & { failed?: string } = nothingTyped();
  try {
    await screen.go();
    if (screen.typed) typed = await screen.typed();
  } catch (error) {
    if (screen.always) throw error;
    if (process.env['SHOTS']) await session.page.screenshot({ path: `${process.env['SHOTS']}/${n}.png` });
    typed.failed = String(error).split('\n')[0]!.replaceAll(marker, '(word)');
  }
  await say({ screen: screen.name, ...typed });
}
// The demo has no passphrase, and so no lock.
if (which === 'few' || which === 'all') {
  await session.page.keyboard.press('Escape');
  await session.page.keyboard.press('Control+L');
  await session.page.getByRole('button', { name: 'Unlock', exact: true }).waitFor();
  await say({ screen: 'locked', ...nothingTyped() });
  const start = async () => undefined;
  // Nothing can be kept while the caseload is locked.
  const typed = which === 'few' ? nothingTyped() : await crawl(session.page, marker, start);
  await say({ screen: 'Unlock', ...typed, unkept: [] });
}
await session.close();
await say({ screen: 'closed', ...nothingTyped() });
process.exit(0);
