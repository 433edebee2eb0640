/** Answers every request of the Chromium window from disk and from the caseload; nothing else is ever reached. */
import type { BrowserContext, Page, Request, Route } from 'playwright-core';
import type { WindowSource } from '../window-files.ts';
import { answer } from '../window-files.ts';
import { BROWSER_ORIGIN } from '../window-policy.ts';

/** Reads the bytes that the page sent along. The page sends buffers, never files: Chromium keeps files to itself. */
async function bodyOf(request: Request): Promise<Uint8Array | null> {
  const body = request.postDataBuffer();
  return body ? new Uint8Array(body.buffer, body.byteOffset, body.byteLength) : null;
}

async function fulfill(route: Route, source: WindowSource, root: string): Promise<void> {
  const request = route.request();
  const reply = await answer(
    { method: request.method(), url: request.url(), body: () => bodyOf(request) },
    source,
    BROWSER_ORIGIN,
    root,
  );
  try {
    await route.fulfill({
      status: reply.status,
      headers: reply.headers,
      body: Buffer.from(reply.body.buffer, reply.body.byteOffset, reply.body.byteLength),
    });
  } catch {
    // The page was closed while its answer was on the way.
  }
}

/**
 * Serves the built window and the blobs, and keeps the window alone: any further page is closed at once.
 * @param root absolute folder of the built window (dist/renderer)
 */
export async function serve(context: BrowserContext, page: Page, source: WindowSource, root: string): Promise<void> {
  await context.route('**/*', (route) => fulfill(route, source, root));
  context.on('page', (other) => {
    if (other !== page) void other.close().catch(() => undefined);
  });
}
