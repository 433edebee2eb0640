import { median } from '../../renderer/statistics/order-statistics.ts';
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import opentype from 'opentype.js';
import type { PathCommand } from 'opentype.js';
import { extent, X_HEIGHT_LETTERS } from './glyph.ts';
import type { Chain, Glyph, LetterFont } from './glyph.ts';

/** Open-licensed hands from @fontsource (OFL 1.1, except schoolbell and homemade-apple: Apache-2.0). */
export const OUTLINE_HANDS = {
  'patrick-hand': false,
  kalam: false,
  'indie-flower': false,
  schoolbell: false,
  'cedarville-cursive': true,
  'dancing-script': true,
  'bad-script': true,
  'homemade-apple': true,
} as const;
export type OutlineHand = keyof typeof OUTLINE_HANDS;

/** Curves become chords of at most this many pieces a curve: under 0.002 x-heights off at these letter sizes. */
const PIECES = 12;

function flatten(commands: readonly PathCommand[], unit: number): Chain[] {
  const rings: Chain[] = [];
  let points: number[] = [];
  let x = 0;
  let y = 0;
  const add = (px: number, py: number): void => {
    points.push(px / unit, -py / unit);
    x = px;
    y = py;
  };
  const end = (): void => {
    if (points.length >= 6) rings.push(Float64Array.from(points));
    points = [];
  };
  for (const c of commands) {
    if (c.type === 'M') {
      end();
      add(c.x, c.y);
    } else if (c.type === 'L') add(c.x, c.y);
    else if (c.type === 'Z') end();
    else {
      const [x0, y0] = [x, y];
      for (let i = 1; i <= PIECES; i += 1) {
        const t = i / PIECES;
        const s = 1 - t;
        if (c.type === 'Q')
          add(s * s * x0 + 2 * s * t * c.x1 + t * t * c.x, s * s * y0 + 2 * s * t * c.y1 + t * t * c.y);
        else
          add(
            s * s * s * x0 + 3 * s * s * t * c.x1 + 3 * s * t * t * c.x2 + t * t * t * c.x,
            s * s * s * y0 + 3 * s * s * t * c.y1 + 3 * s * t * t * c.y2 + t * t * t * c.y,
          );
      }
    }
  }
  end();
  return rings;
}

const loaded = new Map<OutlineHand, LetterFont>();

/** Loads one of the open hands; the file is parsed once. */
export function outlineFont(hand: OutlineHand): LetterFont {
  const known = loaded.get(hand);
  if (known) return known;
  const file = createRequire(import.meta.url).resolve(`@fontsource/${hand}/files/${hand}-latin-400-normal.woff`);
  const bytes = readFileSync(file);
  const font = opentype.parse(bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.byteLength) as ArrayBuffer);
  const em = font.unitsPerEm;
  const rings = (char: string, unit: number): Chain[] =>
    flatten(font.charToGlyph(char).getPath(0, 0, em).commands, unit);
  // The hands do not all stand on y = 0: the usual bottom of the small letters is their baseline.
  const shapes = [...X_HEIGHT_LETTERS].map((char) => extent(rings(char, 1)));
  const low = median(shapes.map((shape) => shape?.low ?? 0))!;
  const xHeight = median(shapes.map((shape) => shape?.high ?? em / 2))! - low;
  const glyphs = new Map<string, Glyph>();
  const made: LetterFont = {
    name: hand,
    joined: OUTLINE_HANDS[hand],
    kind: 'outline',
    has: (char) => font.hasChar(char),
    glyph(char) {
      const seen = glyphs.get(char);
      if (seen) return seen;
      if (!font.hasChar(char)) throw new RangeError(`${hand} has no letter "${char}"`);
      const advance = font.charToGlyph(char).advanceWidth / xHeight;
      const shape = rings(char, xHeight);
      for (const ring of shape) for (let i = 1; i < ring.length; i += 2) ring[i] = (ring[i] as number) - low / xHeight;
      const glyph: Glyph = { char, advance, rings: shape, strokes: [] };
      glyphs.set(char, glyph);
      return glyph;
    },
    kern: (left, right) => font.getKerningValue(font.charToGlyph(left), font.charToGlyph(right)) / xHeight,
  };
  loaded.set(hand, made);
  return made;
}
