/** Runs sandboxed before the page: gives it two doors, and no part of Electron. */
import { contextBridge, ipcRenderer } from 'electron';
import { CALL, EVENT } from './ipc-channels.ts';

contextBridge.exposeInMainWorld('fairhand', {
  call: (json: string): Promise<string> => ipcRenderer.invoke(CALL, String(json)),
  onEvent: (listener: (json: string) => void): void => {
    // The event object itself would hand the page a way to the shell.
    ipcRenderer.on(EVENT, (_event, json: unknown) => listener(String(json)));
  },
});
