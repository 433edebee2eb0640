/** Why the caseload refused. electron/contract/messages.ts has the sentence for each. */
export type OpenCode =
  | 'no-caseload'
  | 'caseload-exists'
  | 'wrong-passphrase'
  | 'passphrase-too-short'
  | 'passphrase-too-weak'
  | 'key-file-missing'
  | 'damaged'
  | 'newer-version'
  | 'locked-by-another'
  | 'folder-not-writable'
  | 'disk-full';

export type CaseloadCode =
  | OpenCode
  | 'malformed-request'
  | 'not-found'
  | 'code-taken'
  | 'already-approved'
  | 'already-issued'
  | 'nothing-to-undo'
  | 'too-large'
  | 'handover-forked'
  | 'locked'
  | 'internal';

/** `detail` is a field or a number for the sentence, never client data. */
export class CaseloadError extends Error {
  readonly code: CaseloadCode;
  readonly detail: string | undefined;
  constructor(code: CaseloadCode, detail?: string) {
    super(detail === undefined ? code : `${code}: ${detail}`);
    this.name = 'CaseloadError';
    this.code = code;
    this.detail = detail;
  }
}

/** Whether a record itself cannot be read: it must not hide all others, and opening it says what is wrong. */
export const isUnreadable = (error: unknown): boolean =>
  error instanceof CaseloadError && (error.code === 'not-found' || error.code === 'damaged');
