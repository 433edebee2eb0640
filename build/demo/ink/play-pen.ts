/** Sends invented or kept ink into a window as a pen driver would, by the browser's own test protocol (CDP). */
import type { Page } from 'playwright-core';
import type { InkDocument } from '../../../renderer/ink/index.ts';

export interface PlayOptions {
  pxPerMm: number;
  /** Without it every sample has the same force, as of a pen that tells none. */
  withPressure: boolean;
  /** Ends the contact after its last sample; left out: true. */
  lift?: boolean;
  /** Moves the ink on the sheet, mm. */
  by?: { x: number; y: number };
}

/** How far the events run ahead of their own times, ms. */
const AHEAD_MS = 200;

/**
 * Plays in real time: each event with its own time, none waited for.
 * @returns how many events were sent
 */
export async function playPen(page: Page, ink: InkDocument, options: PlayOptions): Promise<number> {
  const { pxPerMm, withPressure, lift = true, by = { x: 0, y: 0 } } = options;
  const cdp = await page.context().newCDPSession(page);
  const zero = ink.traces[0]?.t?.[0] ?? 0;
  const start = Date.now() + AHEAD_MS;
  const sending: Promise<unknown>[] = [];
  let sent = 0;
  const send = (params: Parameters<typeof cdp.send<'Input.dispatchMouseEvent'>>[1]): void => {
    sending.push(cdp.send('Input.dispatchMouseEvent', params));
    sent += 1;
  };
  for (const [n, { kind, x, y, t, force }] of ink.traces.entries()) {
    for (let i = 0; i < x.length; i += 1) {
      const wait = start + t![i]! - zero - AHEAD_MS - Date.now();
      if (wait > 4) await new Promise((resolve) => setTimeout(resolve, wait));
      const isDown = kind === 'down';
      const wasDown = i > 0 ? isDown : ink.traces[n - 1]?.kind === 'down';
      const type = isDown && i === 0 ? 'mousePressed' : !isDown && i === 0 && wasDown ? 'mouseReleased' : 'mouseMoved';
      send({
        type,
        x: (x[i]! + by.x) * pxPerMm,
        y: (y[i]! + by.y) * pxPerMm,
        timestamp: (start + t![i]! - zero) / 1000,
        pointerType: 'pen',
        button: type === 'mouseMoved' && !isDown ? 'none' : 'left',
        buttons: isDown ? 1 : 0,
        clickCount: 1,
        ...(withPressure ? { force: force?.[i] ?? 0.5, tiltX: 30, tiltY: -12 } : { force: 0.5 }),
      });
    }
    // Without hover, the pen is lifted where it was last.
    const isLast = n === ink.traces.length - 1;
    if (kind === 'down' && x.length > 0 && (isLast ? lift : ink.traces[n + 1]!.kind === 'down')) {
      const i = x.length - 1;
      send({
        type: 'mouseReleased',
        x: (x[i]! + by.x) * pxPerMm,
        y: (y[i]! + by.y) * pxPerMm,
        timestamp: (start + t![i]! - zero + 1) / 1000,
        pointerType: 'pen',
        button: 'left',
        buttons: 0,
        clickCount: 1,
      });
    }
  }
  await Promise.all(sending);
  return sent;
}
