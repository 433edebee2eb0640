/** Carries requests and events between page and backend; the sender is checked here, once. */
import { ipcMain } from 'electron';
import type { BrowserWindow, IpcMainInvokeEvent } from 'electron';
import type { Backend } from '../backend.ts';
import type { Envelope } from '../contract/envelope.ts';
import { ELECTRON_ORIGIN, maySend } from '../window-policy.ts';
import { CALL, EVENT } from './ipc-channels.ts';

const REFUSED = JSON.stringify({ ok: false, code: 'unknown-request' } satisfies Envelope);

/** Only the main frame of our own page in our own window gets answers. */
function isOurPage(event: IpcMainInvokeEvent, window: BrowserWindow): boolean {
  const frame = event.senderFrame;
  if (!frame || event.sender !== window.webContents) return false;
  return maySend({ url: frame.url, isMainFrame: frame.parent === null }, ELECTRON_ORIGIN);
}

export function setupIpc(window: BrowserWindow, backend: Pick<Backend, 'call'>): void {
  ipcMain.handle(CALL, async (event, json: unknown) => {
    if (!isOurPage(event, window) || typeof json !== 'string') return REFUSED;
    return backend.call(json);
  });
}

/** Tells the page something that it did not ask for. */
export function emit(window: BrowserWindow | null, json: string): void {
  if (window && !window.isDestroyed()) window.webContents.send(EVENT, json);
}
