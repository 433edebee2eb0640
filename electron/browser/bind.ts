/** Gives the page its two doors, `call` and `onEvent`, and nothing else. */
import type { BrowserContext, Page } from 'playwright-core';
import type { Envelope } from '../contract/envelope.ts';
import { BROWSER_ORIGIN, maySend } from '../window-policy.ts';

/** Answers one request: JSON in, the contract's envelope as JSON out. */
export type Call = (json: string) => Promise<string>;

const BINDING = '__fairhandCall';
const ANSWER = 'fairhand-answer';
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
  answer,
  event,
  keys,
  tools,
}: Record<'binding' | 'answer' | 'event', string> & Record<'keys' | 'tools', string[]>): void {
  const scope = globalThis as unknown as Record<string, unknown>;
  const send = scope[binding] as ((numbered: string) => void) | undefined;
  if (!send || scope['fairhand']) return;
  const waiting = new Map<string, (json: string) => void>();
  let calls = 0;
  addEventListener(answer, (fired) => {
    const { number, json } = (fired as CustomEvent<{ number: string; json: string }>).detail;
    waiting.get(number)?.(json);
    waiting.delete(number);
  });
  const doors = Object.freeze({
    call: (json: string) =>
      new Promise<string>((done) => {
        waiting.set(String(++calls), done);
        send(`${calls} ${String(json)}`);
      }),
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

/** Runs in the page: hands one answer to who waits for it. */
const HAND_OVER = `(event, number, json) => void dispatchEvent(new CustomEvent(event, { detail: { number, json } }))`;

/**
 * Exposes the doors. Only the main frame of our own page gets answers; strings cross the pipe, because they are far
 * faster than objects there and cannot smuggle anything. The protocol's own binding is used: the driver's would first
 * run code in the empty page, which takes as long as the rest of the preparation.
 */
export async function bind(context: BrowserContext, page: Page, call: Call): Promise<void> {
  const protocol = await context.newCDPSession(page);
  const origins = new Map<number, string>();
  /** Of the page's main frame, the same through every navigation. */
  let frame = '';
  protocol.on('Runtime.executionContextCreated', ({ context: { id, origin, auxData } }) => {
    if (auxData?.['isDefault'] && auxData['frameId'] === frame) origins.set(id, origin);
  });
  protocol.on('Runtime.executionContextDestroyed', ({ executionContextId }) => origins.delete(executionContextId));
  protocol.on('Runtime.executionContextsCleared', () => origins.clear());
  protocol.on('Runtime.bindingCalled', ({ name, payload, executionContextId }) => {
    if (name === BINDING) void answer(payload, executionContextId);
  });
  async function answer(numbered: string, executionContextId: number): Promise<void> {
    const origin = origins.get(executionContextId);
    const space = numbered.indexOf(' ');
    const mayAsk = origin !== undefined && maySend({ url: origin, isMainFrame: true }, BROWSER_ORIGIN);
    const json = mayAsk ? await call(numbered.slice(space + 1)) : REFUSED;
    const handed = [ANSWER, numbered.slice(0, space), json].map((value) => ({ value }));
    await protocol
      .send('Runtime.callFunctionOn', { functionDeclaration: HAND_OVER, executionContextId, arguments: handed })
      // The page is gone or was loaded anew: nobody waits any more.
      .catch(() => undefined);
  }
  frame = (await protocol.send('Target.getTargetInfo')).targetInfo.targetId;
  await Promise.all([
    protocol.send('Runtime.enable'),
    protocol.send('Runtime.addBinding', { name: BINDING }),
    context.addInitScript(openDoors, {
      binding: BINDING,
      answer: ANSWER,
      event: EVENT,
      keys: BROWSER_KEYS,
      tools: TOOL_KEYS,
    }),
  ]);
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
