/**
 * Lines at true size. Outside: a card is 85.60 x 53.98 mm (ISO/IEC 7810, ID-1); CSS pixels of a 96 dpi screen are 96 to
 * the inch of 25.4 mm (CSS Values and Units Level 4, absolute lengths).
 */
import { englishTelling } from '../../../renderer/logic/texts/screens/telling.ts';
import { expect, test } from 'vitest';
import { scaleOfBox, scaleSetting } from '../../../renderer/logic/sample/ink-scale.ts';
import {
  pxPerMmNow,
  sameEnlargement,
  scaleOfPenScreen,
  shownSize,
  sizeWords,
  viewOf,
} from '../../../renderer/logic/readback/true-size.ts';
import type { LinePicture } from '../../../renderer/logic/readback/line-pictures.ts';

const screen = { width: 1280, height: 800, devicePixelRatio: 1 };
const at = '2026-03-01T09:00:00.000Z';
/** 300 dpi: 1,000 px are 84.67 mm. */
const picture: LinePicture = {
  view: 'v',
  turns: 0,
  pageWidth: 2480,
  pageHeight: 3508,
  x: 100,
  y: 100,
  width: 1000,
  height: 120,
  cropped: true,
  pxPerMm: 300 / 25.4,
};

test('a line is as wide on the screen as on paper, by a card held on it', () => {
  // A card is 323.5 px wide on a screen of 96 dpi.
  const box = scaleOfBox((85.6 * 96) / 25.4, (53.98 * 96) / 25.4, 'card');
  expect(box.x).toBeCloseTo(96 / 25.4, 6);
  const px = pxPerMmNow({ screen, pxPerMm: box.x, at }, screen);
  const size = shownSize(picture, px, 1)!;
  expect(size.width).toBeCloseTo((1000 * 96) / 300, 6);
  expect(size.height).toBeCloseTo((120 * 96) / 300, 6);
  expect(shownSize(picture, px, 2)!.width).toBeCloseTo((2000 * 96) / 300, 6);
  // A page that lies on its side is turned upright: its sides change places.
  expect(shownSize({ ...picture, turns: 1 }, px, 1)!.width).toBeCloseTo((120 * 96) / 300, 6);
});

test('zooming the window does not change the line; another screen has no size yet', () => {
  const scale = { screen, pxPerMm: 4, at };
  expect(pxPerMmNow(scale, { ...screen, devicePixelRatio: 2 })).toBe(2);
  expect(pxPerMmNow(scale, { ...screen, width: 1920 })).toBeNull();
  expect(pxPerMmNow(null, screen)).toBeNull();
  expect(shownSize(picture, null, 1)).toBeNull();
  expect(shownSize({ ...picture, pxPerMm: null }, 4, 1)).toBeNull();
});

test('the scale set for the pen on this screen serves too, that of a tablet does not', () => {
  const scale = { pxPerMmX: 4, pxPerMmY: 4.02, source: 'card' as const, at };
  expect(scaleOfPenScreen({ device: 'Slate', surface: 'screen-film', screen, scale })).toEqual({
    screen,
    pxPerMm: 4.01,
    at,
  });
  expect(scaleOfPenScreen({ device: 'Tablet', surface: 'tablet-paper', screen, scale })).toBeNull();
});

test('what was seen at two sizes has none; the model compares readings of one size', () => {
  const lines = [{ intended: 'a', read: 'a', seconds: null }];
  expect(sameEnlargement(null, 1)).toBe(1);
  expect(sameEnlargement({ enlargement: 1, lines }, 1)).toBe(1);
  expect(sameEnlargement({ enlargement: 1, lines }, 2)).toBeNull();
  expect(sameEnlargement({ enlargement: null, lines }, 1)).toBeNull();
  expect([{}, { enlargement: 1 }, { enlargement: 2 }, { enlargement: null }].map(viewOf)).toEqual([
    null,
    null,
    '200',
    'unknown-size',
  ]);
  expect([1, 1.5, null].map((times) => sizeWords(times, englishTelling))).toEqual([
    'at true size',
    '1.5 times as large as written',
    'at a size not known',
  ]);
});

test('a scale is set twice: a slip, a first, one that differs, then the mean of both', () => {
  // A card of 85.60 x 53.98 mm (ISO/IEC 7810, ID-1) at four pixels a millimeter.
  const right = scaleOfBox(342.4, 215.92, 'card');
  expect(scaleSetting(null, { x: 4, y: 4.05 }, 'screen').state).toBe('refused');
  expect(scaleSetting(null, { x: 4, y: 4.05 }, 'tablet-paper').state).toBe('first');
  expect(scaleSetting(null, right, 'screen').state).toBe('first');
  expect(scaleSetting(right, { x: 4.03, y: 4.03 }, 'screen').state).toBe('differs');
  const set = scaleSetting(right, { x: 4.01, y: 4.01 }, 'screen');
  expect(set.state === 'set' && [set.scale.x, set.scale.y].map((each) => Number(each.toFixed(6)))).toEqual([
    4.005, 4.005,
  ]);
});
