/**
 * The twenty items of Electron's security checklist (electronjs.org, "Security", read in 2026), one test each, on what
 * the adapter really sets up. More about the same parts: desktop.test.ts, window-policy.test.ts, package.test.ts.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import type { BrowserWindow, Session } from 'electron';
import { beforeAll, expect, test, vi } from 'vitest';
import { ELECTRON_ORIGIN, responseHeaders } from '../../../electron/window-policy.ts';
import * as fake from './fake-electron.ts';

vi.mock('electron', () => import('./fake-electron.ts'));
const { setupIpc } = await import('../../../electron/desktop/ipc.ts');
const { setupPermissions } = await import('../../../electron/desktop/permissions.ts');
const { registerScheme, setupNoNetwork } = await import('../../../electron/desktop/scheme.ts');
const { SWITCHES } = await import('../../../electron/desktop/memory-only.ts');
const { openWindow } = await import('../../../electron/desktop/window.ts');
const { CALL } = await import('../../../electron/desktop/ipc-channels.ts');
await import('../../../electron/desktop/preload.ts');

const root = fileURLToPath(new URL('../../../', import.meta.url));
const folder = path.join(root, 'electron/desktop');
const sources = readdirSync(folder).map((name) => readFileSync(path.join(folder, name), 'utf8'));
const inNoSource = (pattern: RegExp) => expect(sources.filter((text) => pattern.test(text))).toEqual([]);
const { fuses, electron } = (() => {
  const require = createRequire(import.meta.url);
  const config = require(path.join(root, 'build/package/electron-builder.config.cjs')) as { electronFuses: object };
  const { devDependencies } = require(path.join(root, 'package.json')) as { devDependencies: Record<string, string> };
  return { fuses: config.electronFuses, electron: devDependencies['electron']! };
})();

const page = `${ELECTRON_ORIGIN}/index.html`;
const elsewhere = 'https://example.invalid/';
let window: fake.BrowserWindow;
let preferences: Record<string, unknown>;
beforeAll(() => {
  window = openWindow('/app/preload.cjs', { width: 1280, height: 800 }) as unknown as fake.BrowserWindow;
  preferences = window.options['webPreferences'] as Record<string, unknown>;
  setupNoNetwork(fake.theSession as unknown as Session);
  setupPermissions(fake.theSession as unknown as Session, { open: false });
});

/** Whether the window stops an event of its page. */
function stopped(name: string, details: object): boolean {
  const preventDefault = vi.fn();
  window.webContents.fire(name, { ...details, preventDefault });
  return preventDefault.mock.calls.length > 0;
}

test('1. only secure content is loaded: our own files, nothing over any network', () => {
  const cancelled = (url: string) => {
    let answer = false;
    fake.theSession.before?.({ url }, ({ cancel }) => (answer = cancel));
    return answer;
  };
  for (const url of ['http://example.invalid/', elsewhere, 'ws://x/', 'file:///etc/passwd']) {
    expect(cancelled(url), url).toBe(true);
  }
  expect(cancelled(page)).toBe(false);
});

test('2. Node is not integrated: page, workers and frames', () => {
  expect(preferences).toMatchObject({
    nodeIntegration: false,
    nodeIntegrationInWorker: false,
    nodeIntegrationInSubFrames: false,
  });
});

test('3. the preload script lives in a world of its own', () => {
  expect(preferences['contextIsolation']).toBe(true);
});

test('4. every process of the page is in the sandbox', () => {
  expect(preferences['sandbox']).toBe(true);
  expect(readFileSync(path.join(folder, 'main.ts'), 'utf8')).toMatch(/registerScheme\(\);\s+app\.enableSandbox\(\);/);
  inNoSource(/no-sandbox/);
});

test('5. permission requests, checks and devices are answered, with no', () => {
  const details = { requestingUrl: page, isMainFrame: true };
  for (const permission of ['media', 'geolocation', 'notifications', 'midi', 'usb', 'clipboard-read']) {
    let granted: unknown;
    fake.theSession.request?.(null, permission, (given: unknown) => (granted = given), details);
    expect(granted, permission).toBe(false);
    expect(fake.theSession.check?.(null, permission, page, details), permission).toBe(false);
  }
  expect(fake.theSession.device?.({})).toBe(false);
});

test('6. web security is on', () => {
  expect(preferences['webSecurity']).toBe(true);
  inNoSource(/webSecurity: false|disable-web-security/);
});

test('7. a content security policy starts from nothing', () => {
  const policy = responseHeaders('text/html')['content-security-policy'] ?? '';
  expect(policy).toMatch(/^default-src 'none'/);
  expect(policy).not.toMatch(/'unsafe-eval'|https?:|\*/);
  expect(policy).toContain("script-src 'self' 'wasm-unsafe-eval';");
});

test('8. no insecure content', () => expect(preferences['allowRunningInsecureContent']).toBe(false));

test('9. no experimental features', () => expect(preferences['experimentalFeatures']).toBe(false));

test('10. no features of the engine are switched on', () => {
  expect(preferences).not.toHaveProperty('enableBlinkFeatures');
  inNoSource(/enableBlinkFeatures|enable-blink-features|enable-features/);
  // The only switches are those that turn keeping off.
  for (const [name, value] of SWITCHES) expect(`${name}=${value ?? ''}`).toMatch(/^disable-|-cache-size=1$/);
});

test('11. there is no web view that could allow popups', () => {
  expect(preferences['webviewTag']).toBe(false);
  inNoSource(/allowpopups/);
});

test('12. a web view that is attached all the same is stopped', () => {
  expect(stopped('will-attach-webview', {})).toBe(true);
});

test('13. navigation stays on our page: links, redirects, frames', () => {
  expect(stopped('will-frame-navigate', { url: elsewhere, isMainFrame: true })).toBe(true);
  expect(stopped('will-frame-navigate', { url: page, isMainFrame: false })).toBe(true);
  expect(stopped('will-redirect', { url: elsewhere })).toBe(true);
  expect(stopped('will-frame-navigate', { url: page, isMainFrame: true })).toBe(false);
});

test('14. no new windows', () => {
  expect(window.webContents.openHandler?.({ url: elsewhere })).toEqual({ action: 'deny' });
});

test('15. no address is handed to the system', () => inNoSource(/openExternal|openPath/));

test('16. Electron is of a current major version', () => {
  // 45 was the newest when this was written; raise it with every update.
  expect(Number(electron.split('.')[0])).toBeGreaterThanOrEqual(45);
});

test('17. the sender of every message is checked', async () => {
  const call = vi.fn(async () => 'answer');
  setupIpc(window as unknown as BrowserWindow, { call });
  const handler = fake.ipcMain.handlers.get(CALL)!;
  for (const senderFrame of [null, { url: elsewhere, parent: null }, { url: page, parent: {} }]) {
    await handler({ sender: window.webContents, senderFrame }, '{}');
  }
  await handler({ sender: {}, senderFrame: { url: page, parent: null } }, '{}');
  expect(call).not.toHaveBeenCalled();
  expect([...fake.ipcMain.handlers.keys()]).toEqual([CALL]);
  inNoSource(/ipcMain\.on\(|ipcMain\.once\(/);
});

test('18. the page comes by a scheme of our own, not by file://', () => {
  registerScheme();
  expect(fake.privileged.at(-1)).toMatchObject({ scheme: new URL(page).protocol.slice(0, -1) });
  inNoSource(/'file:|loadFile\(/);
});

test('19. the fuses are set', () => {
  expect(fuses).toMatchObject({
    runAsNode: false,
    enableNodeOptionsEnvironmentVariable: false,
    enableNodeCliInspectArguments: false,
    enableEmbeddedAsarIntegrityValidation: true,
    onlyLoadAppFromAsar: true,
    grantFileProtocolExtraPrivileges: false,
  });
});

test('20. no part of Electron is given to the page: two functions that carry text', () => {
  const doors = fake.contextBridge.exposed.get('fairhand')!;
  expect([...fake.contextBridge.exposed.keys()]).toEqual(['fairhand']);
  expect(Object.keys(doors)).toEqual(['call', 'onEvent']);
  for (const door of Object.values(doors)) expect(String(door)).not.toMatch(/return ipcRenderer\b|=> ipcRenderer;/);
});
