/** Gives the page its two doors, `call` and `onEvent`, and nothing else. */
import type { BrowserContext, Page } from 'playwright-core';
import type { Envelope } from '../contract/envelope.ts';
import { BROWSER_ORIGIN, maySend } from '../window-policy.ts';

/** Answers one request: JSON in, the contract's envelope as JSON out. */
export type Call = (json: string) => Promise<string>;

const BINDING = '__fairhandCall';
const EVENT = 'fairhand-event';
const REFUSED = JSON.stringify({ ok: false, code: 'unknown-request' } satisfies Envelope);

/** Chromium's own keys for further windows, tabs, page source, page saving, bookmarks and its print preview. */
const BROWSER_KEYS = ['n', 't', 'w', 'u', 'p', 's', 'o', 'd', 'h', 'j', 'r', 'g'];
/** With Shift (Alt on macOS) as well: developer tools, their console and picker, bookmarks, clearing of data. */
const TOOL_KEYS = ['i', 'j', 'c', 'k', 'm', 'e', 'b', 'o', 'q', 'delete'];

/**
 * Runs in the page before its own scripts: wraps the raw binding into `window.fairhand` and locks it, so that a
 * later script can neither replace the doors nor reach behind them.
 */
function openDoors({
  binding,
  event,
  keys,
  tools,
}: Record<'binding' | 'event', string> & Record<'keys' | 'tools', string[]>): void {
  const scope = globalThis as unknown as Record<string, unknown>;
  const send = scope[binding] as ((json: string) => Promise<string>) | undefined;
  if (!send || scope['fairhand']) return;
  const doors = Object.freeze({
    call: (json: string) => send(String(json)),
    onEvent: (listener: (json: string) => void) => {
      addEventListener(event, (fired) => listener(String((fired as CustomEvent<string>).detail)));
    },
  });
  Object.defineProperty(scope, 'fairhand', { value: doors, writable: false, configurable: false });
  Reflect.deleteProperty(scope, binding);
  // On macOS Alt changes the letter: the place of the key counts too.
  const toolKey = (pressed: KeyboardEvent) =>
    (pressed.ctrlKey || pressed.metaKey) &&
    (pressed.shiftKey || pressed.altKey) &&
    (tools.includes(pressed.key.toLowerCase()) || tools.includes(pressed.code.replace(/^Key/, '').toLowerCase()));
  const browserKey = (pressed: KeyboardEvent) =>
    toolKey(pressed) ||
    ((pressed.ctrlKey || pressed.metaKey) && keys.includes(pressed.key.toLowerCase())) ||
    ['F1', 'F3', 'F5', 'F7', 'F12'].includes(pressed.key) ||
    (pressed.altKey && ['ArrowLeft', 'ArrowRight', 'Home'].includes(pressed.key));
  // The app still hears these keys; only the browser's own answer to them is off.
  addEventListener('keydown', (pressed) => browserKey(pressed) && pressed.preventDefault(), { capture: true });
  addEventListener('contextmenu', (pressed) => {
    if (!(pressed.target instanceof HTMLInputElement || pressed.target instanceof HTMLTextAreaElement)) {
      pressed.preventDefault();
    }
  });
  // A file dropped beside a drop target would replace the page.
  for (const kind of ['dragover', 'drop']) addEventListener(kind, (dragged) => dragged.preventDefault());
}

/**
 * Exposes the doors. Only the main frame of our own page gets answers; strings cross the pipe, because they are far
 * faster than objects there and cannot smuggle anything.
 */
export async function bind(context: BrowserContext, page: Page, call: Call): Promise<void> {
  await context.exposeBinding(BINDING, async (source, json: unknown) => {
    const sender = { url: source.frame.url(), isMainFrame: source.frame === page.mainFrame() };
    if (source.page !== page || !maySend(sender, BROWSER_ORIGIN) || typeof json !== 'string') return REFUSED;
    return call(json);
  });
  await context.addInitScript(openDoors, { binding: BINDING, event: EVENT, keys: BROWSER_KEYS, tools: TOOL_KEYS });
}

/** Tells the page something that it did not ask for. A closed or loading page misses it, which is harmless. */
export async function emit(page: Page, json: string): Promise<void> {
  try {
    await page.evaluate(({ name, detail }) => void dispatchEvent(new CustomEvent(name, { detail })), {
      name: EVENT,
      detail: json,
    });
  } catch {
    // The window is gone; whoever reads events reads the state again at the next start.
  }
}
