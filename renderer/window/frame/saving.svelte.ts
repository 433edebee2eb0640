/**
 * What has been saved and what has not. A failed save stays visible and is tried again until it succeeds;
 * the newest version of a fact replaces an older one that is still waiting.
 */
import { Refusal } from '../../../electron/contract/envelope.ts';
import { sentenceFor, type MessageCode } from '../../../electron/contract/messages.ts';

/** Refusals that the entry itself causes: trying again cannot help. */
const entryCauses: ReadonlySet<MessageCode> = new Set<MessageCode>([
  'malformed-request',
  'already-approved',
  'already-issued',
  'code-taken',
  'date-in-future',
  'not-found',
  'red-flag-open',
  'red-flags-not-asked',
  'veto-not-overridden',
  'unknown-request',
]);
const retryAfterMs = 5000;

export const sentenceOf = (error: unknown): string =>
  error instanceof Refusal ? sentenceFor(error.code, error.detail) : sentenceFor('internal');

export class Saving {
  state = $state<'idle' | 'saving' | 'saved' | 'failed'>('idle');
  savedAt = $state<Date | null>(null);
  problem = $state('');
  #waiting = new Map<string, () => Promise<void>>();
  #timer: ReturnType<typeof setTimeout> | undefined;

  /** Runs a write. Resolves when it is stored; a write that cannot be stored now waits and is tried again. */
  async run<T>(key: string, write: () => Promise<T>): Promise<T> {
    this.state = 'saving';
    try {
      const value = await write();
      this.#waiting.delete(key);
      this.#settle();
      return value;
    } catch (error) {
      if (error instanceof Refusal && entryCauses.has(error.code)) {
        this.#settle();
        throw error;
      }
      this.problem = sentenceOf(error);
      this.state = 'failed';
      return new Promise<T>((resolve, reject) => {
        this.#waiting.set(key, async () => {
          try {
            resolve(await write());
          } catch (again) {
            if (again instanceof Refusal && entryCauses.has(again.code)) reject(again);
            else throw again;
          }
        });
        this.#later();
      });
    }
  }

  /** Tries everything that waits, now. */
  retry = async (): Promise<void> => {
    clearTimeout(this.#timer);
    for (const [key, write] of [...this.#waiting]) {
      try {
        await write();
        if (this.#waiting.get(key) === write) this.#waiting.delete(key);
      } catch (error) {
        this.problem = sentenceOf(error);
        this.#later();
        return;
      }
    }
    this.#settle();
  };

  /** What waits is gone with the window: the caller asks before it closes. */
  get unsaved(): number {
    return this.#waiting.size;
  }

  #later(): void {
    clearTimeout(this.#timer);
    this.#timer = setTimeout(this.retry, retryAfterMs);
  }

  #settle(): void {
    if (this.#waiting.size > 0) return;
    this.state = 'saved';
    this.savedAt = new Date();
    this.problem = '';
  }
}
