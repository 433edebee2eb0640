/** Pages that are no good: an empty result or a warning, never a wrong number in silence. */
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import sharp from 'sharp';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { measureCommand } from '../../../electron/files/measure/measure-command.ts';
import { makePage } from '../../measure/pages/generate.ts';
import { SPECS } from '../../measure/pages/specs.ts';
import type { PageSpec } from '../../measure/pages/types.ts';

let folder: string;
beforeAll(async () => {
  folder = await mkdtemp(path.join(tmpdir(), 'bad-pages-'));
});
afterAll(() => rm(folder, { recursive: true }));

interface Answer {
  lines: { words: unknown[] }[];
  measures: { code: string; value: number | null }[];
  warnings: { code: string; message: string }[];
}

async function measured(bytes: Uint8Array, dpi = 200): Promise<Answer> {
  const file = path.join(folder, 'page');
  await writeFile(file, bytes);
  const { exit, json } = await measureCommand([file, '--dpi', String(dpi)]);
  expect(exit).toBe(0);
  return json as Answer;
}

function spec(name: string, lines: number): PageSpec {
  const found = SPECS.find((one) => one.name === name);
  if (!found) throw new Error(`no page is called ${name}`);
  return {
    ...found,
    writing: { ...found.writing, lines },
    picture: { ...found.picture, dpi: 200, blurPx: 0.4 },
  };
}
const flat = (level: number, width = 1654, height = 2339): Promise<Buffer> =>
  sharp({ create: { width, height, channels: 3, background: { r: level, g: level, b: level } } })
    .png()
    .toBuffer();

function expectNothing(answer: Answer): void {
  expect(answer.lines).toEqual([]);
  expect(answer.measures.filter(({ code, value }) => code !== 'closed-loops' && value !== null)).toEqual([]);
  expect(answer.warnings.length).toBeGreaterThan(0);
  for (const { message } of answer.warnings) expect(message).toMatch(/^[A-Z].*\.$/);
}

test('a blank, a black and a tiny page give no lines and say why', async () => {
  for (const bytes of [await flat(251), await flat(0), await flat(255, 1, 1), await flat(255, 50, 60)])
    expectNothing(await measured(bytes));
});

test('printed lines alone are no writing', async () => {
  for (const name of ['ruled-kalam', 'squares-5', 'midline'])
    expectNothing(await measured((await makePage(spec(name, 0))).bytes));
});

test('one dot is no writing; one word is a line of one word with a warning', async () => {
  expectNothing(await measured((await makePage(spec('plain-kalam', 1), [['.']])).bytes));
  const one = await measured((await makePage(spec('ruled-kalam', 1), [['table']])).bytes);
  expect(one.lines.map((line) => line.words.length)).toEqual([1]);
  expect(one.warnings.length).toBeGreaterThan(0);
});

test('a page upside down, on its side, mirrored, or cut off in a photo is not measured', async () => {
  const { bytes } = await makePage(spec('plain-kalam', 10));
  expectNothing(await measured(await sharp(bytes).rotate(180).jpeg().toBuffer()));
  expectNothing(await measured(await sharp(bytes).rotate(90).jpeg().toBuffer()));
  expectNothing(await measured(await sharp(bytes).flop().jpeg().toBuffer()));
  const photo = await makePage(spec('photo-mild', 10));
  const cut = { left: 300, top: 0, width: photo.width - 300, height: photo.height };
  expectNothing(await measured(await sharp(photo.bytes).extract(cut).jpeg().toBuffer()));
});

test('letters under 12 pixels are questioned', async () => {
  const { bytes } = await makePage(spec('plain-kalam', 10));
  const small = await measured(await sharp(bytes).resize(600).jpeg().toBuffer(), 72);
  expect(small.warnings.map(({ code }) => code)).toContain('text-under-12-px');
});

test('a scale that makes letters of a few tenths of a millimeter, or of half a meter, is questioned', async () => {
  const { bytes } = await makePage(spec('plain-kalam', 6));
  for (const dpi of [1, 2, 2400])
    expect((await measured(bytes, dpi)).warnings.map(({ code }) => code)).toContain('scale-unlikely');
  expect((await measured(bytes)).warnings).toEqual([]);
});
