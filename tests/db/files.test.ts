import { existsSync, mkdtempSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { expect, test } from 'vitest';
import { makeFolder } from '../../db/files.ts';

test('folders are made one above the other, private, and again without harm', () => {
  const base = mkdtempSync(path.join(tmpdir(), 'fairhand-test-'));
  try {
    const deep = path.join(base, 'a', 'b', 'c');
    makeFolder(deep);
    makeFolder(deep);
    expect(statSync(deep).mode & 0o777).toBe(0o700);
    writeFileSync(path.join(base, 'file'), '');
    expect(() => makeFolder(path.join(base, 'file'))).toThrow();
    expect(() => makeFolder(path.join(base, 'file', 'below'))).toThrow(/ENOTDIR/);
  } finally {
    rmSync(base, { recursive: true });
  }
});

test.skipIf(!existsSync('/proc'))('a place that takes no folders is an error, not a wait without end', () => {
  expect(() => makeFolder('/proc/fairhand/caseload')).toThrow();
});
