/** How new the copy in the second place is, also while that place (a USB stick) is not there. */
import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { z } from 'zod';
import { writeDurably } from '../../../db/files.ts';
import { backupNames } from './backup-list.ts';

/** Beside the caseload: a setting inside it would make the next backup due. Holds no client's data. */
const noteFile = (folder: string): string => path.join(folder, 'second-place.json');
const Note = z.object({ place: z.string(), newest: z.string() });

/** Notes that a copy was made there. */
export function noteSecond(folder: string, place: string, at: string): void {
  writeDurably(noteFile(folder), `${JSON.stringify({ place, newest: at })}\n`);
}

/** ISO instant of the newest copy there, looked up where the place is there, else as noted; null when none is known. */
export function newestIn(folder: string, place: string): string | null {
  if (existsSync(place)) return backupNames(place)[0]?.at ?? null;
  try {
    const note = Note.parse(JSON.parse(readFileSync(noteFile(folder), 'utf8')));
    return note.place === place ? note.newest : null;
  } catch {
    return null;
  }
}
