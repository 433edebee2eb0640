/**
 * Every answer to the window travels in one envelope: a value, or a code that messages.ts turns into a sentence.
 * A handler's own error text never crosses: it could hold a path, SQL or a client's data.
 */
import type { MessageCode } from './messages.ts';

export type Envelope<T = unknown> = { ok: true; value: T } | { ok: false; code: MessageCode; detail?: string };

/** Thrown by a handler that refuses; `detail` is a short fact for the sentence (a number, a field), never client data. */
export class Refusal extends Error {
  readonly code: MessageCode;
  readonly detail: string | undefined;
  constructor(code: MessageCode, detail?: string) {
    super(code);
    this.name = 'Refusal';
    this.code = code;
    this.detail = detail;
  }
}
