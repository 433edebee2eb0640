import { createCanvas, GlobalFonts } from '@napi-rs/canvas';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { measurePage } from '../../renderer/measure/measure-page.ts';
import { changeOfHand } from '../../renderer/measure/trust/several-hands.ts';
import { printedLines } from '../../renderer/measure/trust/printed-lines.ts';
import type { GrayImage, LineResult, PageResult } from '../../renderer/measure/types.ts';
import { makePage } from './pages/generate.ts';
import { peopleSpecs } from './pages/people-specs.ts';
import type { People } from './pages/types.ts';

const scale = { pxPerMm: 200 / 25.4, source: 'dpi' as const };
const measured = (image: GrayImage, text?: string): PageResult =>
  measurePage(image, text === undefined ? { scale } : { scale, text });
const codes = ({ warnings }: PageResult): string[] => warnings.map(({ code }) => code);

const pages = new Map<string, Promise<GrayImage>>();
/** A page as a person writes it, small enough for a test; each is drawn once. */
function written(change: Partial<People> = {}): Promise<GrayImage> {
  const key = JSON.stringify(change);
  const page = pages.get(key) ?? drawn(change);
  pages.set(key, page);
  return page;
}

async function drawn(change: Partial<People>): Promise<GrayImage> {
  const [like] = peopleSpecs(3, 1);
  const people = { ...like!.people!, letterCv: 0.18, crossedOut: 0, inserted: 0, parted: 0, contrast: null };
  const writing = {
    ...like!.writing,
    font: 'patrick-hand' as const,
    xHeightMm: 3,
    lines: 7,
    wordsPerLine: 6,
    pitchMm: 14,
  };
  const { gray, width, height } = await makePage({
    ...like!,
    ink: 'black',
    ruling: { kind: 'plain' },
    writing,
    people: { ...people, showThrough: 0, holes: false, ...change },
    picture: { ...like!.picture, dpi: 200 },
  });
  return { width, height, data: gray };
}

/** Lines of print or of another script, drawn by a font of the packages. */
function set(file: string, px: number, lines: readonly string[]): GrayImage {
  const family = file.replace(/\W/g, '');
  GlobalFonts.registerFromPath(
    fileURLToPath(new URL(`../../node_modules/@fontsource/${file}`, import.meta.url)),
    family,
  );
  const canvas = createCanvas(1654, 1200);
  const context = canvas.getContext('2d');
  context.fillStyle = '#f6f5f0';
  context.fillRect(0, 0, 1654, 1200);
  context.fillStyle = '#222222';
  context.font = `${px}px ${family}`;
  lines.forEach((line, i) => context.fillText(line, 150, 120 + 1.7 * px * i));
  const { data } = context.getImageData(0, 0, 1654, 1200);
  return { width: 1654, height: 1200, data: Uint8Array.from({ length: 1654 * 1200 }, (_, i) => data[4 * i]!) };
}

const turned = ({ width, height, data }: GrayImage): GrayImage => ({
  width,
  height,
  data: Uint8Array.from(data).reverse(),
});

/** The darker of two pages at every place. */
const over = (a: GrayImage, b: GrayImage): GrayImage => ({
  ...a,
  data: a.data.map((value, i) => Math.min(value, b.data[i] ?? 255)),
});

const FORM = ['Please write the sentences below in your usual', 'hand and take all the time that you need for'];
// Own sentences, with as many letters below the line as Russian prose has.
const RUSSIAN = [
  'Утром мы пошли в лес за грибами и встретили',
  'друга. Он жил у реки, часто ходил по этой',
  'дороге. Вечером сели у огня, грели руки,',
  'пели до ночи. Потом пошёл дождь, и нам',
  'пришлось вернуться раньше, чем хотели.',
];

test('faint pencil is read as the same writing in ink is, and said to be faint', async () => {
  const [dark, faint] = [measured(await written()), measured(await written({ contrast: 0.28 }))];
  expect(codes(dark)).not.toContain('faint');
  expect(codes(faint)).toContain('faint');
  expect(faint.lines).toHaveLength(dark.lines.length);
  const height = ({ measures }: PageResult) => measures.find(({ code }) => code === 'x-height')!.value!;
  expect(Math.abs(height(faint) / height(dark) - 1)).toBeLessThan(0.08);
});

test('print above writing is named by its lines; writing alone is not called print', async () => {
  const page = await written();
  expect(codes(measured(page))).not.toContain('printed-text');
  const form = measured(
    over(page, set('atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-400-normal.woff2', 30, FORM)),
  );
  expect(form.warnings.find(({ code }) => code === 'printed-text')?.message).toMatch(
    /^Lines 1, 2 look printed|^Lines 1 and 2 look printed/,
  );
});

test('upright Cyrillic is questioned, not refused; the text of another script is said', () => {
  const page = set('bad-script/files/bad-script-cyrillic-400-normal.woff2', 60, RUSSIAN);
  const result = measured(page);
  expect(codes(result)).not.toContain('upside-down');
  expect(result.lines).toHaveLength(RUSSIAN.length);
  expect(codes(measured(page, RUSSIAN.join('\n')))).toContain('other-script');
});

test('a Latin page that lies upside down is refused or questioned still', async () => {
  const said = codes(measured(turned(await written())));
  expect(said.includes('upside-down') || said.includes('mirrored') || said.includes('unusual-script')).toBe(true);
});

test('binder holes are no words', async () => {
  const [without, punched] = [measured(await written()), measured(await written({ holes: true }))];
  expect(punched.lines.map(({ words }) => words.length)).toEqual(without.lines.map(({ words }) => words.length));
});

const line = (xHeightMm: number, slant: number, width: number, scatter = 0.15, spread = 0.2): LineResult =>
  ({
    xHeightMm,
    baselineRmsMm: scatter * xHeightMm,
    words: [
      {
        unevenMm: Array.from({ length: 12 }, (_, i) => xHeightMm * Math.exp(spread * (i / 6 - 1))),
        xHeightsMm: [],
        slantsDeg: [slant],
        strokeWidthsMm: [width],
      },
    ],
  }) as unknown as LineResult;

test('another hand is told from the line where size, slant and stroke change together', () => {
  const [one, other] = [line(3, 5, 0.3), line(1.6, 22, 0.45)];
  expect(changeOfHand([one, one, one, one, other, other, other])).toBe(4);
  expect(changeOfHand([one, one, one, one, other, other]), 'two lines say nothing').toBeNull();
  // One hand that grows a little and leans more on each line.
  expect(changeOfHand([3, 3.1, 2.9, 3.2, 3, 3.3, 3.2].map((size, i) => line(size, i, 0.3)))).toBeNull();
});

test('lines of even letters are print beside writing; alone only in the sizes of print', () => {
  const print = line(2, 0, 0.3, 0.01, 0.01);
  expect(printedLines([print, line(3, 5, 0.3)])).toEqual([0]);
  expect(printedLines([print, print])).toEqual([0, 1]);
  expect(printedLines([line(3.4, 0, 0.3, 0.01, 0.01)])).toEqual([]);
  expect(printedLines([line(3, 5, 0.3)])).toEqual([]);
});
