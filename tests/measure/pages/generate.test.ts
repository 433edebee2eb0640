import { expect, test } from 'vitest';
import { makePage } from './generate.ts';
import { countHoles } from './loops.ts';
import { SPECS } from './specs.ts';
import type { BoxMm, MadePage, PageSpec } from './types.ts';

function spec(name: string, change: (spec: PageSpec) => Partial<PageSpec> = () => ({})): PageSpec {
  const found = SPECS.find((one) => one.name === name);
  if (!found) throw new Error(`no page is called ${name}`);
  return { ...found, ...change(found) };
}
const clean = { blurPx: 0, noise: 0, jpeg: null, uneven: 0, shadow: 0, dpi: 300 };

/** Ink box of a region of a clean, straight page, mm; the pixel grid leaves half a pixel of doubt on every side. */
function inkBox(page: MadePage, near: BoxMm, marginMm: number): BoxMm {
  const unit = page.spec.picture.dpi / 25.4;
  const [offsetX, offsetY] = page.truth.corners[0] as [number, number];
  let [left, right, top, bottom] = [Infinity, -Infinity, Infinity, -Infinity];
  const from = (mm: number, offset: number): number => Math.floor(mm * unit + offset);
  for (let y = from(near.yMm - marginMm, offsetY); y <= from(near.yMm + near.heightMm + marginMm, offsetY); y += 1)
    for (let x = from(near.xMm - marginMm, offsetX); x <= from(near.xMm + near.widthMm + marginMm, offsetX); x += 1)
      if ((page.gray[y * page.width + x] as number) < 150) {
        left = Math.min(left, x);
        right = Math.max(right, x + 1);
        top = Math.min(top, y);
        bottom = Math.max(bottom, y + 1);
      }
  return {
    xMm: (left - offsetX) / unit,
    yMm: (top - offsetY) / unit,
    widthMm: (right - left) / unit,
    heightMm: (bottom - top) / unit,
  };
}

test('there are at least 60 pages, each with a name of its own, and four of them are one page at four resolutions', () => {
  expect(SPECS.length).toBeGreaterThanOrEqual(60);
  expect(new Set(SPECS.map(({ name }) => name)).size).toBe(SPECS.length);
  expect(SPECS.filter(({ name }) => name.startsWith('dpi-')).map(({ seed }) => seed)).toEqual([221, 221, 221, 221]);
});

test('the same specification makes the same bytes', async () => {
  const [one, two] = [await makePage(spec('dpi-150')), await makePage(spec('dpi-150'))];
  expect(one.bytes.equals(two.bytes)).toBe(true);
  expect(one.truth).toEqual(two.truth);
});

test.each(['plain-kalam', 'plain-nixish', 'slant-right', 'joined-bad', 'wave-short'])(
  'the ink of %s lies where its truth says',
  async (name) => {
    const page = await makePage(
      spec(name, (s) => ({ ruling: { kind: 'plain' }, ink: 'black', picture: { ...s.picture, ...clean } })),
    );
    for (const word of page.truth.lines.flatMap((line) => line.words)) {
      const seen = inkBox(page, word.box, 0.35);
      expect(Math.abs(seen.xMm - word.box.xMm)).toBeLessThan(0.1);
      expect(Math.abs(seen.yMm - word.box.yMm)).toBeLessThan(0.1);
      expect(Math.abs(seen.widthMm - word.box.widthMm)).toBeLessThan(0.17);
      expect(Math.abs(seen.heightMm - word.box.heightMm)).toBeLessThan(0.17);
    }
  },
);

test('gaps between boxes on a straight page are the gaps of the truth', async () => {
  const { truth } = await makePage(spec('shrink-line', (s) => ({ picture: { ...s.picture, dpi: 100 } })));
  for (const line of truth.lines)
    for (const [index, word] of line.words.entries()) {
      const before = line.words[index - 1];
      if (!before) continue;
      expect(word.gapBeforeMm).toBeCloseTo(word.box.xMm - before.box.xMm - before.box.widthMm, 9);
      expect(Math.log(word.xHeightMm / before.xHeightMm)).toBeCloseTo(-0.0437, 9);
    }
});

test('a turned sheet shows a rising line: the corners turn counter-clockwise', async () => {
  const { truth } = await makePage(spec('turned-left', (s) => ({ picture: { ...s.picture, dpi: 100 } })));
  const [left, right] = truth.corners as [[number, number], [number, number]];
  expect((Math.atan2(left[1] - right[1], right[0] - left[0]) * 180) / Math.PI).toBeCloseTo(1.137, 6);
});

test('waves have the root mean square of their sine where whole waves fit', async () => {
  const { truth } = await makePage(
    spec('wave-short', (s) => ({ writing: { ...s.writing, waveLengthMm: 3.1 }, picture: { ...s.picture, dpi: 100 } })),
  );
  for (const line of truth.lines) expect(line.baselineRmsMm).toBeCloseTo(0.57 / Math.SQRT2, 2);
});

test('holes are counted as a person would', () => {
  const holes = (rows: string[]): number => {
    const width = rows[0]!.length;
    return countHoles(Uint8Array.from([...rows.join('')].map((c) => (c === '#' ? 1 : 0))), width, rows.length);
  };
  expect(holes(['.....', '.###.', '.#.#.', '.###.', '.....'])).toBe(1);
  expect(holes(['.....', '..#..', '.#.#.', '..#..', '.....'])).toBe(1);
  expect(holes(['.....', '.###.', '.#...', '.###.', '.....'])).toBe(0);
  expect(holes(['#####', '#.#.#', '##.##', '#####', '.....'])).toBe(3);
});

test('the loops of known words are counted, and an opened letter loses its loop', async () => {
  const change =
    (openShare: number) =>
    (s: PageSpec): Partial<PageSpec> => ({
      writing: { ...s.writing, lines: 1, openShare },
    });
  const text = [['door', 'bead', 'pool', 'sun']];
  const closed = await makePage(spec('plain-readability', change(0)), text);
  // d o o, b e a d, p o o close; r, l and sun do not.
  expect(closed.truth.closedLoops).toEqual({ low: 10, high: 10 });
  const open = await makePage(spec('plain-readability', change(1)), text);
  expect(open.truth.closedLoops).toEqual({ low: 3, high: 3 });
});
