/**
 * The engine writes a printed page into its folder for temporary files and, at least on Linux, lets it lie there after
 * the printer's queue has taken it: each copy is removed as soon as nobody needs it.
 */
import { closeSync, lstatSync, openSync, readSync, rmSync, watch } from 'node:fs';
import path from 'node:path';

/** The queue holds the file open as soon as it is written; so long after its last change nobody asks for its name. */
const HANDED_OVER_MS = 10_000;

/** PDF and PostScript, by their first bytes. */
function isPrinted(file: string): boolean {
  const head = Buffer.alloc(5);
  const open = openSync(file, 'r');
  try {
    readSync(open, head);
  } finally {
    closeSync(open);
  }
  return head.toString('latin1') === '%PDF-' || head.toString('latin1').startsWith('%!');
}

/** Watches the folder until it is gone. @param after how long a copy lies still before it is removed, in milliseconds */
export function removePrintedCopies(folder: string, after = HANDED_OVER_MS): void {
  const timers = new Map<string, NodeJS.Timeout>();
  const later = (name: string, ms: number): void => {
    clearTimeout(timers.get(name));
    const look = (): void => {
      timers.delete(name);
      const file = path.join(folder, name);
      try {
        const about = lstatSync(file);
        if (!about.isFile() || !isPrinted(file)) return;
        const still = Date.now() - about.mtimeMs;
        if (still < after) later(name, after - still);
        else rmSync(file);
      } catch {
        // Gone meanwhile, or the engine's own again: the folder is wiped at the end in any case.
      }
    };
    timers.set(name, setTimeout(look, ms).unref());
  };
  const watcher = watch(folder, { persistent: false }, (_event, name) => {
    if (name !== null) later(name, after);
  });
  watcher.on('error', () => watcher.close());
}
