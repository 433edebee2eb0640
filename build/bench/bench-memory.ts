import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

const MEGABYTE = 1_000_000;

/**
 * Memory that measuring takes at its peak beyond the decoded picture, MB: the growth of a fresh process's largest
 * resident size while it measures a page, after the code itself was warmed up on a small one.
 */
export function memoryBeyondPicture(page: { gray: Uint8Array; width: number; height: number }): number {
  const folder = mkdtempSync(path.join(tmpdir(), 'bench-memory-'));
  try {
    const file = path.join(folder, 'gray.bin');
    writeFileSync(file, page.gray);
    const script = fileURLToPath(new URL('bench-memory-child.ts', import.meta.url));
    const text = execFileSync(
      process.execPath,
      ['--expose-gc', script, file, String(page.width), String(page.height)],
      {
        encoding: 'utf8',
      },
    );
    return Number(text) / MEGABYTE;
  } finally {
    rmSync(folder, { recursive: true });
  }
}
