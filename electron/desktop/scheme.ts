/** The app's own scheme and everything that travels over it; no file:// page and no network is ever needed. */
import { protocol } from 'electron';
import type { Session } from 'electron';
import type { WindowSource, WindowRequest } from '../window-files.ts';
import { answer } from '../window-files.ts';
import { ELECTRON_ORIGIN, ELECTRON_SCHEME, isOwnUrl, MAX_UPLOAD_BYTES } from '../window-policy.ts';

/** Must run before the app is ready. `standard` gives the scheme an origin, `secure` the same rights as https. */
export function registerScheme(): void {
  protocol.registerSchemesAsPrivileged([
    { scheme: ELECTRON_SCHEME, privileges: { standard: true, secure: true, supportFetchAPI: true, stream: true } },
  ]);
}

async function bodyOf(request: Request): Promise<Uint8Array | null> {
  const announced = Number(request.headers.get('content-length') ?? 0);
  if (announced > MAX_UPLOAD_BYTES) return null;
  return request.body ? new Uint8Array(await request.arrayBuffer()) : null;
}

/** Serves the built window and the blobs to this session. */
export function setupScheme(session: Session, source: WindowSource, root: string): void {
  session.protocol.handle(ELECTRON_SCHEME, async (request) => {
    const asked: WindowRequest = { method: request.method, url: request.url, body: () => bodyOf(request) };
    const reply = await answer(asked, source, ELECTRON_ORIGIN, root);
    const body = reply.status === 204 ? null : new Uint8Array(reply.body);
    return new Response(body, { status: reply.status, headers: reply.headers });
  });
}

/** Cancels every request that does not stay inside the page, before it is made. */
export function setupNoNetwork(session: Session): void {
  session.webRequest.onBeforeRequest((details, callback) => {
    const inside = isOwnUrl(details.url, ELECTRON_ORIGIN) || /^(blob:fairhand:|data:)/.test(details.url);
    callback({ cancel: !inside });
  });
}
