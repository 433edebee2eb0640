/** Turns what SQLite and the file system say into a code with a sentence. Their own texts hold paths and SQL. */
import { CaseloadError, type CaseloadCode } from './codes.ts';

const systemCodes: Record<string, CaseloadCode> = {
  ENOSPC: 'disk-full',
  EDQUOT: 'disk-full',
  EFBIG: 'disk-full',
  EACCES: 'folder-not-writable',
  EPERM: 'folder-not-writable',
  EROFS: 'folder-not-writable',
  ENOTDIR: 'folder-not-writable',
};

function fromSqlite(code: string): CaseloadCode {
  if (code.startsWith('SQLITE_FULL')) return 'disk-full';
  // A full disk may show while the -shm file is stretched, before the write itself fails.
  if (code === 'SQLITE_IOERR_SHMSIZE') return 'disk-full';
  // What the system refuses to write for another reason than room (EPERM, EROFS, EIO).
  if (code === 'SQLITE_IOERR_WRITE' || code === 'SQLITE_IOERR_FSYNC') return 'folder-not-writable';
  if (code.startsWith('SQLITE_BUSY') || code.startsWith('SQLITE_LOCKED')) return 'locked-by-another';
  if (code.startsWith('SQLITE_CORRUPT') || code.startsWith('SQLITE_NOTADB')) return 'damaged';
  if (code === 'SQLITE_IOERR_SHORT_READ' || code === 'SQLITE_IOERR_READ') return 'damaged';
  if (code.startsWith('SQLITE_READONLY') || code.startsWith('SQLITE_CANTOPEN') || code.startsWith('SQLITE_PERM')) {
    return 'folder-not-writable';
  }
  // Foreign keys: the client, visit or picture that a fact names is not there.
  if (code === 'SQLITE_CONSTRAINT_FOREIGNKEY') return 'not-found';
  if (code.startsWith('SQLITE_CONSTRAINT')) return 'malformed-request';
  if (code.startsWith('SQLITE_TOOBIG')) return 'too-large';
  return 'internal';
}

/** The code for any error thrown in db/; 'internal' for what should not happen. */
export function codeOf(error: unknown): CaseloadCode {
  if (error instanceof CaseloadError) return error.code;
  const code: unknown = error instanceof Error ? (error as NodeJS.ErrnoException).code : undefined;
  if (typeof code !== 'string') return 'internal';
  return systemCodes[code] ?? (code.startsWith('SQLITE_') ? fromSqlite(code) : 'internal');
}

/** Runs `work`; whatever it throws leaves as a CaseloadError, the original kept as its cause for tests only. */
export function guarded<T>(work: () => T): T {
  try {
    return work();
  } catch (error) {
    throw asCaseloadError(error);
  }
}

function asCaseloadError(error: unknown): CaseloadError {
  if (error instanceof CaseloadError) return error;
  if (error instanceof Error && /database connection is not open/.test(error.message)) {
    return new CaseloadError('locked');
  }
  // Unique index on a client's code: the one constraint that the therapist can meet.
  if (error instanceof Error && /UNIQUE constraint failed: client\.code|client_code/.test(error.message)) {
    return new CaseloadError('code-taken');
  }
  const refused = new CaseloadError(codeOf(error));
  refused.cause = error;
  return refused;
}
