/**
 * Ink with known truth, or with values of the published formulas, made independently of this engine
 * (data/ink/expected.json says for each value which of the two, and the tolerance).
 */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { drawInk, measureInk, readInkml } from '../../renderer/ink/index.ts';
import type { InkTask } from '../../renderer/ink/index.ts';
import { measurePage } from '../../renderer/measure/index.ts';

interface Near {
  value: number;
  tol: number;
}

interface Expected {
  file: string;
  task: InkTask;
  expect: Record<string, Near>;
  null: string[];
  quality: { verdict: string; rateHz: Near };
  warnings: string[];
  tremor: { reported?: false; frequencyHz?: Near; amplitudeRmsMm?: Near };
  page?: { lines: number; words: number; closedLoops: number; xHeightMm: number };
}

const folder = new URL('data/ink/', import.meta.url);
const { files } = JSON.parse(readFileSync(new URL('expected.json', folder), 'utf8')) as { files: Expected[] };

const near = (value: number | null, { value: wanted, tol }: Near, what: string): void => {
  expect(value, what).not.toBeNull();
  expect(Math.abs(value! - wanted), `${what}: ${value}, not ${wanted}`).toBeLessThanOrEqual(tol + 1e-9);
};

describe.each(files)('$file', (of) => {
  const document = readInkml(readFileSync(new URL(of.file, folder)));
  const result = measureInk(document);
  const measure = (code: string) => result.measures.find((each) => each.code === code)!;

  it('gives every value within its tolerance, and null where nothing can be told', () => {
    expect(result.source.task).toBe(of.task);
    for (const [code, wanted] of Object.entries(of.expect)) near(measure(code).value, wanted, code);
    for (const code of of.null) expect(measure(code), code).toMatchObject({ value: null, why: expect.any(String) });
  });

  it('judges the signal, warns, and reports tremor only where there is one', () => {
    expect(result.quality.verdict).toBe(of.quality.verdict);
    near(result.quality.rateHz, of.quality.rateHz, 'rate');
    expect(result.warnings.map(({ code }) => code)).toEqual(of.warnings);
    if (of.tremor.reported === false) expect(result.tremor.reason).not.toBeNull();
    if (of.tremor.frequencyHz) near(result.tremor.frequencyHz, of.tremor.frequencyHz, 'frequency');
    if (of.tremor.amplitudeRmsMm) near(result.tremor.amplitudeRmsMm, of.tremor.amplitudeRmsMm, 'amplitude');
  });
});

it.each(files.filter((of) => of.page))('$file is measured as a page', (of) => {
  const { dpi, ...gray } = drawInk(readInkml(readFileSync(new URL(of.file, folder))))!;
  const page = measurePage(gray, { scale: { pxPerMm: dpi / 25.4, source: 'dpi' } });
  const words = page.lines.reduce((sum, line) => sum + line.words.length, 0);
  const loops = page.measures.find(({ code }) => code === 'closed-loops')!.value;
  const { lines, words: wanted, closedLoops, xHeightMm } = of.page!;
  expect([page.lines.length, words, loops]).toEqual([lines, wanted, closedLoops]);
  const xHeight = page.measures.find(({ code }) => code === 'x-height')!.value!;
  expect(Math.abs(xHeight / xHeightMm - 1)).toBeLessThan(0.015);
});
