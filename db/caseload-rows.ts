import type { Fact, FactKind } from './types/record.ts';

/** A fact as the window sends it; `at` and `by` are stamped by `put` from `Doing`. */
export type Unstamped<K extends FactKind> = Omit<Fact<K>, 'at' | 'by'>;

/** One row of the list of clients. */
export interface ClientRow {
  id: string;
  code: string;
  name: string;
  birthYear: number | null;
  /** Texts of the diagnoses, joined by '; '. */
  diagnoses: string;
  /** ISO date of the latest visit. */
  lastVisit: string | null;
  visits: number;
  archivedOn: string | null;
}

export type TrailAction = 'create' | 'update' | 'remove' | 'undo' | 'redo' | 'erase' | 'import' | 'set';

/** One change, as shown to the therapist. `before` and `after` are null when absent or emptied by erasing. */
export interface TrailRow {
  seq: number;
  at: string;
  by: string;
  clientId: string | null;
  /** A kind of fact, or 'blob', 'setting', 'export'. */
  kind: string;
  factId: string;
  action: TrailAction;
  /** Entries of one act of the therapist share it; undo takes a whole step. */
  step: string;
  before: unknown;
  after: unknown;
}

export interface TrailCheck {
  whole: boolean;
  entries: number;
  /** First entry that does not fit, when not whole. */
  brokenAt: number | null;
  /** Hash of the last entry: two copies with the same head hold the same trail. */
  head: string;
}

/** Words of a form that are no fact yet. */
export interface UnkeptWords {
  /** Which form; the same words never fit another. */
  place: string;
  /** The client they are about; they go with the client. Null: of the clinic. */
  clientId: string | null;
  /** By the field's label. Empty: they were used. */
  fields: Record<string, string>;
}

export interface BlobInfo {
  id: string;
  clientId: string;
  sha256: string;
  mime: string;
  bytes: number;
}

/** How many rows of each kind (and 'blob', 'setting', 'trail'). */
export type Counts = Record<string, number>;

/** Writes that belong to one act of the therapist: all or nothing, one step for undo. */
export interface Writer {
  put<K extends FactKind>(kind: K, fact: Unstamped<K>): Fact<K>;
  remove(kind: FactKind, id: string): void;
  /** Kept only if the whole act is; undo of the act leaves it. */
  putBlob(clientId: string, mime: string, bytes: Uint8Array): BlobInfo;
}
