/** The browser shell by itself, on a page and a backend of the test's own: what it carries and what it refuses. */
import { expect, test } from '@playwright/test';
import {
  existsSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  readlinkSync as readLink,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Backend } from '../../electron/backend.ts';
import { findBrowser } from '../../electron/browser/find.js';
import { profileFolder } from '../../electron/window-profile.ts';
import type { Session } from '../../electron/browser/session.ts';
import { startSession } from '../../electron/browser/session.ts';
import type { ShellPort } from '../../electron/shell-port.ts';

const rendererFolder = fileURLToPath(new URL('./shell-page', import.meta.url));

interface Bridge {
  call(json: string): Promise<string>;
}

let session: Session;
let folder: string;
let port: ShellPort;
let tell: (json: string) => void;
const calls: string[] = [];
const staged: Uint8Array[] = [];

const backend: Backend = {
  call: async (json) => {
    calls.push(json);
    return JSON.stringify({ ok: true, value: json.length });
  },
  readBlob: (id) => (id === 'scan' ? { bytes: new Uint8Array([1, 2, 3]), mime: 'image/png' } : null),
  stageBlob: (bytes) => `${staged.push(bytes)}`,
  offer: () => undefined,
  close: async () => undefined,
};

test.describe.configure({ mode: 'serial' });

test.beforeAll(async () => {
  folder = mkdtempSync(path.join(tmpdir(), 'fairhand-shell-'));
  session = await startSession({
    dataFolder: folder,
    rendererFolder,
    executable: findBrowser()!,
    size: { width: 900, height: 700 },
    save: null,
    openBackend: async (givenPort, emit) => {
      port = givenPort;
      tell = emit;
      return backend;
    },
  });
  await expect(session.page.locator('#ready')).toHaveText('ready');
});

test.afterAll(async () => {
  await session?.close();
  rmSync(folder, { recursive: true, force: true });
});

test('a request reaches the backend as a string and its envelope returns', async () => {
  const answer = await session.page.evaluate(() =>
    (globalThis as unknown as { fairhand: Bridge }).fairhand.call('{"name":"x"}'),
  );
  expect(JSON.parse(answer)).toEqual({ ok: true, value: 12 });
  expect(calls.at(-1)).toBe('{"name":"x"}');
});

test('the page has two doors, and cannot replace them', async () => {
  const doors = await session.page.evaluate(() => {
    const scope = globalThis as unknown as Record<string, unknown>;
    try {
      scope['fairhand'] = null;
    } catch {
      // Modules are strict: the assignment throws, which is as good.
    }
    return { names: Object.keys(scope['fairhand'] as object), raw: typeof scope['__fairhandCall'] };
  });
  expect(doors).toEqual({ names: ['call', 'onEvent'], raw: 'undefined' });
});

test('an event of the shell reaches the page', async () => {
  tell('{"kind":"closing"}');
  await expect
    .poll(() => session.page.evaluate(() => (globalThis as unknown as { heard: string[] }).heard))
    .toEqual(['{"kind":"closing"}']);
});

test('bytes go both ways by address', async () => {
  const out = await session.page.evaluate(async () => {
    const bytes = new Uint8Array(2_000_000).fill(7);
    const up = await fetch('/blob', { method: 'POST', body: new Blob([bytes]) });
    const down = await fetch('/blob/scan');
    const none = await fetch('/blob/nothing');
    return {
      up: await up.json(),
      down: [...new Uint8Array(await down.arrayBuffer())],
      kept: down.headers.get('cache-control'),
      none: none.status,
    };
  });
  expect(out).toEqual({ up: { token: '1' }, down: [1, 2, 3], kept: 'no-store', none: 404 });
  expect(staged[0]).toHaveLength(2_000_000);
  expect(staged[0]?.every((byte) => byte === 7)).toBe(true);
});

test('a picture picked from the disk arrives whole', async () => {
  const file = path.join(folder, 'scan.png');
  const bytes = Buffer.alloc(9_000_001, 'a written page ');
  writeFileSync(file, bytes);
  await session.page.evaluate(() => {
    const input = document.createElement('input');
    input.type = 'file';
    document.body.append(input);
  });
  await session.page.locator('input[type=file]').setInputFiles(file);
  const status = await session.page.evaluate(async () => {
    const input = document.querySelector<HTMLInputElement>('input[type=file]')!;
    const answer = await fetch('/blob', { method: 'POST', body: input.files![0]! });
    input.remove();
    return answer.status;
  });
  expect(status).toBe(200);
  expect(Buffer.from(staged.at(-1)!).equals(bytes)).toBe(true);
  rmSync(file);
});

test('a foreign navigation leaves the page standing', async () => {
  await session.page.evaluate(() => void (location.href = 'https://example.com/'));
  await session.page.waitForTimeout(400);
  expect(session.page.url()).toBe('https://app.local/index.html');
  await expect(session.page.locator('#ready')).toHaveText('ready');
});

test('nothing can be fetched from elsewhere', async () => {
  const outcome = await session.page.evaluate(() =>
    fetch('https://example.com/').then(
      (answer) => `status ${answer.status}`,
      () => 'refused',
    ),
  );
  expect(outcome).toBe('refused');
});

test('developer tools are closed as they open, and their keys do nothing', async () => {
  const browser = await session.context.browser()!.newBrowserCDPSession();
  await browser.send('Target.createTarget', { url: 'devtools://devtools/bundled/devtools_app.html' });
  const tools = async () => {
    const { targetInfos } = await browser.send('Target.getTargets', { filter: [{}] } as object);
    return targetInfos.filter(({ url }) => url.startsWith('devtools:')).length;
  };
  await expect.poll(tools).toBe(0);
  await session.page.evaluate(() => {
    const scope = globalThis as unknown as { left: string[] };
    scope.left = [];
    addEventListener('keydown', (pressed) => !pressed.defaultPrevented && scope.left.push(pressed.key));
  });
  for (const keys of ['Control+Shift+I', 'Control+Shift+J', 'Control+Shift+C', 'F12', 'Control+Shift+Delete']) {
    await session.page.keyboard.press(keys);
  }
  const left = await session.page.evaluate(() => (globalThis as unknown as { left: string[] }).left);
  expect(left.filter((key) => key !== 'Control' && key !== 'Shift')).toEqual([]);
  await browser.detach();
});

test('a new window is closed at once', async () => {
  await session.page.evaluate(() => void window.open('https://app.local/index.html')).catch(() => undefined);
  await expect.poll(() => session.context.pages().length).toBe(1);
  await expect(session.page.locator('#ready')).toHaveText('ready');
});

test('text cannot become script: inline script and eval are refused', async () => {
  const ran = await session.page.evaluate(() => {
    const script = document.createElement('script');
    script.textContent = 'globalThis.ran = true';
    document.body.append(script);
    return (globalThis as unknown as { ran?: boolean }).ran ?? false;
  });
  expect(ran).toBe(false);
});

test('a frame is not loaded and gets no answers', async () => {
  const before = calls.length;
  await session.page.evaluate(() => {
    const frame = document.createElement('iframe');
    frame.src = '/index.html';
    document.body.append(frame);
  });
  await session.page.waitForTimeout(400);
  for (const frame of session.page.frames()) {
    if (frame === session.page.mainFrame()) continue;
    const answer = await frame
      .evaluate(
        () => (globalThis as unknown as { fairhand?: Bridge }).fairhand?.call('{"name":"from a frame"}') ?? null,
      )
      .catch(() => null);
    if (answer !== null) expect(JSON.parse(answer)).toMatchObject({ ok: false });
  }
  expect(calls).toHaveLength(before);
});

test('microphone, place and messages are denied, the camera is asked for; copying text is allowed', async () => {
  const states = await session.page.evaluate(async () => {
    const ask = async (name: string) => (await navigator.permissions.query({ name: name as PermissionName })).state;
    return [await ask('camera'), await ask('microphone'), await ask('geolocation'), await ask('notifications')];
  });
  expect(states).toEqual(['prompt', 'denied', 'denied', 'denied']);
  await session.page.evaluate(() => navigator.clipboard.writeText('a visit note'));
});

test('no port is opened by the window or by us', async () => {
  test.skip(process.platform !== 'linux', 'reads /proc');
  expect(listeners(browserProcesses())).toEqual([]);
});

test('a picked file is read whole; a cancelled dialog gives nothing', async () => {
  const chooser = session.page.waitForEvent('filechooser');
  const picked = port.chooseOpen({ title: 'Choose', endings: ['png'], maxBytes: 10_000_000 });
  const bytes = Buffer.alloc(7_000_001, 'fairhand');
  await (await chooser).setFiles({ name: 'page.png', mimeType: 'image/png', buffer: bytes });
  const file = await picked;
  expect(file?.name).toBe('page.png');
  expect(Buffer.from(await file!.read()).equals(bytes)).toBe(true);

  const next = session.page.waitForEvent('filechooser');
  const cancelled = port.chooseOpen({ title: 'Choose', endings: [], maxBytes: 10 });
  await (await next).element().evaluate((input) => input.dispatchEvent(new Event('cancel')));
  expect(await cancelled).toBeNull();
});

test('a save goes where the therapist points, byte for byte', async () => {
  // The picker itself belongs to the desktop; here it answers with a file of the browser's own private store.
  await session.page.evaluate(() => {
    const scope = globalThis as unknown as { showSaveFilePicker(options: { suggestedName: string }): Promise<unknown> };
    scope.showSaveFilePicker = async ({ suggestedName }) =>
      (await navigator.storage.getDirectory()).getFileHandle(suggestedName, { create: true });
  });
  const bytes = new Uint8Array(4_000_003).map((_, index) => index % 251);
  expect(await port.chooseSave({ suggestedName: 'summary.pdf', bytes, mime: 'application/pdf' })).toEqual({
    saved: true,
    name: 'summary.pdf',
  });
  const sum = await session.page.evaluate(async () => {
    const store = await navigator.storage.getDirectory();
    const file = await (await store.getFileHandle('summary.pdf')).getFile();
    const read = new Uint8Array(await file.arrayBuffer());
    await store.removeEntry('summary.pdf');
    return { size: read.length, right: read.every((byte, index) => byte === index % 251) };
  });
  expect(sum).toEqual({ size: 4_000_003, right: true });
});

test('the page as it stands becomes a PDF', async () => {
  const pdf = await port.printPdf({ pageSize: 'A4' });
  expect(new TextDecoder().decode(pdf.subarray(0, 5))).toBe('%PDF-');
});

test('after the close nothing of the browser is left in the folder', async () => {
  await session.close();
  expect(existsSync(profileFolder(folder))).toBe(false);
  expect(readdirSync(folder)).toEqual([]);
});

/** The process ids of this window's browser: those whose command line names its profile, and their children. */
function browserProcesses(): number[] {
  return readdirSync('/proc')
    .filter((name) => /^\d+$/.test(name))
    .map(Number)
    .filter((pid) => {
      try {
        return readFileSync(`/proc/${pid}/cmdline`, 'utf8').includes(profileFolder(folder));
      } catch {
        return false;
      }
    });
}

/** TCP and UDP sockets of these processes and of our own that wait for somebody (state 0A listens; 07 is open UDP). */
function listeners(pids: number[]): string[] {
  const own = new Set<string>();
  for (const pid of [...pids, process.pid]) {
    for (const handle of readdirSync(`/proc/${pid}/fd`)) {
      try {
        const inode = /^socket:\[(\d+)\]$/.exec(readLink(`/proc/${pid}/fd/${handle}`))?.[1];
        if (inode) own.add(inode);
      } catch {
        // A handle that was closed while we looked.
      }
    }
  }
  expect(pids.length).toBeGreaterThan(0);
  return ['tcp', 'tcp6', 'udp', 'udp6'].flatMap((table) =>
    readFileSync(`/proc/net/${table}`, 'utf8')
      .split('\n')
      .slice(1)
      .map((line) => line.trim().split(/\s+/))
      .filter((fields) => own.has(fields[9] ?? '') && (fields[3] === '0A' || table.startsWith('udp')))
      .map((fields) => `${table} ${fields[1]}`),
  );
}
