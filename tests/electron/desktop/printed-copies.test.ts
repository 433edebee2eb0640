import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { expect, test } from 'vitest';
import { removePrintedCopies } from '../../../electron/printed-copies.ts';

const pause = (ms: number) => new Promise((resolve) => setTimeout(resolve, ms));

test('a printed page that the engine left is removed once it lies still; other files of the engine stay', async () => {
  const folder = mkdtempSync(path.join(tmpdir(), 'fairhand-copies-'));
  const file = (name: string) => path.join(folder, name);
  try {
    removePrintedCopies(folder, 800);
    writeFileSync(file('.engine.Ab1'), '%PDF-1.4\n…');
    writeFileSync(file('04afc'), '%!PS-Adobe-3.0\n…');
    writeFileSync(file('other'), 'shared memory');
    writeFileSync(file('growing'), '%PDF-1.4\n');
    const growth = setInterval(() => writeFileSync(file('growing'), '%PDF-1.4\nmore'), 200);
    try {
      await expect.poll(() => [file('.engine.Ab1'), file('04afc')].some(existsSync), { timeout: 10_000 }).toBe(false);
      expect(existsSync(file('growing'))).toBe(true);
    } finally {
      clearInterval(growth);
    }
    await expect.poll(() => existsSync(file('growing')), { timeout: 10_000 }).toBe(false);
    await pause(100);
    expect(existsSync(file('other'))).toBe(true);
  } finally {
    rmSync(folder, { recursive: true });
  }
});
