/**
 * What the method gives for the reference files, to 1e-6 of each value. A value that differs is another method: raise
 * INK_METHOD and add its file (`UPDATE_INK=1` writes it); the old files stay.
 */
import { existsSync, readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { INK_METHOD, measureInk, readInkml } from '../../renderer/ink/index.ts';

const folder = new URL('../outside/data/ink/', import.meta.url);
const file = new URL(`snapshots/${INK_METHOD}.json`, import.meta.url);

/** Every number of a result with its place, in one flat list. */
function numbers(value: unknown, place = ''): [string, number | string | null][] {
  if (value === null || typeof value === 'number') return [[place, value]];
  if (typeof value !== 'object') return [];
  return Object.entries(value).flatMap(([key, each]) => numbers(each, `${place}/${key}`));
}

const now = Object.fromEntries(
  readdirSync(folder)
    .filter((name) => name.endsWith('.inkml'))
    .map((name) => [name, Object.fromEntries(numbers(measureInk(readInkml(readFileSync(new URL(name, folder))))))]),
);

it(`${INK_METHOD} gives what it gave`, () => {
  if (process.env['UPDATE_INK'] === '1' && !existsSync(file)) writeFileSync(file, `${JSON.stringify(now, null, 1)}\n`);
  const kept = JSON.parse(readFileSync(file, 'utf8')) as typeof now;
  expect(Object.keys(now)).toEqual(Object.keys(kept));
  for (const [name, values] of Object.entries(kept)) {
    expect(Object.keys(now[name]!), name).toEqual(Object.keys(values));
    for (const [place, wanted] of Object.entries(values)) {
      const got = now[name]![place]!;
      if (typeof wanted !== 'number') expect(got, `${name} ${place}`).toBe(wanted);
      else
        expect(Math.abs(Number(got) - wanted), `${name} ${place}`).toBeLessThanOrEqual(1e-6 * Math.abs(wanted) + 1e-9);
    }
  }
});

it('every earlier method keeps its file, and each differs from the next', () => {
  const versions = Array.from({ length: Number(INK_METHOD.split('-')[1]) }, (_, i) => `ink-${i + 1}`);
  const kept = versions.map((version) => readFileSync(new URL(`snapshots/${version}.json`, import.meta.url), 'utf8'));
  expect(new Set(kept).size).toBe(versions.length);
});
