/**
 * Makes renderer/window/pages/fonts/fairhand-print.otf from the pen paths of print-hand-strokes.ts:
 * `npx node build/letters/print-hand.ts`. The file is kept in the repository; a test makes it again and compares.
 */
import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import opentypeModule from 'opentype.js';
import { composed, marks, strokes } from './print-hand-strokes.ts';

/** Font units: em 1000, letters without reach 400 tall with their ink, so shares are 0.4, 0.8 and 0.4. */
const unit = 4;
/** Pen width in units of the paths. */
const pen = 13;
const sideBearing = 17;

type Point = readonly [number, number];
interface OpenTypePath {
  moveTo(x: number, y: number): void;
  lineTo(x: number, y: number): void;
  close(): void;
}
// opentype.js brings no types; these are the parts that build a font.
const opentype = opentypeModule as unknown as {
  Path: new () => OpenTypePath;
  Glyph: new (options: Record<string, unknown>) => object;
  Font: new (options: Record<string, unknown>) => { toArrayBuffer(): ArrayBuffer };
};

function bezier(a: Point, b: Point, c: Point, d: Point, steps: number): Point[] {
  return Array.from({ length: steps }, (_, i) => {
    const t = (i + 1) / steps;
    const u = 1 - t;
    const at = (k: 0 | 1) => u ** 3 * a[k] + 3 * u * u * t * b[k] + 3 * u * t * t * c[k] + t ** 3 * d[k];
    return [at(0), at(1)] as const;
  });
}

function arc(cx: number, cy: number, rx: number, ry: number, from: number, to: number): Point[] {
  const steps = Math.max(8, Math.ceil(Math.abs(to - from) / 9));
  return Array.from({ length: steps + 1 }, (_, i) => {
    const angle = ((from + ((to - from) * i) / steps) * Math.PI) / 180;
    return [cx + rx * Math.cos(angle), cy + ry * Math.sin(angle)] as const;
  });
}

/** Pen paths of one letter as polylines. */
export function polylines(path: string): Point[][] {
  const tokens = path.trim().split(/\s+/);
  const lines: Point[][] = [];
  let at = 0;
  const take = (): number => Number(tokens[at++]);
  while (at < tokens.length) {
    const command = tokens[at++];
    const open = lines.at(-1);
    if (command === 'M') lines.push([[take(), take()]]);
    else if (command === 'L') open?.push([take(), take()]);
    else if (command === 'C') {
      const [b, c, d]: [Point, Point, Point] = [
        [take(), take()],
        [take(), take()],
        [take(), take()],
      ];
      open?.push(...bezier(open.at(-1)!, b, c, d, 18));
    } else if (command === 'O') lines.push(arc(take(), take(), take(), take(), 60, 420));
    else if (command === 'A') lines.push(arc(take(), take(), take(), take(), take(), take()));
    else if (command === '.') {
      const [x, y] = [take(), take()];
      lines.push([
        [x, y],
        [x, y + 7],
      ]);
    } else throw new Error(`The pen path has the unknown command ${command}.`);
  }
  return lines;
}

/** Moves the pen's middle inwards by half its width, so that the ink fills its zone exactly. */
function inZone([x, y]: Point): Point {
  const half = pen / 2;
  const steps: readonly [number, number][] = [
    [-100, -100 + half],
    [0, half],
    [100, 100 - half],
    [200, 200 - half],
  ];
  const i = y < 0 ? 0 : y < 100 ? 1 : 2;
  const [y0, to0] = steps[i]!;
  const [y1, to1] = steps[i + 1]!;
  return [x, to0 + ((y - y0) / (y1 - y0)) * (to1 - to0)];
}

/** Outline of a line drawn with a round pen: one contour, to be filled by the nonzero rule. */
export function outline(line: readonly Point[]): Point[] {
  const r = pen / 2;
  const points = line.filter((p, i) => i === 0 || Math.hypot(p[0] - line[i - 1]![0], p[1] - line[i - 1]![1]) > 1e-6);
  const heading = points.slice(1).map((p, i) => Math.atan2(p[1] - points[i]![1], p[0] - points[i]![0]));
  const around = ([x, y]: Point, from: number, to: number): Point[] => {
    const steps = Math.max(1, Math.ceil(Math.abs(to - from) / 0.35));
    return Array.from({ length: steps + 1 }, (_, i): Point => {
      const a = from + ((to - from) * i) / steps;
      return [x + r * Math.cos(a), y + r * Math.sin(a)];
    });
  };
  /** One side, in the direction of `way`: round on the outside of a bend, through the middle on its inside. */
  const side = (list: readonly Point[], angles: readonly number[]): Point[] =>
    list.slice(1).flatMap((p, i): Point[] => {
      const here = angles[i]! - Math.PI / 2;
      const next = angles[i + 1];
      if (next === undefined) return around(p, here, here + Math.PI);
      let turn = next - angles[i]!;
      turn = Math.atan2(Math.sin(turn), Math.cos(turn));
      if (turn >= 0) return around(p, here, here + turn);
      return turn > -0.3
        ? around(p, here + turn / 2, here + turn / 2)
        : [...around(p, here, here), p, ...around(p, here + turn, here + turn)];
    });
  const back = [...points].reverse();
  const backHeading = [...heading].reverse().map((a) => a + Math.PI);
  return [...side(points, heading), ...side(back, backHeading)];
}

/** Bring a mark over its letter: to its middle, and higher over capitals. */
function linesOf(letter: string): Point[][] {
  const parts = composed[letter];
  if (!parts) return polylines(strokes[letter]!);
  const base = polylines(strokes[parts[0]]!);
  const xs = base.flat().map(([x]) => x);
  const middle = (Math.min(...xs) + Math.max(...xs)) / 2;
  const raise = /\p{Lu}/u.test(letter) && parts[1] !== 'cedilla' ? 92 : 0;
  return [...base, ...polylines(marks[parts[1]]!).map((line) => line.map(([x, y]): Point => [x + middle, y + raise]))];
}

export function printHandFont(): Uint8Array {
  const glyphs: object[] = [
    new opentype.Glyph({ name: '.notdef', unicode: 0, advanceWidth: 300, path: new opentype.Path() }),
    new opentype.Glyph({ name: 'space', unicode: 32, advanceWidth: Math.round(72 * unit), path: new opentype.Path() }),
  ];
  for (const letter of [...Object.keys(strokes), ...Object.keys(composed)]) {
    const lines = linesOf(letter).map((line) => line.map(inZone));
    const xs = lines.flat().map(([x]) => x);
    const left = Math.min(...xs) - sideBearing;
    const path = new opentype.Path();
    for (const line of lines) {
      outline(line).forEach(([x, y], i) => {
        const [px, py] = [Math.round((x - left) * unit), Math.round(y * unit)];
        if (i === 0) path.moveTo(px, py);
        else path.lineTo(px, py);
      });
      path.close();
    }
    const code = letter.codePointAt(0)!;
    glyphs.push(
      new opentype.Glyph({
        name: `u${code.toString(16).padStart(4, '0')}`,
        unicode: code,
        advanceWidth: Math.round((Math.max(...xs) + sideBearing - left) * unit),
        path,
      }),
    );
  }
  const font = new opentype.Font({
    familyName: 'Fairhand Print',
    styleName: 'Regular',
    unitsPerEm: 1000,
    ascender: 1000,
    descender: -400,
    createdTimestamp: 0,
    glyphs,
  });
  return new Uint8Array(font.toArrayBuffer());
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  writeFileSync(new URL('../../renderer/window/pages/fonts/fairhand-print.otf', import.meta.url), printHandFont());
}
