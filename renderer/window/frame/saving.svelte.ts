/**
 * What has been saved and what has not. A failed save stays visible and is tried again until it succeeds;
 * the newest version of a fact replaces an older one that is still waiting.
 */
import { Refusal } from '../../../electron/contract/envelope.ts';
import { sentenceFor, type MessageCode } from '../../../electron/contract/messages.ts';
import { refusalTold } from '../parts/say.svelte.ts';

/** Refusals that the entry itself causes: trying again cannot help. */
const entryCauses: ReadonlySet<MessageCode> = new Set<MessageCode>([
  'malformed-request',
  'already-approved',
  'already-issued',
  'assistant-approves',
  'assistant-clears',
  'assistant-evaluates',
  'co-sign-assistant',
  'co-sign-self',
  'code-taken',
  'date-in-future',
  'date-too-old',
  'not-found',
  'red-flag-open',
  'red-flags-not-asked',
  'veto-not-overridden',
  'unknown-request',
]);
const retryAfterMs = 5000;

/** What cannot be done, in the shown language; a short fact that is a text of the rule table is said in it too. */
export function sentenceOf(error: unknown): string {
  const code = error instanceof Refusal ? error.code : 'internal';
  const detail = error instanceof Refusal ? error.detail : undefined;
  return refusalTold(code, detail) ?? sentenceFor(code, detail);
}

/** One write, from its first try until it is stored, replaced by a newer one, or refused. */
class Attempt {
  readonly write: () => Promise<unknown>;
  readonly settled = Promise.withResolvers<unknown>();
  /** The next write of the same key, begun while this one was under way. */
  newer: Attempt | null = null;

  constructor(write: () => Promise<unknown>) {
    this.write = write;
  }
}

const isRefusal = (error: unknown): boolean => error instanceof Refusal && entryCauses.has(error.code);

export class Saving {
  state = $state<'idle' | 'saving' | 'saved' | 'failed'>('idle');
  savedAt = $state<Date | null>(null);
  problem = $state('');
  /** What waits for the next try, the newest of each key. */
  #waiting = new Map<string, Attempt>();
  /** The newest attempt of each key that has not settled. */
  #newest = new Map<string, Attempt>();
  #timer: ReturnType<typeof setTimeout> | undefined;

  /**
   * Runs a write. Resolves when it is stored; a write that cannot be stored now waits and is tried again. One that a
   * newer write of the same key replaces settles as the newer one does: its value, or its refusal. Rejects with the
   * Refusal when the entry itself is refused; an older write that waits then goes on waiting.
   */
  run<T>(key: string, write: () => Promise<T>): Promise<T> {
    this.state = 'saving';
    const attempt = new Attempt(write);
    const older = this.#newest.get(key);
    if (older) older.newer = attempt;
    this.#newest.set(key, attempt);
    void this.#first(key, attempt);
    return attempt.settled.promise as Promise<T>;
  }

  async #first(key: string, attempt: Attempt): Promise<void> {
    try {
      this.#stored(key, attempt, await attempt.write());
    } catch (error) {
      if (isRefusal(error)) this.#refused(key, attempt, error);
      else {
        this.problem = sentenceOf(error);
        this.state = 'failed';
        this.#wait(key, attempt);
      }
    }
  }

  #stored(key: string, attempt: Attempt, value: unknown): void {
    const waiting = this.#waiting.get(key);
    // What waits is older than what was stored, unless it began after it.
    if (waiting && waiting !== attempt && !isNewer(waiting, attempt)) waiting.settled.resolve(value);
    if (waiting && !isNewer(waiting, attempt)) this.#waiting.delete(key);
    attempt.settled.resolve(value);
    this.#forget(key, attempt);
    this.#settle();
  }

  #refused(key: string, attempt: Attempt, error: unknown): void {
    attempt.settled.reject(error);
    this.#forget(key, attempt);
    this.#settle();
  }

  #forget(key: string, attempt: Attempt): void {
    if (this.#newest.get(key) !== attempt) return;
    const waiting = this.#waiting.get(key);
    if (waiting) this.#newest.set(key, waiting);
    else this.#newest.delete(key);
  }

  /** The newest of a key waits; an older one settles as it does, or waits itself where the newer one is refused. */
  #wait(key: string, attempt: Attempt): void {
    const { newer } = attempt;
    if (newer) {
      newer.settled.promise.then(attempt.settled.resolve, (error: unknown) => {
        if (this.#waiting.has(key)) attempt.settled.reject(error);
        else this.#put(key, attempt);
      });
      return;
    }
    const older = this.#waiting.get(key);
    if (older && older !== attempt) attempt.settled.promise.then(older.settled.resolve, older.settled.reject);
    this.#put(key, attempt);
  }

  #put(key: string, attempt: Attempt): void {
    this.#waiting.set(key, attempt);
    if (!this.#newest.has(key)) this.#newest.set(key, attempt);
    this.#later();
  }

  /** Tries everything that waits, now. */
  retry = async (): Promise<void> => {
    clearTimeout(this.#timer);
    for (const [key, attempt] of [...this.#waiting]) {
      // Stored or replaced while the ones before it were tried.
      if (this.#waiting.get(key) !== attempt) continue;
      try {
        this.#stored(key, attempt, await attempt.write());
      } catch (error) {
        if (isRefusal(error)) {
          if (this.#waiting.get(key) === attempt) this.#waiting.delete(key);
          this.#refused(key, attempt, error);
          continue;
        }
        this.problem = sentenceOf(error);
        this.#later();
        return;
      }
    }
    this.#settle();
  };

  /** True while a write is under way or waits. */
  get busy(): boolean {
    return this.#newest.size > 0;
  }

  /** Resolves when nothing is under way any more; after two seconds in any case. */
  async quiet(): Promise<void> {
    const all = [...this.#newest.values()].map(({ settled }) => settled.promise.catch(() => undefined));
    await Promise.race([Promise.all(all), new Promise((resolve) => setTimeout(resolve, 2000))]);
  }

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

/** Whether `one` was begun after `other`, both of the same key. */
function isNewer(one: Attempt, other: Attempt): boolean {
  for (let next = other.newer; next; next = next.newer) if (next === one) return true;
  return false;
}
