import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import sharp from 'sharp';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { measureCommand } from '../../../electron/files/measure/measure-command.ts';
import { makePage } from '../../measure/pages/generate.ts';
import { SPECS } from '../../measure/pages/specs.ts';

let folder: string;
let file: string;
beforeAll(async () => {
  folder = await mkdtemp(path.join(tmpdir(), 'measure-'));
  file = path.join(folder, 'page.jpg');
  const spec = SPECS.find(({ name }) => name === 'dpi-150');
  if (!spec) throw new Error('the page is gone from the list');
  const made = await makePage(spec);
  await writeFile(file, made.bytes);
  await writeFile(path.join(folder, 'gray.bin'), made.gray);
});
afterAll(() => rm(folder, { recursive: true }));

test('measure answers with the documented fields and draws an overlay of the page’s size', async () => {
  const overlay = path.join(folder, 'overlay.png');
  const { exit, json, text } = await measureCommand([file, '--dpi', '150', '--overlay', overlay]);
  expect(exit).toBe(0);
  expect(Object.keys(json as object)).toEqual(['page', 'lines', 'measures', 'warnings']);
  expect((json as { lines: unknown[] }).lines).toHaveLength(12);
  expect(text).toContain('Lines 12, words 84');
  expect(await sharp(await readFile(overlay)).metadata()).toMatchObject({ width: 1240, height: 1754, format: 'png' });
});

test('a raw gray buffer gives the same answer as the file', async () => {
  const fromFile = await measureCommand([file, '--dpi', '150']);
  const gray = path.join(folder, 'gray.bin');
  const fromGray = await measureCommand([gray, '--dpi', '150', '--gray', '--width', '1240', '--height', '1754']);
  expect(fromGray).toEqual(fromFile);
});

test('wrong use and unreadable input are exit 2 with a sentence and no trace of code', async () => {
  await writeFile(path.join(folder, 'text.png'), 'not a picture');
  const wrong: string[][] = [
    [],
    [file, '--dpi', '0'],
    [file, '--dpi', '-300'],
    [file, '--dpi=-300'],
    [file, '--dpi', '2401'],
    [file, '--dpi', 'many'],
    [file, '--unknown'],
    [file, file],
    [path.join(folder, 'missing.png'), '--dpi', '300'],
    [folder, '--dpi', '300'],
    [path.join(folder, 'text.png'), '--dpi', '300'],
    [file, '--dpi', '300', '--text', path.join(folder, 'missing.txt')],
    [file, '--dpi', '300', '--gray'],
    [file, '--dpi', '300', '--gray', '--width', '10', '--height', '10'],
    [file, '--dpi', '300', '--width', '10'],
    [file, '--dpi', '150', '--overlay', path.join(folder, 'no', 'such', 'place.png')],
  ];
  for (const argv of wrong) {
    const outcome = await measureCommand(argv);
    expect(outcome.exit, argv.slice(1).join(' ')).toBe(2);
    expect(outcome.error).toMatch(/^[A-Z"-].*\.$/);
    expect(outcome.error).not.toMatch(/\n|Error:|node:|\/tmp/);
  }
});
