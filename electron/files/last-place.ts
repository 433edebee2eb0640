/** Where the therapist was, beside the caseload: random ids and numbers, nothing that names a client. */
import { existsSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { LastPlace } from '../contract/about.ts';

const placeFile = (folder: string): string => path.join(folder, 'caseload.place');

/** A place that cannot be written is not worth a message: the work itself is saved elsewhere. */
export function keepPlace(folder: string, at: LastPlace, person: string | null): void {
  const part = `${placeFile(folder)}.part`;
  try {
    writeFileSync(part, JSON.stringify({ ...at, person }), { mode: 0o600 });
    renameSync(part, placeFile(folder));
  } catch {
    // The disk is full or write-protected; saving itself tells that.
  }
}

/** @param person whoever signed in: another's place is not hers */
export function lastPlace(folder: string, person: string | null): LastPlace | null {
  try {
    if (!existsSync(placeFile(folder))) return null;
    const { person: whose = null, ...at } = JSON.parse(readFileSync(placeFile(folder), 'utf8')) as { person?: unknown };
    const read = LastPlace.safeParse(at);
    return read.success && whose === person ? read.data : null;
  } catch {
    return null;
  }
}
