import { mkdtempSync, mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { WindowSource } from '../../electron/window-files.ts';
import { answer } from '../../electron/window-files.ts';
import { BROWSER_ORIGIN } from '../../electron/window-policy.ts';

let root: string;
beforeAll(() => {
  root = path.join(mkdtempSync(path.join(tmpdir(), 'fairhand-files-')), 'window');
  mkdirSync(root);
  writeFileSync(path.join(root, 'index.html'), '<!doctype html><body></body>');
  writeFileSync(path.join(root, '..', 'secret.txt'), 'secret');
});
afterAll(() => rmSync(path.dirname(root), { recursive: true, force: true }));

const source: WindowSource = {
  call: async (json) => JSON.stringify({ ok: true, value: { asked: json, clinic: '</script><b>$&' } }),
  readBlob(id) {
    if (id === 'locked') throw new Error('the caseload is locked');
    if (id === 'page') return { bytes: new TextEncoder().encode('<script>'), mime: 'text/html' };
    return id === 'scan' ? { bytes: new Uint8Array([9]), mime: 'image/png' } : null;
  },
  stageBlob(bytes) {
    if (bytes[0] === 255) throw new Error('the caseload is locked');
    return `token-${bytes.byteLength}`;
  },
};

const ask = (url: string, method = 'GET', body: Uint8Array | null = null) =>
  answer(
    { method, url: url.startsWith('/') ? BROWSER_ORIGIN + url : url, body: async () => body },
    source,
    BROWSER_ORIGIN,
    root,
  );

test('the page is served with its policy', async () => {
  const reply = await ask('/');
  expect(reply.status).toBe(200);
  expect(reply.headers['content-type']).toMatch('text/html');
  expect(reply.headers['content-security-policy']).toMatch("default-src 'none'");
});

test('the page brings the state of the caseload, as data that cannot end its element', async () => {
  const page = new TextDecoder().decode((await ask('/index.html')).body);
  const brought = /<script type="application\/json" id="first-status">(.*?)<\/script><\/body>/.exec(page)?.[1] ?? '';
  expect(brought).not.toContain('<');
  expect(JSON.parse(brought)).toEqual({
    ok: true,
    value: { asked: '{"name":"app.status","input":{}}', clinic: '</script><b>$&' },
  });
});

test('a missing file and a path outside are not served', async () => {
  expect((await ask('/none.js')).status).toBe(404);
  const outside = await ask('/..%2fsecret.txt');
  expect(outside.status).toBe(403);
  expect(outside.body).toHaveLength(0);
});

test('a foreign address gets 204, so that the page stays', async () => {
  expect((await ask('https://example.com/')).status).toBe(204);
});

test('a blob is served as what it is, and never as a page', async () => {
  expect((await ask('/blob/scan')).headers['content-type']).toBe('image/png');
  expect((await ask('/blob/page')).headers['content-type']).toBe('application/octet-stream');
  expect((await ask('/blob/none')).status).toBe(404);
});

test('a locked caseload gives no blob and takes none, without a crash', async () => {
  expect((await ask('/blob/locked')).status).toBe(404);
  expect((await ask('/blob', 'POST', new Uint8Array([255]))).status).toBe(503);
});

test('an upload answers its token; one without bytes is refused', async () => {
  const reply = await ask('/blob', 'POST', new Uint8Array(5));
  expect(JSON.parse(new TextDecoder().decode(reply.body))).toEqual({ token: 'token-5' });
  expect((await ask('/blob', 'POST', null)).status).toBe(400);
});
