import { beforeAll, describe, expect, test } from 'vitest';
import { measurePage } from '../../renderer/measure/measure-page.ts';
import type { PageResult } from '../../renderer/measure/types.ts';
import type { MeasureOptions } from '../../renderer/measure/measure-options.ts';
import { makePage } from './pages/generate.ts';
import { SPECS } from './pages/specs.ts';
import type { MadePage } from './pages/types.ts';

const scale = { pxPerMm: 200 / 25.4, source: 'dpi' as const };
let page: MadePage;
let text: string;
let read: PageResult;

const measured = (options: Partial<MeasureOptions> = {}, data = page.gray): PageResult =>
  measurePage({ width: page.width, height: page.height, data }, { scale, ...options });
const value = (result: PageResult, code: string): number | null =>
  result.measures.find((m) => m.code === code)?.value ?? null;
const words = (result: PageResult): number => result.lines.reduce((sum, line) => sum + line.words.length, 0);
const codes = (result: PageResult): string[] => result.warnings.map((w) => w.code);

beforeAll(async () => {
  const like = SPECS.find((spec) => spec.name === 'plain-patrick')!;
  const writing = { ...like.writing, lines: 6, wordsPerLine: 6 };
  page = await makePage({ ...like, seed: 4711, writing, picture: { ...like.picture, dpi: 200 } });
  text = page.truth.lines.map((line) => line.words.map((word) => word.text).join(' ')).join('\n');
  read = measured();
});

test('lines, words, size, gaps and loops of a written page', () => {
  expect(read.lines.map((line) => line.words.length)).toEqual(page.truth.lines.map((line) => line.words.length));
  expect(Math.abs(value(read, 'x-height')! / page.truth.xHeightMm - 1)).toBeLessThan(0.015);
  expect(Math.abs(value(read, 'word-gap')! / page.truth.wordGapXh - 1)).toBeLessThan(0.03);
  expect(read.warnings).toEqual([]);
  read.lines.forEach((line, i) =>
    line.words.forEach((word, k) => {
      const truth = page.truth.lines[i]!.words[k]!.box;
      expect(Math.abs(word.box.xMm - truth.xMm)).toBeLessThan(0.15);
      expect(Math.abs(word.box.yMm - truth.yMm)).toBeLessThan(0.15);
    }),
  );
});

test('the same page gives the same result, as plain JSON without any NaN', () => {
  expect(measured()).toEqual(read);
  expect(JSON.parse(JSON.stringify(read))).toEqual(read);
});

test('the text meant reaches the words and letters', () => {
  const known = measured({ text });
  expect(known.textFits).toBe(true);
  expect(known.lines.map((line) => line.words.map((word) => word.text))).toEqual(
    page.truth.lines.map((line) => line.words.map((word) => word.text)),
  );
  expect(value(known, 'closure')).toBeGreaterThan(90);
  for (const word of known.lines.flatMap((line) => line.words))
    expect(word.letters.map((letter) => letter.text).join('')).toBe(word.text);
});

test('a text that is not on the page is not used, and the page says so', () => {
  const known = measured({ text: 'I a I a I a I a I a I a I a I a I a' });
  expect(known.textFits).toBe(false);
  expect(codes(known)).toContain('text-unfit');
  expect(known.lines[0]!.words[0]!.text).toBeNull();
});

test('progress is told in order, and an exception from it stops the work', () => {
  const told: number[] = [];
  measurePage({ width: page.width, height: page.height, data: page.gray }, { scale }, (_, done) => told.push(done));
  expect(told).toEqual([...told].sort((a, b) => a - b));
  expect(told.at(-1)).toBe(1);
  expect(() =>
    measurePage({ width: page.width, height: page.height, data: page.gray }, { scale }, () => {
      throw new Error('cancelled');
    }),
  ).toThrow('cancelled');
});

describe('pages that cannot be trusted', () => {
  const empty = (result: PageResult): void => {
    expect(result.lines).toEqual([]);
    expect(result.measures.every((m) => m.value === null)).toBe(true);
  };

  test.each([
    [1, 'sideways'],
    [2, 'upside-down'],
    [3, 'sideways'],
  ] as const)('turned by %s quarters: %s', (quarterTurns, code) => {
    const result = measured({ quarterTurns });
    expect(codes(result)).toContain(code);
    empty(result);
  });

  test('mirrored, with the text and without', () => {
    const { width, height } = page;
    const data = Uint8Array.from(page.gray, (_, i) => page.gray[i - (i % width) + width - 1 - (i % width)]!);
    expect(data).toHaveLength(width * height);
    expect(codes(measured({}, data))).toContain('mirrored');
    expect(codes(measured({ text }, data))).toContain('mirrored');
    empty(measured({}, data));
  });

  test('without a scale nothing is measured', () => {
    const result = measured({ scale: null });
    expect(codes(result)).toContain('no-scale');
    empty(result);
  });

  test('blank, black and tiny pictures', () => {
    const plain = (width: number, height: number, gray: number): PageResult =>
      measurePage({ width, height, data: new Uint8Array(width * height).fill(gray) }, { scale });
    expect(codes(plain(1, 1, 255))).toEqual(['too-small']);
    expect(codes(plain(800, 900, 0))).toEqual(['all-black']);
    expect(codes(plain(800, 900, 244))).toEqual(['blank']);
    for (const result of [plain(1, 1, 255), plain(800, 900, 0), plain(800, 900, 244)]) empty(result);
  });

  test('one dot is no writing, noise is no writing', () => {
    const data = new Uint8Array(800 * 900).fill(240);
    for (let y = 400; y < 406; y += 1) data.fill(20, y * 800 + 300, y * 800 + 306);
    expect(codes(measurePage({ width: 800, height: 900, data }, { scale }))).toEqual(['blank']);
  });

  test('a buffer of the wrong size is refused', () => {
    expect(() => measurePage({ width: 3, height: 3, data: new Uint8Array(8) }, { scale })).toThrow(RangeError);
  });
});

describe('corrections by hand', () => {
  const middle = (line: number, word: number): { xMm: number; yMm: number } => {
    const { box } = read.lines[line]!.words[word]!;
    const base = read.lines[line]!.baseline;
    return { xMm: box.xMm + box.widthMm / 2, yMm: base[base.length >> 1]!.yMm - 1 };
  };

  test('two words become one, and again two', () => {
    const join = { kind: 'join-words' as const, at: middle(1, 1), with: middle(1, 2) };
    const joined = measured({ corrections: [join] });
    expect(words(joined)).toBe(words(read) - 1);
    const gapAt = read.lines[1]!.words[2]!.box.xMm - read.lines[1]!.words[2]!.gapBeforeMm! / 2;
    const split = { kind: 'split-word' as const, at: { xMm: gapAt, yMm: middle(1, 1).yMm } };
    expect(words(measured({ corrections: [join, split] }))).toBe(words(read));
  });

  test('a word that is excluded stays on the page and leaves the measures', () => {
    const result = measured({ corrections: [{ kind: 'exclude-word', at: middle(2, 3) }] });
    expect(result.lines[2]!.words[3]!.excluded).toBe(true);
    expect(words(result)).toBe(words(read));
    const n = (r: PageResult): number => r.measures.find((m) => m.code === 'x-height')!.n;
    expect(n(result)).toBe(n(read) - read.lines[2]!.words[3]!.xHeightsMm.length);
  });

  test('a text set by hand replaces that of one word', () => {
    const result = measured({ text, corrections: [{ kind: 'set-text', at: middle(0, 2), text: 'cat' }] });
    expect(result.lines[0]!.words[2]!.text).toBe('cat');
    expect(result.lines[0]!.words[3]!.text).toBe(page.truth.lines[0]!.words[3]!.text);
  });

  test('a baseline drawn by hand is the line from then on', () => {
    const line = read.lines[3]!;
    const first = line.baseline[0]!;
    const last = line.baseline.at(-1)!;
    const left = { xMm: first.xMm, yMm: first.yMm + 0.5 };
    const right = { xMm: last.xMm, yMm: last.yMm - 0.5 };
    const result = measured({ corrections: [{ kind: 'move-baseline', at: middle(3, 2), left, right }] });
    const drawn = (Math.atan2(left.yMm - right.yMm, right.xMm - left.xMm) * 180) / Math.PI;
    expect(result.lines[3]!.baselineAngleDeg).toBeCloseTo(drawn, 6);
    expect(result.lines[2]!.baseline).toEqual(read.lines[2]!.baseline);
    expect(result.lines[2]!.xHeightMm).toBe(read.lines[2]!.xHeightMm);
  });

  test('a line is parted and put together again', () => {
    const at = { xMm: read.lines[4]!.words[3]!.box.xMm - 1, yMm: middle(4, 2).yMm };
    const split = measured({ corrections: [{ kind: 'split-line', at }] });
    expect(split.lines).toHaveLength(read.lines.length + 1);
    const join = { kind: 'join-lines' as const, at: middle(4, 1), with: middle(4, 4) };
    expect(measured({ corrections: [{ kind: 'split-line', at }, join] }).lines).toHaveLength(read.lines.length);
  });

  test('a word moved to another line counts there, and its height is read nowhere', () => {
    const { box } = read.lines[3]!.words[2]!;
    const move = { kind: 'move-to-line' as const, at: middle(3, 2), word: box, line: middle(2, 2) };
    const result = measured({ corrections: [move] });
    const count = (r: PageResult): number[] => r.lines.map((line) => line.words.length);
    expect(count(result)).toEqual(count(read).map((n, i) => (i === 2 ? n + 1 : i === 3 ? n - 1 : n)));
    const moved = result.lines[2]!.words.filter((word) => word.moved);
    expect(moved).toHaveLength(1);
    expect(moved[0]!.box.xMm).toBeCloseTo(box.xMm, 6);
    expect(moved[0]!.xHeightsMm).toEqual([]);
    // The space that it left behind is no word gap.
    expect(result.lines[3]!.words[2]!.gapBeforeMm).toBeNull();
    expect(result.lines[3]!.words[3]!.gapBeforeMm).toBeCloseTo(read.lines[3]!.words[4]!.gapBeforeMm!, 6);
    expect(result.lines[2]!.xHeightMm).toBeCloseTo(read.lines[2]!.xHeightMm!, 2);
    // It lasts beside others, in any order.
    const text = {
      kind: 'set-text' as const,
      at: { xMm: box.xMm + box.widthMm / 2, yMm: middle(2, 2).yMm },
      text: 'put',
    };
    expect(count(measured({ corrections: [text, move] }))).toEqual(count(result));
  });

  test('a letter marked unreadable leaves closure and heights', () => {
    const known = measured({ text });
    const [line, word] = [0, 1];
    const target = known.lines[line]!.words[word]!.letters[1]!;
    const at = { xMm: target.box.xMm + target.box.widthMm / 2, yMm: target.box.yMm + target.box.heightMm / 2 };
    const result = measured({ text, corrections: [{ kind: 'letter-unreadable', at }] });
    expect(result.lines[line]!.words[word]!.letters.map((l) => l.excluded).filter(Boolean)).toHaveLength(1);
  });

  test('what points nowhere changes nothing', () => {
    const nowhere = { xMm: 100, yMm: 280 };
    expect(measured({ corrections: [{ kind: 'exclude-word', at: nowhere }] })).toEqual(read);
  });
});
