/**
 * What the rest of Fairhand may ask of an open caseload. Everything here is synchronous and short; what takes
 * longer (backup, integrity check, import) is offered to a worker by electron/files.
 */
import type { OpenCode } from './codes.ts';
import type { HandoverRecords } from './handover/handover-types.ts';
import type { Typed } from './keys/key-wraps.ts';
import type { ClientExport } from './types/client-export.ts';
import type { ClientRecord, Fact, FactKind } from './types/record.ts';
import type {
  Unstamped,
  ClientRow,
  TrailRow,
  TrailCheck,
  UnkeptWords,
  BlobInfo,
  Counts,
  Writer,
} from './caseload-rows.ts';

/** Who changes something, and when. Passed in: the database reads no clock. */
export interface Doing {
  /** ISO instant, for example 2026-03-04T09:12:00.000Z. */
  at: string;
  /** Initials of the active therapist. */
  by: string;
}

/**
 * An open caseload. Every method throws `CaseloadError` with a code (codes.ts) when it cannot do its work;
 * nothing is changed then.
 */
export interface Caseload {
  readonly folder: string;
  /** The write-ahead log of the last session was gone when the file was opened: its last changes may be missing. */
  readonly logLost: boolean;
  /** Version of the file's tables. */
  readonly schemaVersion: number;

  /** All clients by name, archived ones last. */
  clients(): ClientRow[];
  /** Clients whose name or code contains every word typed; case and accents do not matter. */
  search(typed: string): ClientRow[];
  /** By code, for `summary --client CODE`. */
  clientByCode(code: string): Fact<'client'> | null;
  /** Everything of one client except pictures' bytes. @throws not-found */
  record(clientId: string): ClientRecord;
  /** Number of the client's last entry in the trail: unchanged means that nothing of the client has changed. */
  lastChange(clientId: string): number;
  get<K extends FactKind>(kind: K, id: string): Fact<K> | null;
  /** Texts of samples and trials of all clients since an instant: no reader and no client is to meet one again. */
  textsSince(at: string): { text: string; codes: string[]; at: string }[];
  /** Texts that somebody with these initials has read or has taken a sample of, of all clients, oldest first. */
  textsMetBy(initials: string): { sampleId: string; how: 'read' | 'took'; at: string; codes: string[]; text: string }[];

  /**
   * Saves one fact: a new id creates, a known one updates. One transaction with its trail entry; saving the same
   * content again changes nothing. An answer to an item, side or red flag that was answered in this visit keeps the
   * id of that answer, so take the returned fact.
   * @throws malformed-request, not-found (client, visit … it belongs to), code-taken, already-approved, already-issued,
   * disk-full, damaged, locked
   */
  put<K extends FactKind>(kind: K, fact: Unstamped<K>, doing: Doing): Fact<K>;
  /** Removes a fact and what hangs on it (a visit takes its samples along) in one step. Undo brings all back. */
  remove(kind: FactKind, id: string, doing: Doing): void;
  /** Several writes as one act: all or nothing, undone together. */
  together<T>(doing: Doing, act: (write: Writer) => T): T;

  /** Keeps original bytes (at most 200 MB) with their checksum. The same bytes of one client are kept once. */
  putBlob(clientId: string, mime: string, bytes: Uint8Array, doing: Doing): BlobInfo;
  /** Null when unknown. @throws damaged when the bytes do not fit their checksum */
  blob(id: string): (BlobInfo & { data: Buffer }) | null;

  /** Keeps the next pen samples of a bout that is being written; a piece that is there already stays. */
  keepInkPiece(recordingId: string, seq: number, bytes: Uint8Array): void;
  /** Everything that came of a bout so far; empty when nothing did. */
  inkSoFar(recordingId: string): Buffer;
  /** The pieces of a bout whose samples lie in a blob now. */
  dropInkPieces(recordingId: string): void;

  /** Words typed into a form that are no fact yet; no fields: they were used. No trail. @throws not-found, disk-full */
  keepWords(words: UnkeptWords, doing: Doing): void;
  wordsKept(place: string): Record<string, string>;

  /** Clinic settings and the clinic's own rule changes, by name; null when never set. The caller validates. */
  setting(name: string): unknown;
  putSetting(name: string, value: unknown, doing: Doing): void;
  removeSetting(name: string, doing: Doing): void;

  /** Takes back this client's last step since the caseload was opened. @throws nothing-to-undo */
  undo(clientId: string, doing: Doing): ClientRecord | null;
  redo(clientId: string, doing: Doing): ClientRecord | null;
  canUndo(clientId: string): { undo: boolean; redo: boolean };

  /** One client's changes, newest first. */
  trail(clientId: string, limit?: number): TrailRow[];
  verifyTrail(): TrailCheck;
  /** Notes in each client's trail that data left the program: what was written, in a few words. Undo passes it over. */
  noteExport(clientIds: readonly string[], what: string, doing: Doing): void;

  archive(clientId: string, on: string | null, doing: Doing): Fact<'client'>;
  /** Erases values, pictures and search text of a client, or of several at once; the trail's chain still holds. Cannot be undone. */
  erase(clientIds: string | readonly string[], doing: Doing): void;
  /** Moves everything of `from` to `into` and removes `from`; one step, undoable at `into`. */
  merge(from: string, into: string, doing: Doing): ClientRecord;

  /** One client in the open format of types/client-export.ts; the pictures' bytes come by `blob`. @throws not-found */
  exportClient(clientId: string, at: string): ClientExport;
  /**
   * Brings an exported client in, ids and stamps kept; one step for undo.
   * @throws malformed-request (naming the field), code-taken when client or code is here already, disk-full
   */
  importClient(exported: unknown, bytesOf: (id: string) => Uint8Array | null, doing: Doing): ClientRecord;

  /** Between two laptops of one clinic: hand over, take in, what both sides changed. */
  readonly handover: HandoverRecords;

  counts(): Counts;
  /** Changes whenever something was written: an automatic backup is due only when it moved. */
  lastSeq(): number;
  /** Hash of one entry of the trail; null when there is none. */
  trailHashAt(seq: number): string | null;
  /** Short form of the trail's head, to print and to type again (fingerprint.ts). */
  fingerprint(): string;
  /** Tables, indexes and triggers that are missing, foreign or other than Fairhand makes them. */
  schemaDifferences(): string[];
  /** Quick check of every page; 'ok' or what SQLite reports. */
  quickCheck(): string;
  /** Gives `use` a copy of the key for a worker; the copy is zeroed afterwards. */
  withKey<T>(use: (identity: Uint8Array) => T): T;
  /** Optimizes, truncates the -wal, closes, zeroes the key. Safe to call twice. */
  close(): void;
}

/** What opens a caseload: the passphrase, the recovery key of the printed sheet, or the key itself (a worker). */
export type Secret = Typed | { identity: Uint8Array };

/** `person`: whose sign-in it was; null with one sign-in for all, a recovery key or the key itself. */
export type Opened = { ok: true; caseload: Caseload; person: string | null } | { ok: false; code: OpenCode };

/** `recoveryKey` is shown once, for the recovery sheet; it is stored nowhere. */
export type Created = { ok: true; caseload: Caseload; recoveryKey: string } | { ok: false; code: OpenCode };
