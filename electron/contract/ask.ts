/** The window's one way to the shell, typed by the contract. */
import { Refusal, type Envelope } from './envelope.ts';
import type { Input, Output, RequestName, ShellEvent } from './index.ts';

/** What both shells put on the window, and nothing else. */
interface Bridge {
  call(json: string): Promise<string>;
  onEvent(listener: (json: string) => void): void;
}

declare global {
  var fairhand: Bridge;
}

function opened<T>(answer: Envelope<T>): T {
  if (answer.ok) return answer.value;
  throw new Refusal(answer.code, answer.detail);
}

/** @throws Refusal with the code of messages.ts */
export async function ask<N extends RequestName>(name: N, input: Input<N>): Promise<Output<N>> {
  return opened(JSON.parse(await globalThis.fairhand.call(JSON.stringify({ name, input }))) as Envelope<Output<N>>);
}

/** The element that brings the caseload's state with the page. */
export const FIRST_STATUS = 'first-status';

/** The caseload's state as it came with the page; asked for where none came. */
export async function firstStatus(): Promise<Output<'app.status'>> {
  const brought = document.getElementById(FIRST_STATUS);
  brought?.remove();
  return brought ? opened(JSON.parse(brought.textContent) as Envelope<Output<'app.status'>>) : ask('app.status', {});
}

const listeners = new Set<(event: ShellEvent) => void>();
let listening = false;

/** Hears what the shell tells by itself. Answers how to stop: a screen that goes must stop, or it is kept for ever. */
export const onShellEvent = (listener: (event: ShellEvent) => void): (() => void) => {
  // The bridge cannot forget a listener: it gets one for the whole window.
  if (!listening) {
    listening = true;
    globalThis.fairhand.onEvent((json) => {
      const event = JSON.parse(json) as ShellEvent;
      for (const each of [...listeners]) each(event);
    });
  }
  listeners.add(listener);
  return () => void listeners.delete(listener);
};

/** Hands picture bytes to the shell; the token names them in the request that follows. */
export async function stageBlob(bytes: Blob): Promise<string> {
  const answer = await fetch('/blob', { method: 'POST', body: bytes });
  if (!answer.ok) throw new Refusal(bytes.size === 0 ? 'empty-file' : 'too-large');
  return ((await answer.json()) as { token: string }).token;
}
