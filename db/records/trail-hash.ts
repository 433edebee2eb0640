/** The hashes of the trail: over an entry and the one before it, and over its values with a salt. */
import { createHash } from 'node:crypto';
import type { TrailAction } from '../caseload-rows.ts';

export interface StoredEntry {
  seq: number;
  at: string;
  by: string;
  client_id: string | null;
  kind: string;
  fact_id: string;
  action: TrailAction;
  step: string;
  reverses: string | null;
  digest: string;
  prev_hash: string;
  hash: string;
}

const sha256 = (parts: unknown[]): string => createHash('sha256').update(JSON.stringify(parts)).digest('hex');

/** Salted digest of the values of an entry, as hex. */
export const digestOf = (salt: string, before: string | null, after: string | null): string =>
  sha256([salt, before, after]);

/** Hash of an entry over the one before it, as hex. */
export const hashOf = (e: Omit<StoredEntry, 'hash'>): string =>
  sha256([e.prev_hash, e.seq, e.at, e.by, e.client_id, e.kind, e.fact_id, e.action, e.step, e.reverses, e.digest]);
