import { expect, test } from 'vitest';
import { CORNER_MARK } from '../../renderer/measure/sheet/corner-marks.ts';
import { applied, composed, homographyOf } from '../../renderer/measure/sheet/homography.ts';
import { findMarks } from '../../renderer/measure/sheet/corner-mark-search.ts';
import { paperOf } from '../../renderer/measure/sheet/sheet-edges.ts';
import { sheetEdges } from '../../renderer/measure/sheet/quad.ts';
import { quarterTurned } from '../../renderer/measure/sheet/turn.ts';
import { sheetOf, sheetOfMarks } from '../../renderer/measure/sheet/sheet.ts';

type XY = readonly [number, number];

/** A bright quadrilateral on a dark table, anti-aliased by 4 x 4 samples a pixel. */
function table(width: number, height: number, corners: readonly XY[]): Uint8Array {
  const inside = (x: number, y: number): boolean =>
    corners.every(([ax, ay], i) => {
      const [bx, by] = corners[(i + 1) % 4]!;
      return (bx - ax) * (y - ay) - (by - ay) * (x - ax) >= 0;
    });
  const data = new Uint8Array(width * height);
  for (let y = 0; y < height; y += 1)
    for (let x = 0; x < width; x += 1) {
      let cover = 0;
      for (let k = 0; k < 16; k += 1) cover += inside(x + ((k & 3) + 0.5) / 4, y + ((k >> 2) + 0.5) / 4) ? 1 : 0;
      data[y * width + x] = 70 + (160 * cover) / 16;
    }
  return data;
}

test('the corners of a sheet on a table are found to half a pixel', () => {
  const corners = [
    [61.3, 52.7],
    [540.9, 71.2],
    [571.6, 742.4],
    [38.2, 731.8],
  ] as const;
  const found = sheetEdges({ width: 620, height: 800, data: table(620, 800, corners) });
  expect(found.kind).toBe('quad');
  if (found.kind !== 'quad') return;
  found.corners.forEach(({ x, y }, i) => {
    expect(Math.abs(x - corners[i]![0])).toBeLessThan(0.5);
    expect(Math.abs(y - corners[i]![1])).toBeLessThan(0.5);
  });
});

test('a sheet that runs out of the photo at an angle is cut, a plain scan and a scan with a dark rim are not', () => {
  const cut = table(620, 800, [
    [-60, 52],
    [540, 91],
    [561, 742],
    [-80, 731],
  ]);
  expect(sheetEdges({ width: 620, height: 800, data: cut }).kind).toBe('cut');
  expect(sheetEdges({ width: 620, height: 800, data: new Uint8Array(620 * 800).fill(236) }).kind).toBe('none');
  const rim = new Uint8Array(620 * 800).fill(236);
  for (let y = 0; y < 800; y += 1) rim.fill(30, y * 620 + 585, (y + 1) * 620);
  expect(sheetEdges({ width: 620, height: 800, data: rim }).kind).toBe('none');
});

test('a soft shadow is no table', () => {
  const data = Uint8Array.from({ length: 620 * 800 }, (_, i) => {
    const x = (i % 620) + 0.2 * Math.floor(i / 620);
    return 236 * (1 - 0.5 / (1 + Math.exp(-(x - 400) / 40)));
  });
  expect(sheetEdges({ width: 620, height: 800, data }).kind).toBe('none');
});

test('known sheets are told by ratio and size, upright or lying', () => {
  expect(paperOf(297 / 210, null)?.name).toBe('A4');
  expect(paperOf(279.4 / 215.9, 245)?.name).toBe('Letter');
  expect(paperOf(210 / 297, 250)).toEqual({ name: 'A4', widthMm: 297, heightMm: 210 });
  expect(paperOf(210 / 148, Math.sqrt(148 * 210))?.name).toBe('A5');
  expect(paperOf(1, 200)).toBeNull();
});

test('a map takes its four points where they belong, and maps can follow each other', () => {
  const from = [
    { x: 0, y: 0 },
    { x: 10, y: 0 },
    { x: 10, y: 20 },
    { x: 0, y: 20 },
  ];
  const to = [
    { x: 3, y: 1 },
    { x: 14, y: 2 },
    { x: 13, y: 25 },
    { x: 1, y: 22 },
  ];
  const map = homographyOf(from, to)!;
  from.forEach((p, i) => {
    const q = applied(map, p.x, p.y);
    expect(q.x).toBeCloseTo(to[i]!.x, 9);
    expect(q.y).toBeCloseTo(to[i]!.y, 9);
  });
  const back = composed(homographyOf(to, from)!, map);
  const p = applied(back, 7, 13);
  expect([p.x, p.y]).toEqual([expect.closeTo(7, 9), expect.closeTo(13, 9)]);
});

test('four corner marks give centers, sheet and which way up it lies', () => {
  const px = 6;
  const [width, height] = [210 * px, 297 * px];
  const ink = new Uint8Array(width * height);
  const square = (cx: number, cy: number, side: number, value: number): void => {
    for (let y = Math.round((cy - side / 2) * px); y < Math.round((cy + side / 2) * px); y += 1)
      for (let x = Math.round((cx - side / 2) * px); x < Math.round((cx + side / 2) * px); x += 1)
        ink[y * width + x] = value;
  };
  const inset = CORNER_MARK.insetMm;
  for (const [x, y] of [
    [inset, inset],
    [210 - inset, inset],
    [210 - inset, 297 - inset],
    [inset, 297 - inset],
  ] as const)
    square(x, y, CORNER_MARK.sideMm, 1);
  square(inset, inset, CORNER_MARK.holeMm, 0);
  const found = findMarks(ink, width, height);
  expect(found?.paper.name).toBe('A4');
  expect(found?.hollow).toBe(0);
  expect(found?.centers[2]).toEqual({ x: (210 - inset) * px, y: (297 - inset) * px });
  const upside = quarterTurned({ width, height, data: ink }, 2).image;
  expect(findMarks(upside.data, width, height)?.hollow).toBe(2);
});

test('a quarter turn moves every pixel to where its map says', () => {
  const data = Uint8Array.from({ length: 12 }, (_, i) => i);
  for (const turns of [1, 2, 3] as const) {
    const { image, toPicture } = quarterTurned({ width: 4, height: 3, data }, turns);
    for (let y = 0; y < image.height; y += 1)
      for (let x = 0; x < image.width; x += 1) {
        const p = applied(toPicture, x + 0.5, y + 0.5);
        expect(image.data[y * image.width + x]).toBe(data[Math.floor(p.y) * 4 + Math.floor(p.x)]);
      }
  }
});

test('a sheet half in shadow has the corners of the whole sheet', () => {
  const corners = [
    [61.3, 52.7],
    [540.9, 71.2],
    [571.6, 742.4],
    [38.2, 731.8],
  ] as const;
  const data = table(620, 800, corners).map((v, i) => v * (1 - 0.45 / (1 + Math.exp((330 - (i % 620)) / 25))));
  const found = sheetEdges({ width: 620, height: 800, data });
  if (found.kind !== 'quad') throw new Error(`the sheet was not found: ${found.kind}`);
  found.corners.forEach(({ x, y }, i) => {
    expect(Math.abs(x - corners[i]![0])).toBeLessThan(1);
    expect(Math.abs(y - corners[i]![1])).toBeLessThan(1);
  });
});

test('corner marks further apart across than down by over 1 % are questioned', () => {
  const picture = { width: 2100, height: 2970, data: new Uint8Array(0) };
  const marksAt = (stretch: number): ReturnType<typeof findMarks> => ({
    centers: [
      { x: 175 * stretch, y: 175 },
      { x: 1925 * stretch, y: 175 },
      { x: 1925 * stretch, y: 2795 },
      { x: 175 * stretch, y: 2795 },
    ],
    hollow: 0,
    paper: { name: 'A4', widthMm: 210, heightMm: 297 },
    sidePx: 50,
  });
  const codes = (stretch: number): string[] => {
    const image = { ...picture, data: new Uint8Array(picture.width * picture.height).fill(240) };
    const sheet = sheetOfMarks(sheetOf(image, null), marksAt(stretch)!);
    return sheet.warnings.map(({ code }) => code);
  };
  expect(codes(1.004)).toEqual([]);
  expect(codes(1.016)).toEqual(['axes-differ']);
});

test('a scan of squared paper under a soft shadow is no sheet that was cut', () => {
  const squares = Uint8Array.from({ length: 620 * 800 }, (_, i) => {
    const [x, y] = [i % 620, Math.floor(i / 620)];
    const paper = x % 14 < 2 || y % 14 < 2 ? 190 : 242;
    return paper * (1 - 0.16 / (1 + Math.exp((300 - x - 0.3 * (y - 400)) / 25)));
  });
  expect(sheetEdges({ width: 620, height: 800, data: squares }).kind).toBe('none');
});
