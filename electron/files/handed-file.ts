/** A file of Fairhand's own that the system hands over: by a double click, as an argument, from a second start. */
import path from 'node:path';
import { fileURLToPath } from 'node:url';

/** Endings without the dot. Both files are tar archives; files of earlier versions end in .tar. */
export const CLIENT_ENDING = 'fhclient';
export const BACKUP_ENDING = 'fhbackup';

export interface HandedFile {
  file: string;
  /** Its own name, without the folder. */
  name: string;
  kind: 'client' | 'backup';
}

/** Null for a file that is not Fairhand's by its ending. A relative name counts from `cwd`. */
export function handedFile(given: string, cwd: string): HandedFile | null {
  const ending = path.extname(given).toLowerCase();
  const kind = ending === `.${CLIENT_ENDING}` ? 'client' : ending === `.${BACKUP_ENDING}` ? 'backup' : null;
  if (kind === null) return null;
  try {
    // File managers give addresses where the program's entry says %U.
    const file = given.startsWith('file:') ? fileURLToPath(given) : path.resolve(cwd, given);
    return { file, name: path.basename(file), kind };
  } catch {
    return null;
  }
}

/** The first such file among a program's arguments. */
export function handedAmong(args: readonly string[], cwd: string): HandedFile | null {
  for (const [index, arg] of args.entries()) {
    if (arg.startsWith('-') || args[index - 1] === '--data') continue;
    const handed = handedFile(arg, cwd);
    if (handed) return handed;
  }
  return null;
}

/** Keeps the file that was handed over last until there is a window to offer it to. */
export class Handed {
  #last: HandedFile | null;
  #offer: ((file: HandedFile) => void) | null = null;

  /** @param args of the program's start */
  constructor(args: readonly string[]) {
    this.#last = handedAmong(args, process.cwd());
  }

  /** Whole path of the file that waits; null = none. */
  get waiting(): string | null {
    return this.#last?.file ?? null;
  }

  /** One more, told while Fairhand runs by its whole path; what is none of Fairhand's leaves the one that waits. */
  take(file: string | null): void {
    this.#last = (file === null ? null : handedFile(file, path.sep)) ?? this.#last;
    this.#tell();
  }

  /** From now on files are offered there. */
  to(offer: (file: HandedFile) => void): void {
    this.#offer = offer;
    this.#tell();
  }

  #tell(): void {
    if (!this.#last || !this.#offer) return;
    this.#offer(this.#last);
    this.#last = null;
  }
}
