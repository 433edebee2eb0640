/** Starts Fairhand in Electron: a table of contents. Each line is one concern, with its own file and tests. */
import path from 'node:path';
import { app, dialog } from 'electron';
import type { BrowserWindow } from 'electron';
import { dataFolder, thisMachine } from '../data-folder.ts';
import { Handed } from '../files/handed-file.ts';
import { askForward, takeLock } from '../files/lock.ts';
import type { Lock } from '../files/lock.ts';
import { saveWithoutDialog } from '../files/save-into.ts';
import { leaveMemoryOutOfDumps } from '../no-dumps.ts';
import { openBackend } from '../open-backend.ts';
import { systemTold } from '../told.ts';
import { keepSize, rememberedSize } from '../window-size.ts';
import { profileFolder } from '../window-profile.ts';
import type { CameraTicket } from '../window-policy.ts';
import { ELECTRON_ORIGIN } from '../window-policy.ts';
import { emit, setupIpc } from './ipc.ts';
import { memorySession, setupEngineFolders, wipeAtEnd } from './memory-only.ts';
import { setupMenu } from './menu.ts';
import { setupPermissions } from './permissions.ts';
import { desktopPort } from './desktop-port.ts';
import { setupPower } from './power.ts';
import { registerScheme, setupNoNetwork, setupScheme } from './scheme.ts';
import { askBeforeClosing, comeForward, openWindow, reopenAfterCrash } from './window.ts';

export async function main(argv: readonly string[]): Promise<void> {
  leaveMemoryOutOfDumps();
  registerScheme();
  app.enableSandbox();
  const at = argv.indexOf('--data');
  const asked = at === -1 ? null : (argv[at + 1] ?? '');
  const folder = dataFolder(asked, thisMachine());
  // What Chromium keeps about itself lies beside the caseload; the page's own session is in memory only.
  app.setPath('userData', profileFolder(folder));

  const handed = new Handed(argv.slice(1));
  // macOS tells of a double click by an event, also before the program is ready.
  app.on('open-file', (event, file) => {
    event.preventDefault();
    handed.take(file);
  });
  const lock = await lockOrExplain(folder, handed.waiting);
  if (!lock) return app.quit();
  const engineFolders = setupEngineFolders(folder);
  await app.whenReady();

  const root = app.getAppPath();
  const ticket: CameraTicket = { open: false };
  let window: BrowserWindow | null = null;
  const port = desktopPort(() => window!, ticket, saveWithoutDialog(process.env['FAIRHAND_SAVE_DIR']));
  const backend = openBackend({
    folder,
    port,
    shell: 'electron',
    appRoot: root,
    emit: (json) => emit(window, json),
  });

  const ours = memorySession();
  setupScheme(ours, backend, path.join(root, 'dist', 'renderer'));
  setupNoNetwork(ours);
  setupPermissions(ours, ticket);
  setupMenu(process.platform, systemTold().system);
  setupPower(backend);

  window = openWindow(path.join(import.meta.dirname, 'preload.cjs'), rememberedSize(folder));
  setupIpc(window, backend);
  askBeforeClosing(window, () => backend.told().system);
  reopenAfterCrash(window, () => backend.lock('asked'));
  const opened = window;
  opened.on('resized', () => {
    const [width = 0, height = 0] = opened.getSize();
    keepSize(folder, { width, height });
  });
  handed.to((file) => backend.offer(file));
  lock.onForward((file) => {
    comeForward(opened);
    handed.take(file);
  });
  app.on('window-all-closed', () => app.quit());
  app.on('will-quit', (event) => {
    event.preventDefault();
    void backend.close().finally(() => {
      wipeAtEnd(engineFolders);
      lock.release();
      app.exit(0);
    });
  });
  await window.loadURL(`${ELECTRON_ORIGIN}/index.html`);
}

async function lockOrExplain(folder: string, file: string | null): Promise<Lock | null> {
  try {
    const lock = takeLock(folder);
    if (!lock) askForward(folder, file);
    return lock;
  } catch {
    await app.whenReady();
    const { cannotStart, cannotWriteInto } = systemTold().system;
    dialog.showErrorBox(cannotStart, cannotWriteInto(folder));
    return null;
  }
}
