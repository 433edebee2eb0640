/** Why a file is no page; the sentence for each is in electron/contract/messages.ts. */
export const DECODE_CODES = [
  'empty-file',
  'not-an-image',
  'unreadable-file',
  'truncated',
  'too-large',
  'page-not-found',
  'decode-timeout',
  'cancelled',
] as const;
export type DecodeCode = (typeof DECODE_CODES)[number];

/** A file that cannot be read as a page. Carries a code only: never a path, never the bytes. */
export class DecodeError extends Error {
  readonly code: DecodeCode;

  constructor(code: DecodeCode) {
    super(code);
    this.name = 'DecodeError';
    this.code = code;
  }
}
