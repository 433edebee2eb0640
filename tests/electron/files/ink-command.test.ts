import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import sharp from 'sharp';
import { afterAll, describe, expect, it } from 'vitest';
import { run } from '../../../electron/command-line.ts';
import { INK_CODES } from '../../../renderer/ink/index.ts';
import type { InkResult } from '../../../renderer/ink/index.ts';

const folder = mkdtempSync(path.join(tmpdir(), 'fairhand-ink-command-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const reference = (name: string): string =>
  fileURLToPath(new URL(`../../outside/data/ink/${name}.inkml`, import.meta.url));
const own = (name: string, text: string): string => {
  writeFileSync(path.join(folder, name), text);
  return path.join(folder, name);
};

interface Answer extends InkResult {
  page: { lines: { words: unknown[] }[]; measures: { code: string; value: number }[] } | null;
}

describe('fairhand ink', () => {
  it('answers as documented and draws the page', async () => {
    const picture = path.join(folder, 'page.png');
    const answered = await run(['ink', reference('r12-ovals-page'), '--json', '--page', picture]);
    expect(answered.exit).toBe(0);
    const json = answered.json as Answer;
    expect(Object.keys(json)).toEqual('source quality measures tremor stops pauses words page warnings'.split(' '));
    expect(json.measures.map(({ code }) => code)).toEqual(INK_CODES);
    expect(Object.keys(json.measures[0]!)).toEqual('code value unit n low high method reliable why'.split(' '));
    expect(json.page!.lines.map(({ words }) => words.length)).toEqual([5, 5]);
    expect(json.words).toHaveLength(10);
    const { width, density } = await sharp(readFileSync(picture)).metadata();
    expect([Math.round(density!), width! > 1000]).toEqual([300, true]);
  });

  it('takes the task and the text that are given before those of the file', async () => {
    const text = own('text.txt', 'ten letters');
    const answered = await run(['ink', reference('r11-text-60hz'), '--task', 'line', '--text', text]);
    const { source, measures } = answered.json as Answer;
    expect(source).toMatchObject({ task: 'line', letters: 10 });
    expect(measures.find(({ code }) => code === 'strokes')).toMatchObject({ value: null, why: 'task' });
    expect(answered.text).toContain('letters-per-minute');
  });

  it('finds words on the drawn page where the file groups none', async () => {
    const text = readFileSync(reference('r12-ovals-page'), 'utf8');
    const bare = own('bare.inkml', text.replaceAll(/<\/?traceGroup>|<annotation type="kind">\w+<\/annotation>/g, ''));
    const { words, measures } = (await run(['ink', bare])).json as Answer;
    expect(words).toHaveLength(10);
    expect(measures.find(({ code }) => code === 'lifts-per-word')!.value).toBe(3);
  });

  it('has no page and says no-words without a scale', async () => {
    const text = readFileSync(reference('r11-text-60hz'), 'utf8');
    const unscaled = own(
      'dev.inkml',
      text
        .replaceAll('units="mm"', 'units="dev"')
        .replaceAll(/<\/?traceGroup>|<annotation type="kind">\w+<\/annotation>/g, ''),
    );
    const json = (await run(['ink', unscaled])).json as Answer;
    expect(json.page).toBeNull();
    expect(json.measures.find(({ code }) => code === 'lifts-per-word')!.why).toBe('no-words');
    expect((await run(['ink', unscaled, '--page', path.join(folder, 'none.png')])).exit).toBe(2);
  });

  it('ends with 2 and one sentence for wrong use and for what cannot be read', async () => {
    const file = reference('r01-strokes');
    const wrong = [
      ['ink'],
      ['ink', file, file],
      ['ink', file, '--task', 'drawing'],
      ['ink', file, '--sideways'],
      ['ink', path.join(folder, 'missing.inkml')],
      ['ink', folder],
      ['ink', file, '--text', path.join(folder, 'missing.txt')],
      ['ink', own('dtd.inkml', '<!DOCTYPE ink><ink/>')],
      ['ink', own('other.inkml', 'not ink')],
    ];
    for (const argv of wrong) {
      const answered = await run(argv);
      expect(answered.exit, argv.join(' ')).toBe(2);
      expect(answered.error).toMatch(/^[A-Z].*[.\]]$/s);
    }
  });

  it('answers an empty recording with nulls and a warning', async () => {
    const { exit, json } = await run(['ink', own('empty.inkml', '<ink/>')]);
    expect(exit).toBe(0);
    expect((json as Answer).warnings.map(({ code }) => code)).toEqual(['empty']);
  });
});
