import path from 'node:path';
import { describe, expect, test } from 'vitest';
import {
  BROWSER_ORIGIN,
  CONTENT_SECURITY_POLICY,
  ELECTRON_ORIGIN,
  isOwnUrl,
  mayNavigate,
  maySend,
  mayUse,
  responseHeaders,
  wanted,
} from '../../electron/window-policy.ts';

const root = path.resolve('/window');

describe('content security policy', () => {
  test('starts from nothing and adds files of our own origin only', () => {
    expect(CONTENT_SECURITY_POLICY).toMatch(/^default-src 'none';/);
    const sources = CONTENT_SECURITY_POLICY.split('; ').flatMap((rule) => rule.split(' ').slice(1));
    expect(new Set(sources)).toEqual(
      new Set(["'none'", "'self'", "'wasm-unsafe-eval'", "'unsafe-inline'", 'blob:', 'data:']),
    );
  });

  test('never lets text become script', () => {
    const script = CONTENT_SECURITY_POLICY.split('; ').find((rule) => rule.startsWith('script-src'));
    expect(script).toBe("script-src 'self' 'wasm-unsafe-eval'");
  });

  test('goes with every answer, which is never kept in a cache', () => {
    const headers = responseHeaders('text/html');
    expect(headers['content-security-policy']).toBe(CONTENT_SECURITY_POLICY);
    expect(headers['cache-control']).toBe('no-store');
    expect(headers['x-content-type-options']).toBe('nosniff');
  });
});

describe.each([BROWSER_ORIGIN, ELECTRON_ORIGIN])('addresses on %s', (origin) => {
  test.each(['/', '/index.html', '/assets/a.js', '/blob/x?y#z'])('%s is our own', (place) => {
    expect(isOwnUrl(origin + place, origin)).toBe(true);
  });

  test.each([
    'https://example.com/',
    'https://app.local.example.com/',
    'https://app.local:8443/',
    'http://app.local/',
    'https://user@app.local/',
    'fairhand://other/',
    'fairhand://app.evil/',
    'file:///etc/passwd',
    'javascript:alert(1)',
    'data:text/html,hello',
    'about:blank',
    'not an address',
    '',
  ])('%s is foreign', (url) => {
    expect(isOwnUrl(url, origin)).toBe(false);
    expect(mayNavigate(url, origin)).toBe(false);
    expect(wanted('GET', url, origin, root)).toEqual({ kind: 'foreign' });
  });

  test('a navigation goes to the page itself only', () => {
    expect(mayNavigate(`${origin}/index.html#client`, origin)).toBe(true);
    expect(mayNavigate(`${origin}/blob/scan`, origin)).toBe(false);
  });

  test('files come from the window folder', () => {
    expect(wanted('GET', `${origin}/`, origin, root)).toEqual({ kind: 'file', file: path.join(root, 'index.html') });
    expect(wanted('GET', `${origin}/assets/a%20b.js`, origin, root)).toEqual({
      kind: 'file',
      file: path.join(root, 'assets', 'a b.js'),
    });
  });

  test.each(['/..%2f..%2fetc/passwd', '/%2e%2e%2fsecret', '/a/..%2F..%2Fwindow-evil/x', '/a%00.js', '/..%5cx', '/%ff'])(
    '%s does not leave the window folder',
    (place) => {
      expect(['refused', 'file']).toContain(wanted('GET', origin + place, origin, root).kind);
      const want = wanted('GET', origin + place, origin, root);
      if (want.kind === 'file') expect(want.file.startsWith(root + path.sep)).toBe(true);
    },
  );

  test('blobs are named by id, uploads have one address, other methods are refused', () => {
    expect(wanted('GET', `${origin}/blob/3f-2`, origin, root)).toEqual({ kind: 'blob', id: '3f-2' });
    expect(wanted('POST', `${origin}/blob`, origin, root)).toEqual({ kind: 'upload' });
    expect(wanted('GET', `${origin}/blob`, origin, root)).toEqual({ kind: 'refused', status: 405 });
    expect(wanted('DELETE', `${origin}/blob/3f-2`, origin, root)).toEqual({ kind: 'refused', status: 405 });
  });
});

describe('who gets answers', () => {
  const sender = { url: `${BROWSER_ORIGIN}/index.html`, isMainFrame: true };

  test('the main frame of our own page', () => {
    expect(maySend(sender, BROWSER_ORIGIN)).toBe(true);
  });

  test('no frame inside it, no other page, nobody unknown', () => {
    expect(maySend({ ...sender, isMainFrame: false }, BROWSER_ORIGIN)).toBe(false);
    expect(maySend({ ...sender, url: 'https://example.com/' }, BROWSER_ORIGIN)).toBe(false);
    expect(maySend(null, BROWSER_ORIGIN)).toBe(false);
    expect(maySend(undefined, BROWSER_ORIGIN)).toBe(false);
  });
});

describe('permissions', () => {
  const page = { url: `${ELECTRON_ORIGIN}/index.html`, isMainFrame: true };
  const shut = { open: false };

  test.each([
    'geolocation',
    'notifications',
    'midi',
    'hid',
    'serial',
    'usb',
    'clipboard-read',
    'openExternal',
    'media',
  ])('%s is denied', (permission) => expect(mayUse(permission, page, shut, ELECTRON_ORIGIN)).toBe(false));

  test('copying text is allowed, for the page itself only', () => {
    expect(mayUse('clipboard-sanitized-write', page, shut, ELECTRON_ORIGIN)).toBe(true);
    expect(mayUse('clipboard-sanitized-write', { ...page, isMainFrame: false }, shut, ELECTRON_ORIGIN)).toBe(false);
  });

  test('the camera opens with a ticket, and never brings the microphone', () => {
    const open = { open: true };
    expect(mayUse('media', { ...page, mediaTypes: ['video'] }, open, ELECTRON_ORIGIN)).toBe(true);
    expect(mayUse('media', { ...page, mediaTypes: ['video', 'audio'] }, open, ELECTRON_ORIGIN)).toBe(false);
    expect(mayUse('media', { ...page, mediaTypes: [] }, open, ELECTRON_ORIGIN)).toBe(false);
    expect(mayUse('media', { ...page, url: 'https://x.test/', mediaTypes: ['video'] }, open, ELECTRON_ORIGIN)).toBe(
      false,
    );
  });
});
