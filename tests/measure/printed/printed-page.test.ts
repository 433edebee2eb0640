/** Sheets that came back badly: each is told by why, and none is guessed at. */
import { expect, test } from 'vitest';
import { codeText, logLayout, readPrintedPage } from '../../../renderer/measure/index.ts';
import type { GrayImage } from '../../../renderer/measure/types.ts';
import { quarterTurned } from '../../../renderer/measure/sheet/turn.ts';
import { logSvg, rastered, scanner, taken } from './log-picture.ts';

const code = {
  layout: 1,
  kind: 'log' as const,
  few: false,
  client: '0a1b2c3d4e',
  firstDay: '2026-11-02',
  sheet: 1,
  content: '123456',
};
const layout = logLayout(210, 297, false);
const marked = layout.circles.filter(({ row, field, value }) => row === 2 && field === 'minutes' && value === 15);
const drawn = marked.map((circle) => ({ circle, mark: 'filled' as const, gray: 60, pen: 0.6 }));
const small = { ...scanner, pxPerMm: 5.9 };
const scan = async (text: string | null, how = small): Promise<GrayImage> =>
  taken(await rastered(logSvg(text, drawn)), how, 3);
const why = (picture: GrayImage): string => {
  const read = readPrintedPage(picture, null, {});
  return read.kind === 'not-read' ? read.why : read.kind;
};

test('a sheet is read whichever way up it lies', async () => {
  const straight = await scan(codeText(code));
  for (const turns of [0, 1, 2, 3] as const) {
    const read = readPrintedPage(quarterTurned(straight, turns).image, null, {});
    expect([turns, read.kind]).toEqual([turns, 'log']);
    if (read.kind !== 'log') continue;
    expect(read.code).toEqual(code);
    expect(read.fields.filter(({ value }) => value !== null)).toEqual([
      { row: 2, field: 'minutes', value: 15, doubt: false, part: null },
    ]);
  }
});

test('a sheet without a code, of another layout, by half, out of focus, or of somebody else is told by why', async () => {
  expect(why(await scan(null))).toBe('no-code');
  expect(why(await scan(codeText({ ...code, layout: 2 })))).toBe('other-layout');
  const whole = await scan(codeText(code));
  const half = {
    ...whole,
    height: Math.floor(whole.height / 2),
    data: whole.data.slice(0, whole.width * Math.floor(whole.height / 2)),
  };
  expect(why(half)).toBe('no-marks');
  expect(why({ width: 800, height: 1100, data: new Uint8Array(880_000).fill(235) })).toBe('no-marks');
  expect(why(await scan(codeText(code), { ...small, blurPx: 12 }))).toMatch(/no-marks|unreadable/);
  const mirrored = { ...whole, data: whole.data.slice() };
  for (let y = 0; y < whole.height; y += 1) mirrored.data.subarray(y * whole.width, (y + 1) * whole.width).reverse();
  expect(['mirrored', 'unreadable', 'no-marks', 'no-code']).toContain(why(mirrored));
});
