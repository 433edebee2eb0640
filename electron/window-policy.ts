/**
 * What the window may do, as pure functions: one policy for both shells. A shell only carries the answers out.
 * Follows Electron's published security checklist (electronjs.org, "Security", twenty items) and applies the same
 * bar to the Chromium window.
 */
import path from 'node:path';

/** The page's own origin in the installed Chromium. The name never resolves: every request is answered by us. */
export const BROWSER_ORIGIN = 'https://app.local';

/** The page's own origin in Electron: a scheme of our own, so no file:// privileges are needed. */
export const ELECTRON_ORIGIN = 'fairhand://app';

export const ELECTRON_SCHEME = 'fairhand';

/** Uploads above this many bytes are refused before they are read. */
export const MAX_UPLOAD_BYTES = 512 * 1024 * 1024;

/**
 * The page's content security policy: nothing, then only files of our own origin. WASM needs its own word; pictures
 * may come from the page's own canvas (blob:, data:); styles set by script on elements are attributes, not sheets.
 */
export const CONTENT_SECURITY_POLICY = [
  "default-src 'none'",
  "script-src 'self' 'wasm-unsafe-eval'",
  "worker-src 'self'",
  "style-src 'self'",
  "style-src-attr 'unsafe-inline'",
  "img-src 'self' blob: data:",
  "font-src 'self'",
  "connect-src 'self'",
  "media-src 'self' blob:",
  "form-action 'none'",
  "base-uri 'none'",
  "frame-ancestors 'none'",
  "frame-src 'none'",
  "object-src 'none'",
].join('; ');

/**
 * Headers on every answer: isolated from other pages, never guessed at, never kept in a cache on disk. No opener
 * policy: neither shell lets a second window stand, and the policy would change processes after the answer is
 * there, a tenth of the start.
 */
export function responseHeaders(mime: string): Record<string, string> {
  return {
    'content-type': mime,
    'content-security-policy': CONTENT_SECURITY_POLICY,
    'cache-control': 'no-store',
    'x-content-type-options': 'nosniff',
    'referrer-policy': 'no-referrer',
    'cross-origin-embedder-policy': 'require-corp',
    'cross-origin-resource-policy': 'same-origin',
    'permissions-policy': 'camera=(self), microphone=(), geolocation=(), usb=(), serial=(), hid=(), payment=()',
  };
}

const MIME: Record<string, string> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.jpg': 'image/jpeg',
  '.webp': 'image/webp',
  '.woff2': 'font/woff2',
  '.otf': 'font/otf',
  '.woff': 'font/woff',
  '.ttf': 'font/ttf',
  '.wasm': 'application/wasm',
};

/** The media type of one of the window's own files, by its ending. */
export function mimeOf(file: string): string {
  return MIME[path.extname(file).toLowerCase()] ?? 'application/octet-stream';
}

/** What a request of the window asks for. */
export type Wanted =
  | { kind: 'file'; file: string }
  | { kind: 'blob'; id: string }
  | { kind: 'upload' }
  | { kind: 'foreign' }
  | { kind: 'refused'; status: number };

/** True when the address parses and lies exactly on our own origin (a prefix or a subdomain is not enough). */
export function isOwnUrl(url: string, origin: string): boolean {
  if (!URL.canParse(url)) return false;
  const parsed = new URL(url);
  const own = new URL(origin);
  return (
    parsed.protocol === own.protocol && parsed.host === own.host && parsed.username === '' && parsed.password === ''
  );
}

/**
 * Reads a request of the window.
 * @param root absolute folder of the built window; a path that leaves it is refused.
 */
export function wanted(method: string, url: string, origin: string, root: string): Wanted {
  if (!isOwnUrl(url, origin)) return { kind: 'foreign' };
  let pathname: string;
  try {
    pathname = decodeURIComponent(new URL(url).pathname);
  } catch {
    return { kind: 'refused', status: 400 };
  }
  if (pathname.includes('\0') || pathname.includes('\\')) return { kind: 'refused', status: 400 };
  if (pathname === '/blob') {
    return method === 'POST' || method === 'PUT' ? { kind: 'upload' } : { kind: 'refused', status: 405 };
  }
  if (method !== 'GET' && method !== 'HEAD') return { kind: 'refused', status: 405 };
  const blob = /^\/blob\/([A-Za-z0-9_-]{1,80})$/.exec(pathname);
  if (blob?.[1]) return { kind: 'blob', id: blob[1] };
  const file = path.resolve(root, `.${pathname === '/' ? '/index.html' : pathname}`);
  if (!file.startsWith(path.resolve(root) + path.sep)) return { kind: 'refused', status: 403 };
  return { kind: 'file', file };
}

/** Navigation, redirects and frames: only to our own page. */
export function mayNavigate(url: string, origin: string): boolean {
  if (!isOwnUrl(url, origin)) return false;
  const { pathname } = new URL(url);
  return pathname === '/' || pathname === '' || pathname === '/index.html';
}

/** Who sent a request to the shell. */
export interface Sender {
  url: string;
  isMainFrame: boolean;
}

/** Only the main frame of our own page gets answers. */
export function maySend(sender: Sender | null | undefined, origin: string): boolean {
  return sender != null && sender.isMainFrame && isOwnUrl(sender.url, origin);
}

/** A right to use the camera for one picture: given by a request of the page, used up by the first grant. */
export interface CameraTicket {
  open: boolean;
}

/**
 * Answers a permission request.
 * Copying text out is allowed; the camera once when a ticket is open (video only); everything else is denied.
 */
export function mayUse(
  permission: string,
  details: { url: string; isMainFrame: boolean; mediaTypes?: readonly string[] | undefined },
  ticket: CameraTicket,
  origin: string,
): boolean {
  if (!maySend(details, origin)) return false;
  if (permission === 'clipboard-sanitized-write') return true;
  if (permission === 'media' && ticket.open) {
    const types = details.mediaTypes ?? [];
    return types.length > 0 && types.every((type) => type === 'video');
  }
  return false;
}
