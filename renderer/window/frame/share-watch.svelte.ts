/**
 * Looks now and then into the clinic's shared folder, from whichever screen: what waits is told, never taken in. A
 * share that goes is told once, and once more when it is back.
 */
import { ask } from '../../../electron/contract/ask.ts';
import type { Output } from '../../../electron/contract/index.ts';

/** How often it is looked into, ms, and how soon again after a new screen. */
const LOOK_MS = 30_000;
const SOONEST_MS = 2000;

type Seen = Output<'handover.waiting'>;

export class ShareWatch {
  /** Hand-overs that wait for this key. */
  waiting = $state(0);
  /** What is told once: the share went, or came back. */
  told = $state<'' | 'gone' | 'back'>('');
  #there: boolean | null = null;
  #lookedAt = -SOONEST_MS;
  #soon: ReturnType<typeof setTimeout> | undefined;

  /** Looks every half minute, until the answered function is called. */
  start(): () => void {
    const timer = setInterval(() => void this.look(), LOOK_MS);
    return () => {
      clearInterval(timer);
      clearTimeout(this.#soon);
    };
  }

  async look(): Promise<void> {
    const wait = this.#lookedAt + SOONEST_MS - performance.now();
    if (wait > 0) {
      this.#soon ??= setTimeout(() => {
        this.#soon = undefined;
        void this.look();
      }, wait);
      return;
    }
    this.#lookedAt = performance.now();
    try {
      this.#took(await ask('handover.waiting', {}));
    } catch {
      // Locked meanwhile: the next look tells.
    }
  }

  #took({ folder, there, waiting }: Seen): void {
    this.waiting = waiting;
    if (!folder) {
      this.#there = null;
      this.told = '';
      return;
    }
    if (!there && this.#there !== false) this.told = 'gone';
    if (there && this.#there === false) this.told = 'back';
    this.#there = there;
  }
}
