/** Our printed log as a scanner or a phone gives it, marked by formula: what was marked, and how, is known. */
import sharp from 'sharp';
import { logLayout, type LogCircle } from '../../../renderer/measure/index.ts';
import { CODE_GRID, codePlace, codeSquares } from '../../../renderer/measure/printed/page-code.ts';
import { CORNER_MARK } from '../../../renderer/measure/sheet/corner-marks.ts';
import { applied, homographyOf } from '../../../renderer/measure/sheet/homography.ts';
import type { GrayImage } from '../../../renderer/measure/types.ts';
import { choiceFrom } from '../../../renderer/logic/sample/seeded-choice.ts';

export type Mark = 'filled' | 'cross' | 'slash' | 'ring' | 'stray';
export interface Drawn {
  circle: LogCircle;
  mark: Mark;
  /** 0 is black. */
  gray: number;
  /** mm. */
  pen: number;
}

/** How the sheet is taken: picture pixels for a mm, degrees, and the shares of light, noise and blur. */
export interface Taking {
  pxPerMm: number;
  turnDeg: number;
  /** How far corners are drawn in, as shares of the side: a tilted phone. */
  tilt: number;
  /** Fall of light over the sheet, share. */
  shade: number;
  noise: number;
  blurPx: number;
  jpeg: number | null;
  /** Largest departure of the sheet from a plane, mm. */
  curlMm: number;
}

export const scanner: Taking = {
  pxPerMm: 7.9,
  turnDeg: 0.6,
  tilt: 0,
  shade: 0.02,
  noise: 3,
  blurPx: 0.5,
  jpeg: null,
  curlMm: 0,
};
export const phone: Taking = {
  pxPerMm: 10,
  turnDeg: -3,
  tilt: 0.05,
  shade: 0.3,
  noise: 7,
  blurPx: 1,
  jpeg: 80,
  curlMm: 0.5,
};

const SIZE = { widthMm: 210, heightMm: 297 };
const DRAWN = 8;

/** Strokes of a mark as SVG; a hand that shakes leaves its circle a little. */
export function markSvg({ circle, mark, gray, pen }: Drawn, seed: number): string {
  const choice = choiceFrom(seed);
  const off = (most: number): number => ((choice.below(2001) - 1000) / 1000) * most;
  const [cx, cy, rx, ry] = [circle.x + off(0.4), circle.y + off(0.4), circle.rx, circle.ry];
  const path = (points: readonly (readonly [number, number])[]): string =>
    `<polyline points="${points.map(([x, y]) => `${x.toFixed(2)},${y.toFixed(2)}`).join(' ')}" fill="none" stroke="rgb(${gray},${gray},${gray})" stroke-width="${pen}" stroke-linecap="round" stroke-linejoin="round"/>`;
  const wobbly = (points: readonly (readonly [number, number])[]) =>
    points.map(([x, y]) => [x + off(0.25), y + off(0.25)] as const);
  switch (mark) {
    case 'filled': {
      const rows = Math.ceil((2 * ry) / (pen * 1.3));
      return path(
        wobbly(
          Array.from({ length: rows }, (_, i) => {
            const y = -ry * 0.85 + (1.7 * ry * i) / (rows - 1);
            const half = rx * 0.9 * Math.sqrt(Math.max(0.1, 1 - (y / ry) ** 2));
            return [cx + (i % 2 ? half : -half), cy + y] as const;
          }),
        ),
      );
    }
    case 'cross':
      return (
        path(
          wobbly([
            [cx - rx, cy - ry * 0.9],
            [cx + rx, cy + ry * 0.9],
          ]),
        ) +
        path(
          wobbly([
            [cx + rx, cy - ry * 0.9],
            [cx - rx, cy + ry * 0.9],
          ]),
        )
      );
    case 'slash':
      return path(
        wobbly([
          [cx - rx, cy + ry],
          [cx + rx, cy - ry],
        ]),
      );
    case 'ring':
      return path(
        Array.from({ length: 25 }, (_, i) => {
          const angle = (2 * Math.PI * i) / 24;
          return [cx + rx * 1.4 * Math.cos(angle), cy + ry * 1.4 * Math.sin(angle)] as const;
        }),
      );
    case 'stray':
      return path(
        wobbly([
          [cx - 9, cy - 3 + off(2)],
          [cx + 9, cy + 3 + off(2)],
        ]),
      );
  }
}

/** A sheet with its corner marks and its code, and what is drawn on it. */
export function sheetSvg(code: string | null, drawings: readonly string[]): string {
  const { widthMm, heightMm } = SIZE;
  const { insetMm: inset, sideMm: side, holeMm: hole } = CORNER_MARK;
  const square = (x: number, y: number, size: number, fill: string) =>
    `<rect x="${x - size / 2}" y="${y - size / 2}" width="${size}" height="${size}" fill="${fill}"/>`;
  const parts = [
    `<rect width="${widthMm}" height="${heightMm}" fill="white"/>`,
    ...[
      [inset, inset],
      [widthMm - inset, inset],
      [widthMm - inset, heightMm - inset],
      [inset, heightMm - inset],
    ].map(([x, y]) => square(x!, y!, side, 'black')),
    square(inset, inset, hole, 'white'),
  ];
  const place = codePlace(widthMm, heightMm);
  const { columns, moduleMm } = CODE_GRID;
  if (code)
    codeSquares(code).forEach((on, at) => {
      if (on)
        parts.push(
          square(
            place.x + ((at % columns) + 0.5) * moduleMm,
            place.y + (Math.floor(at / columns) + 0.5) * moduleMm,
            moduleMm,
            'black',
          ),
        );
    });
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${widthMm * DRAWN}" height="${heightMm * DRAWN}" viewBox="0 0 ${widthMm} ${heightMm}" font-family="sans-serif">${[...parts, ...drawings].join('')}</svg>`;
}

export function logSvg(code: string | null, drawn: readonly Drawn[], few = false): string {
  const layout = logLayout(SIZE.widthMm, SIZE.heightMm, few);
  const parts: string[] = [];
  for (let row = 0; row <= layout.rows; row += 1) {
    const y = layout.top + row * layout.rowMm;
    parts.push(`<line x1="${layout.left}" x2="${layout.right}" y1="${y}" y2="${y}" stroke="gray" stroke-width=".2"/>`);
  }
  for (const { x, y, rx, ry, field, value } of layout.circles) {
    parts.push(
      `<ellipse cx="${x}" cy="${y}" rx="${rx}" ry="${ry}" fill="none" stroke="rgb(77,77,77)" stroke-width=".35"/>`,
    );
    parts.push(
      field === 'felt'
        ? `<text x="${x + 3.4}" y="${y + 1.5}" font-size="4.2">${['easy', 'fair', 'hard'][value]}</text>`
        : `<text x="${x}" y="${y - 4.3}" font-size="4.4" text-anchor="middle">${value}</text>`,
    );
  }
  drawn.forEach((one, i) => parts.push(markSvg(one, 7 + i)));
  return sheetSvg(code, parts);
}

export async function rastered(svg: string): Promise<GrayImage> {
  const { data, info } = await sharp(Buffer.from(svg), { limitInputPixels: false })
    .grayscale()
    .raw()
    .toBuffer({ resolveWithObject: true });
  return { width: info.width, height: info.height, data: new Uint8Array(data) };
}

/** The drawn sheet in a picture with a pale table around it. */
export async function taken(sheet: GrayImage, how: Taking, seed: number): Promise<GrayImage> {
  const { widthMm, heightMm } = SIZE;
  const choice = choiceFrom(seed);
  const around = how.tilt > 0 ? 12 : 4;
  const [width, height] = [
    Math.round((widthMm + 2 * around) * how.pxPerMm),
    Math.round((heightMm + 2 * around) * how.pxPerMm),
  ];
  const turn = (how.turnDeg * Math.PI) / 180;
  const corner = (sx: number, sy: number) => {
    const [dx, dy] = [
      (sx - 0.5) * widthMm * (1 - (sy < 0.5 ? how.tilt : 0)),
      (sy - 0.5) * heightMm * (1 - (sx < 0.5 ? how.tilt / 2 : 0)),
    ];
    return {
      x: width / 2 + (dx * Math.cos(turn) + dy * Math.sin(turn)) * how.pxPerMm,
      y: height / 2 + (-dx * Math.sin(turn) + dy * Math.cos(turn)) * how.pxPerMm,
    };
  };
  const seenAt = [corner(0, 0), corner(1, 0), corner(1, 1), corner(0, 1)];
  const mm = [
    { x: 0, y: 0 },
    { x: widthMm, y: 0 },
    { x: widthMm, y: heightMm },
    { x: 0, y: heightMm },
  ];
  const toSheet = homographyOf(seenAt, mm)!;
  const data = new Uint8Array(width * height);
  for (let y = 0; y < height; y += 1)
    for (let x = 0; x < width; x += 1) {
      const at = applied(toSheet, x + 0.5, y + 0.5);
      const curl = how.curlMm * Math.sin((Math.PI * at.x) / widthMm);
      const [px, py] = [at.x * DRAWN, (at.y + curl) * DRAWN];
      const inside = at.x > 0 && at.y > 0 && at.x < widthMm && at.y < heightMm;
      let gray = 236;
      if (inside) {
        const ix = Math.min(sheet.width - 2, Math.max(0, Math.floor(px)));
        const iy = Math.min(sheet.height - 2, Math.max(0, Math.floor(py)));
        const row = iy * sheet.width + ix;
        const ink =
          (sheet.data[row]! +
            sheet.data[row + 1]! +
            sheet.data[row + sheet.width]! +
            sheet.data[row + sheet.width + 1]!) /
          4;
        gray = 25 + (ink / 255) * 212;
      }
      data[y * width + x] = gray * (1 - how.shade * ((x / width + y / height) / 2));
    }
  let picture = sharp(data, { raw: { width, height, channels: 1 } });
  if (how.blurPx > 0.3) picture = picture.blur(how.blurPx);
  const soft = await picture.grayscale().raw().toBuffer();
  for (let i = 0; i < soft.length; i += 1) {
    const noise = (choice.below(1000) + choice.below(1000) + choice.below(1000) - 1500) / 500;
    soft[i] = Math.max(0, Math.min(255, soft[i]! + noise * how.noise));
  }
  if (how.jpeg === null) return { width, height, data: new Uint8Array(soft) };
  const bytes = await sharp(soft, { raw: { width, height, channels: 1 } })
    .jpeg({ quality: how.jpeg })
    .toBuffer();
  const back = await sharp(bytes).grayscale().raw().toBuffer();
  return { width, height, data: new Uint8Array(back) };
}
