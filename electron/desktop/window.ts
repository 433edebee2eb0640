/** The window itself: what its page may be, and that it can neither leave nor multiply. */
import type { Told } from '../../renderer/logic/texts/screens/en/screens-en.ts';
import { BrowserWindow, dialog } from 'electron';
import type { BrowserWindowConstructorOptions, WebContents } from 'electron';
import { ELECTRON_ORIGIN, mayNavigate } from '../window-policy.ts';
import type { WindowSize } from '../window-size.ts';

/** A session in memory only: cookies, storage and caches of the page never reach the disk. */
export const PARTITION = 'fairhand';

/** The window's options, Electron's security checklist spelled out even where it is the default. */
export function windowOptions(preload: string, size: WindowSize): BrowserWindowConstructorOptions {
  return {
    ...size,
    minWidth: 480,
    minHeight: 400,
    title: 'Fairhand',
    show: false,
    backgroundColor: '#fbf8f1',
    webPreferences: {
      preload,
      partition: PARTITION,
      sandbox: true,
      contextIsolation: true,
      nodeIntegration: false,
      nodeIntegrationInWorker: false,
      nodeIntegrationInSubFrames: false,
      webSecurity: true,
      allowRunningInsecureContent: false,
      experimentalFeatures: false,
      webviewTag: false,
      navigateOnDragDrop: false,
      spellcheck: false,
      devTools: false,
    },
  };
}

/** Refuses navigation, redirects, frames, web views and new windows. No address is ever handed to the system. */
function guard(contents: WebContents): void {
  contents.on('will-frame-navigate', (event) => {
    if (!event.isMainFrame || !mayNavigate(event.url, ELECTRON_ORIGIN)) event.preventDefault();
  });
  contents.on('will-redirect', (event) => event.preventDefault());
  contents.on('will-attach-webview', (event) => event.preventDefault());
  contents.setWindowOpenHandler(() => ({ action: 'deny' }));
}

/** Makes the guarded window; it shows itself when its first picture is ready, so nothing flashes. */
export function openWindow(preload: string, size: WindowSize): BrowserWindow {
  const window = new BrowserWindow(windowOptions(preload, size));
  guard(window.webContents);
  window.once('ready-to-show', () => window.show());
  return window;
}

/** A page that breaks down again and again is not opened again more often than this. */
const CRASHES = 3;

/** A page that broke down is locked and shown anew; what was saved is safe. */
export function reopenAfterCrash(window: BrowserWindow, lock: () => void): void {
  let crashes = 0;
  window.webContents.on('render-process-gone', (_event, { reason }) => {
    if (reason === 'clean-exit' || window.isDestroyed()) return;
    lock();
    if (++crashes > CRASHES) window.close();
    else window.webContents.reload();
  });
}

/** The page holds something that is not stored: the therapist decides whether it closes. */
export function askBeforeClosing(window: BrowserWindow, words: () => Told['system']): void {
  window.webContents.on('will-prevent-unload', (event) => {
    const said = words();
    const chosen = dialog.showMessageBoxSync(window, {
      type: 'warning',
      message: said.notSavedYet,
      detail: said.stayAndLook,
      buttons: [said.stay, said.closeWithoutIt],
      defaultId: 0,
      cancelId: 0,
    });
    // To prevent the page's own prevention is to close.
    if (chosen === 1) event.preventDefault();
  });
}

/** Brings the window to the front, for a second start on the same folder. */
export function comeForward(window: BrowserWindow): void {
  if (window.isMinimized()) window.restore();
  window.show();
  window.focus();
}
