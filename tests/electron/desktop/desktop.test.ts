/** Electron's security checklist, item by item, on the options and handlers that the adapter really sets. */
import { toldEnglish } from '../../../renderer/logic/texts/screens/told-english.ts';
import { mkdtempSync, mkdirSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import type { BrowserWindow, Session } from 'electron';
import { beforeEach, describe, expect, test, vi } from 'vitest';
import * as fake from './fake-electron.ts';

vi.mock('electron', () => import('./fake-electron.ts'));

const { emit, setupIpc } = await import('../../../electron/desktop/ipc.ts');
const { setupMenu } = await import('../../../electron/desktop/menu.ts');
const { setupPermissions } = await import('../../../electron/desktop/permissions.ts');
const { desktopKeyStore } = await import('../../../electron/desktop/electron-key-store.ts');
const { desktopPort } = await import('../../../electron/desktop/desktop-port.ts');
const { setupPower } = await import('../../../electron/desktop/power.ts');
const { registerScheme, setupNoNetwork, setupScheme } = await import('../../../electron/desktop/scheme.ts');
const { comeForward, openWindow, PARTITION, windowOptions } = await import('../../../electron/desktop/window.ts');
const { CALL, EVENT } = await import('../../../electron/desktop/ipc-channels.ts');

const page = 'fairhand://app/index.html';
const size = { width: 1280, height: 800 };
const asSession = (session: fake.FakeSession) => session as unknown as Session;
const newWindow = () => openWindow('/app/preload.cjs', size) as unknown as fake.BrowserWindow;
const asWindow = (window: fake.BrowserWindow) => window as unknown as BrowserWindow;

beforeEach(() => {
  fake.ipcMain.handlers.clear();
});

describe('the window', () => {
  test('is sandboxed, isolated, without Node, and weakens nothing', () => {
    expect(windowOptions('/app/preload.cjs', size).webPreferences).toEqual({
      preload: '/app/preload.cjs',
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
    });
  });

  test('keeps its page’s session in memory only', () => {
    expect(PARTITION.startsWith('persist:')).toBe(false);
  });

  test('shows itself when its first picture is ready', () => {
    const window = newWindow();
    expect(window.options['show']).toBe(false);
    window.fire('ready-to-show');
    expect(window.calls).toEqual(['show']);
  });

  test('neither navigates away, nor lets frames load, nor follows redirects, nor hosts web views', () => {
    const { webContents } = newWindow();
    const stopped = (name: string, details: object) => {
      const event = { ...details, preventDefault: vi.fn() };
      webContents.fire(name, event);
      return event.preventDefault.mock.calls.length === 1;
    };
    expect(stopped('will-frame-navigate', { url: 'https://example.com/', isMainFrame: true })).toBe(true);
    expect(stopped('will-frame-navigate', { url: page, isMainFrame: false })).toBe(true);
    expect(stopped('will-frame-navigate', { url: page, isMainFrame: true })).toBe(false);
    expect(stopped('will-redirect', { url: page })).toBe(true);
    expect(stopped('will-attach-webview', {})).toBe(true);
  });

  test('opens no further window, not even its own page', () => {
    const { openHandler } = newWindow().webContents;
    expect(openHandler?.({ url: 'https://example.com/' })).toEqual({ action: 'deny' });
    expect(openHandler?.({ url: page })).toEqual({ action: 'deny' });
  });

  test('comes forward for a second start', () => {
    const window = newWindow();
    comeForward(asWindow(window));
    expect(window.calls).toEqual(['restore', 'show', 'focus']);
  });
});

describe('the scheme', () => {
  const root = mkdtempSync(path.join(tmpdir(), 'fairhand-scheme-'));
  writeFileSync(path.join(root, 'index.html'), '<!doctype html>');
  const staged: number[] = [];
  setupScheme(
    asSession(fake.theSession),
    { call: async () => '{}', readBlob: () => null, stageBlob: (bytes) => `t${staged.push(bytes.byteLength)}` },
    root,
  );
  const ask = (request: Request) => fake.theSession.schemes.get('fairhand')!(request);

  test('is standard and secure, and takes no file:// privilege', () => {
    registerScheme();
    expect(fake.privileged).toEqual([
      { scheme: 'fairhand', privileges: { standard: true, secure: true, supportFetchAPI: true, stream: true } },
    ]);
  });

  test('serves the page with its policy', async () => {
    const reply = await ask(new Request(page));
    expect(reply.status).toBe(200);
    expect(reply.headers.get('content-security-policy')).toMatch("default-src 'none'");
    expect(await reply.text()).toBe('<!doctype html>');
  });

  test('takes an upload', async () => {
    const reply = await ask(new Request('fairhand://app/blob', { method: 'POST', body: new Uint8Array(9) }));
    expect(await reply.json()).toEqual({ token: 't1' });
    expect(staged).toEqual([9]);
  });

  test('refuses an upload that announces more than the cap', async () => {
    const request = new Request('fairhand://app/blob', {
      method: 'POST',
      body: new Uint8Array(1),
      headers: { 'content-length': '99999999999' },
    });
    expect((await ask(request)).status).toBe(400);
  });

  test('is all that the page reaches: every other request is cancelled', () => {
    setupNoNetwork(asSession(fake.theSession));
    const cancelled = (url: string) => {
      let answer = { cancel: false };
      fake.theSession.before?.({ url }, (given) => (answer = given));
      return answer.cancel;
    };
    for (const url of ['https://example.com/', 'file:///etc/passwd', 'ws://x/', 'devtools://x/', 'fairhand://other/']) {
      expect(cancelled(url)).toBe(true);
    }
    for (const url of [page, 'blob:fairhand://app/1', 'data:image/png;base64,']) expect(cancelled(url)).toBe(false);
  });
});

describe('permissions', () => {
  const ticket = { open: false };
  setupPermissions(asSession(fake.theSession), ticket);
  const granted = (permission: string, details: object) => {
    let answer: unknown;
    fake.theSession.request?.(null, permission, (given: unknown) => (answer = given), details);
    return answer;
  };
  const main = { requestingUrl: page, isMainFrame: true };

  test('requests and checks are denied', () => {
    for (const permission of ['geolocation', 'notifications', 'media', 'openExternal', 'fileSystem']) {
      expect(granted(permission, main)).toBe(false);
      expect(fake.theSession.check?.(null, permission, page, main)).toBe(false);
    }
    expect(fake.theSession.device?.({})).toBe(false);
  });

  test('the camera is granted once for one ticket', () => {
    ticket.open = true;
    expect(granted('media', { ...main, mediaTypes: ['video'] })).toBe(true);
    expect(granted('media', { ...main, mediaTypes: ['video'] })).toBe(false);
  });
});

describe('requests', () => {
  const call = vi.fn(async (json: string) => `answer to ${json}`);
  const setup = () => {
    const window = newWindow();
    setupIpc(asWindow(window), { call });
    call.mockClear();
    return { window, handler: fake.ipcMain.handlers.get(CALL)! };
  };

  test('of the page’s main frame are carried', async () => {
    const { window, handler } = setup();
    const event = { sender: window.webContents, senderFrame: { url: page, parent: null } };
    expect(await handler(event, '{"name":"x"}')).toBe('answer to {"name":"x"}');
  });

  test('of anybody else are refused and reach nothing', async () => {
    const { window, handler } = setup();
    const events = [
      { sender: window.webContents, senderFrame: { url: page, parent: {} } },
      { sender: window.webContents, senderFrame: { url: 'https://example.com/', parent: null } },
      { sender: window.webContents, senderFrame: null },
      { sender: {}, senderFrame: { url: page, parent: null } },
    ];
    for (const event of events) expect(JSON.parse(String(await handler(event, '{}')))).toMatchObject({ ok: false });
    const own = { sender: window.webContents, senderFrame: { url: page, parent: null } };
    expect(JSON.parse(String(await handler(own, { name: 'an object' })))).toMatchObject({ ok: false });
    expect(call).not.toHaveBeenCalled();
  });

  test('an event goes to a standing window only', () => {
    const { window } = setup();
    emit(asWindow(window), '{"kind":"closing"}');
    expect(window.webContents.sent).toEqual([[EVENT, '{"kind":"closing"}']]);
    window.destroyed = true;
    emit(asWindow(window), '{}');
    emit(null, '{}');
    expect(window.webContents.sent).toHaveLength(1);
  });
});

test('the page gets `call` and `onEvent`, and never Electron’s own event', async () => {
  await import('../../../electron/desktop/preload.ts');
  expect([...fake.contextBridge.exposed.keys()]).toEqual(['fairhand']);
  const doors = fake.contextBridge.exposed.get('fairhand') as {
    call(json: unknown): Promise<string>;
    onEvent(listener: (...args: unknown[]) => void): void;
  };
  expect(Object.keys(doors)).toEqual(['call', 'onEvent']);
  expect(await doors.call('{}')).toBe('answer');
  expect(fake.ipcRenderer.invoked).toEqual([[CALL, '{}']]);
  const listener = vi.fn();
  doors.onEvent(listener);
  fake.ipcRenderer.fire(EVENT, { sender: 'secret' }, '{"kind":"closing"}');
  expect(listener.mock.calls).toEqual([['{"kind":"closing"}']]);
});

describe('dialogs and printing', () => {
  const folder = mkdtempSync(path.join(tmpdir(), 'fairhand-dialogs-'));
  const ticket = { open: false };
  const window = newWindow();
  const port = desktopPort(() => asWindow(window), ticket, null);

  test('a picked file is read once it is asked for, up to the cap', async () => {
    const file = path.join(folder, 'scan.png');
    writeFileSync(file, 'bytes');
    fake.dialog.open = { canceled: false, filePaths: [file] };
    const opened = await port.chooseOpen({ title: 'Choose a page', endings: ['png'], maxBytes: 100 });
    expect(opened?.name).toBe('scan.png');
    expect(opened?.token).not.toContain(folder);
    expect(Buffer.from(await opened!.read()).toString()).toBe('bytes');
    const tooLarge = await port.chooseOpen({ title: 'Choose a page', endings: [], maxBytes: 1 });
    await expect(tooLarge!.read()).rejects.toThrow(RangeError);
    fake.dialog.open = { canceled: true, filePaths: [] };
    expect(await port.chooseOpen({ title: 'Choose a page', endings: [], maxBytes: 1 })).toBeNull();
  });

  test('a save is whole or not there', async () => {
    const place = path.join(folder, 'summary.pdf');
    const save = () =>
      port.chooseSave({ suggestedName: 'summary.pdf', bytes: Buffer.from('pdf'), mime: 'application/pdf' });
    expect(await save()).toEqual({ saved: false, name: null });
    fake.dialog.save = { canceled: false, filePath: place };
    expect(await save()).toEqual({ saved: true, name: 'summary.pdf' });
    expect(readFileSync(place, 'utf8')).toBe('pdf');
    mkdirSync(path.join(folder, 'taken'));
    fake.dialog.save = { canceled: false, filePath: path.join(folder, 'taken') };
    await expect(save()).rejects.toThrow();
    expect(readdirSync(folder).filter((name) => name.endsWith('.part'))).toEqual([]);
    rmSync(folder, { recursive: true });
  });

  test('the page prints by its own style sheet, to a file or on paper', async () => {
    expect(Buffer.from(await port.printPdf({ pageSize: 'Letter' })).toString()).toBe('%PDF-1.4');
    expect(window.webContents.printed).toEqual({
      pageSize: 'Letter',
      preferCSSPageSize: true,
      printBackground: true,
      generateTaggedPDF: true,
      generateDocumentOutline: true,
    });
    await port.printPaper();
    window.webContents.printAnswer = [false, 'Print job canceled'];
    await port.printPaper();
    window.webContents.printAnswer = [false, 'Invalid printer settings'];
    await expect(port.printPaper()).rejects.toThrow();
  });

  test('the camera ticket closes by itself', async () => {
    vi.useFakeTimers();
    await port.allowCameraOnce();
    expect(ticket.open).toBe(true);
    vi.advanceTimersByTime(120_001);
    expect(ticket.open).toBe(false);
    vi.useRealTimers();
  });
});

test('the key store is Electron’s safeStorage; its plain-text fallback is not even woken', async () => {
  const store = desktopKeyStore('linux');
  expect(await store.state()).toBe('usable');
  expect(Buffer.from(await store.seal('secret')).toString()).toBe('sealed secret');
  expect(await store.open(Buffer.from('sealed secret'))).toBe('secret');
  fake.safeStorage.calls = [];
  fake.safeStorage.backend = 'basic_text';
  expect(await store.state()).toBe('plain-text');
  expect(fake.safeStorage.calls).toEqual([]);
  fake.safeStorage.available = false;
  expect(await desktopKeyStore('darwin').state()).toBe('none');
});

test('a sleeping or locked machine locks the caseload', () => {
  const lock = vi.fn();
  setupPower({ lock });
  fake.powerMonitor.fire('suspend');
  fake.powerMonitor.fire('lock-screen');
  expect(lock.mock.calls).toEqual([['sleep'], ['sleep']]);
});

test('the menu offers no developer tools, no reload and no web page', () => {
  setupMenu('linux', toldEnglish.system);
  const text = JSON.stringify(fake.Menu.template);
  for (const word of ['toggleDevTools', 'reload', 'forceReload', 'help', 'http']) expect(text).not.toContain(word);
});

test('no source hands an address to the system or turns a protection off', () => {
  const folder = fileURLToPath(new URL('../../../electron/desktop', import.meta.url));
  const sources = readdirSync(folder).map((name) => readFileSync(path.join(folder, name), 'utf8'));
  for (const word of [
    'openExternal',
    'webSecurity: false',
    'enableBlinkFeatures',
    '@electron/remote',
    'executeJavaScript',
    'setUsePlainTextEncryption',
  ]) {
    expect(sources.filter((text) => text.includes(word))).toEqual([]);
  }
});
