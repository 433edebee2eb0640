/** Starts Fairhand in an installed Chromium. Run by `npm start` when Electron's own program is not there. */
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { dataFolder, FolderProblem, thisMachine } from '../data-folder.ts';
import { Handed } from '../files/handed-file.ts';
import { askForward, takeLock } from '../files/lock.ts';
import type { Lock } from '../files/lock.ts';
import { saveWithoutDialog } from '../files/save-into.ts';
import { keepSize, rememberedSize } from '../window-size.ts';
import { findBrowser } from './find.js';
import { NoPrivateWindow } from './launch.ts';
import type { Session } from './session.ts';
import { comeForward, startSession, watchSize } from './session.ts';

const appRoot = fileURLToPath(new URL('../../', import.meta.url));

const tell = (line: string) => void process.stderr.write(`${line}\n`);

/** A reason not to start, as a sentence for the terminal. */
class CannotStart extends Error {}

function chosenFolder(argv: readonly string[]): string {
  let asked: string | undefined;
  try {
    const options = { data: { type: 'string' } } as const;
    asked = parseArgs({ args: [...argv], options, strict: true, allowPositionals: true }).values.data;
  } catch {
    throw new CannotStart('The only option is --data FOLDER, the folder of the caseload. Fairhand was not started.');
  }
  return dataFolder(asked ?? null, thisMachine());
}

function lockOrForward(folder: string, file: string | null): Lock | null {
  let lock: Lock | null;
  try {
    lock = takeLock(folder);
  } catch {
    throw new CannotStart(
      `Fairhand cannot write into the caseload folder ${folder}. Nothing was changed. Choose another folder with --data, or ask for write permission.`,
    );
  }
  if (!lock) askForward(folder, file);
  return lock;
}

/** A window that breaks down again and again is not opened again more often than this. */
const CRASHES = 3;

/** Opens the window, answers when it was closed. */
export async function main(argv: readonly string[]): Promise<void> {
  const executable = findBrowser();
  if (!executable) {
    throw new CannotStart(
      'No Chromium, Chrome or Edge was found to open the window with. Install one of them and start again.',
    );
  }
  const folder = chosenFolder(argv);
  const handed = new Handed(argv);
  let session: Session | null = null;
  let stopped = false;
  const stop = () => {
    stopped = true;
    void session?.close();
  };
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.on(signal, stop);
  const lock = lockOrForward(folder, handed.waiting);
  if (!lock) {
    tell('Fairhand is open already on this caseload; its window was brought to the front.');
    return;
  }
  // Loads while the browser starts: together they are what the user waits for.
  const loading = import('../open-backend.ts');
  loading.catch(() => undefined);
  const open = () =>
    startSession({
      dataFolder: folder,
      rendererFolder: path.join(appRoot, 'dist', 'renderer'),
      executable,
      size: rememberedSize(folder),
      save: saveWithoutDialog(process.env['FAIRHAND_SAVE_DIR']),
      openBackend: async (port, emit) => (await loading).openBackend({ folder, port, emit, shell: 'browser', appRoot }),
    });
  lock.onForward((file) => {
    if (session) void comeForward(session.page);
    handed.take(file);
  });
  try {
    for (let crashes = 0; crashes <= CRASHES && !stopped; crashes++) {
      session = await open();
      const { backend } = session;
      handed.to((file) => backend.offer(file));
      watchSize(session.page, (size) => keepSize(folder, size));
      // A signal may have come while the window was opening.
      if (stopped) stop();
      if ((await session.closed) === 'closed') return;
      tell('The window broke down. What was saved is safe and locked; the window opens again.');
    }
  } catch (error) {
    if (!(error instanceof NoPrivateWindow)) throw error;
    throw new CannotStart(
      'This browser is set up so that every window keeps what is typed on the disk (private windows are forbidden), so Fairhand was not opened in it. Nothing was changed. Install another Chromium, Chrome or Edge, or ask whoever looks after this computer to allow private windows.',
    );
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
