/** Starts Fairhand in an installed Chromium. Run by `npm start` when Electron's own program is not there. */
import { homedir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { dataFolder, FolderProblem } from '../data-folder.ts';
import { askForward, takeLock } from '../files/lock.ts';
import type { Lock } from '../files/lock.ts';
import { saveWithoutDialog } from '../files/save-into.ts';
import { keepSize, rememberedSize } from '../window-size.ts';
import { findBrowser } from './find.js';
import type { Session } from './session.ts';
import { comeForward, startSession, watchSize } from './session.ts';

const appRoot = fileURLToPath(new URL('../../', import.meta.url));

const tell = (line: string) => void process.stderr.write(`${line}\n`);

/** A reason not to start, as a sentence for the terminal. */
class CannotStart extends Error {}

function chosenFolder(argv: readonly string[]): string {
  let asked: string | undefined;
  try {
    asked = parseArgs({ args: [...argv], options: { data: { type: 'string' } }, strict: true }).values.data;
  } catch {
    throw new CannotStart('The only option is --data FOLDER, the folder of the caseload. Fairhand was not started.');
  }
  return dataFolder(asked ?? null, { platform: process.platform, home: homedir(), env: process.env });
}

function lockOrForward(folder: string): Lock | null {
  let lock: Lock | null;
  try {
    lock = takeLock(folder);
  } catch {
    throw new CannotStart(
      `Fairhand cannot write into the caseload folder ${folder}. Nothing was changed. Choose another folder with --data, or ask for write permission.`,
    );
  }
  if (!lock) askForward(folder);
  return lock;
}

/** Opens the window, answers when it was closed. */
export async function main(argv: readonly string[]): Promise<void> {
  const executable = findBrowser();
  if (!executable) {
    throw new CannotStart(
      'No Chromium, Chrome or Edge was found to open the window with. Install one of them and start again.',
    );
  }
  const folder = chosenFolder(argv);
  let session: Session | null = null;
  let stopped = false;
  const stop = () => {
    stopped = true;
    void session?.close();
  };
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.on(signal, stop);
  const lock = lockOrForward(folder);
  if (!lock) {
    tell('Fairhand is open already on this caseload; its window was brought to the front.');
    return;
  }
  // Loads while the browser starts: together they are what the user waits for.
  const loading = import('../open-backend.ts');
  loading.catch(() => undefined);
  try {
    session = await startSession({
      dataFolder: folder,
      rendererFolder: path.join(appRoot, 'dist', 'renderer'),
      executable,
      size: rememberedSize(folder),
      save: saveWithoutDialog(process.env['FAIRHAND_SAVE_DIR']),
      openBackend: async (port, emit) => (await loading).openBackend({ folder, port, emit, shell: 'browser', appRoot }),
    });
    const { page, closed } = session;
    lock.onForward(() => void comeForward(page));
    watchSize(page, (size) => keepSize(folder, size));
    // A signal may have come while the window was opening.
    if (stopped) stop();
    await closed;
  } finally {
    lock.release();
  }
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  main(process.argv.slice(2)).catch((error: unknown) => {
    const known = error instanceof CannotStart || error instanceof FolderProblem;
    tell(known ? error.message : 'Fairhand could not open its window. What was saved before is safe. Start it again.');
    if (process.env['FAIRHAND_DEBUG'] === '1') tell(String(error instanceof Error ? error.stack : error));
    process.exitCode = known ? 2 : 1;
  });
}
