import { extent } from '../../letters/glyph.ts';
import type { Chain, LetterFont } from '../../letters/glyph.ts';
import { outlineFont } from '../../letters/outline-fonts.ts';
import { seededRandom } from '../../letters/random.ts';
import type { Random } from '../../letters/random.ts';
import type { DemoPageSpec } from './hand.ts';
import { smoothField, subdivided, tremorField } from './warp.ts';
import type { Field } from './warp.ts';

/** One letter's ink on the sheet, mm, origin top left, y down. */
export interface WrittenLetter {
  rings: Chain[];
  /** Ink taken away again where the letter is left open. */
  opening: Chain | null;
  /** Pressure, 0 to 1. */
  pressure: number;
}

/** Where the lines go. */
export interface Sheet {
  leftMm: number;
  rightMm: number;
  firstBaselineMm: number;
  pitchMm: number;
}

const OPENABLE = new Set('adgoq');

/** A value that wanders from letter to letter instead of jumping: mean 0, standard deviation 1. */
function wanderer(random: Random, memory: number): () => number {
  let at = random.normal();
  return () => {
    at = memory * at + Math.sqrt(1 - memory * memory) * random.normal();
    return at;
  };
}

interface LetterShape {
  scale: number;
  stretch: number;
  slantDeg: number;
  turnDeg: number;
  liftMm: number;
  /** Factor on what rises above or hangs below the small letters. */
  reach: number;
}

/** One letter at the origin of its line: size, slant and turn of its own. */
function place(ring: Chain, shape: LetterShape): Chain {
  const out = new Float64Array(ring.length);
  const shear = Math.tan((shape.slantDeg * Math.PI) / 180);
  const [cos, sin] = [Math.cos((shape.turnDeg * Math.PI) / 180), Math.sin((shape.turnDeg * Math.PI) / 180)];
  for (let i = 0; i + 1 < ring.length; i += 2) {
    let y = ring[i + 1] as number;
    if (y > 1) y = 1 + (y - 1) * shape.reach;
    if (y < 0) y *= shape.reach;
    const x = (ring[i] as number) * shape.stretch + shear * y;
    out[i] = (x * cos - y * sin) * shape.scale;
    out[i + 1] = (x * sin + y * cos) * shape.scale + shape.liftMm;
  }
  return out;
}

function letterShape(random: Random, hand: DemoPageSpec['hand'], sizeMm: number, wander: number[]): LetterShape {
  const [size = 0, lift = 0, slant = 0] = wander;
  const wild = hand.overshoot;
  // A misjudged letter: rare, but then far off.
  const missed = random.next() < 0.14 * wild ? Math.exp(0.3 * random.normal()) : 1;
  const shot = random.next() < 0.3 * wild ? 1 + random.between(0.3, 1.1) * wild : 1;
  return {
    scale: sizeMm * Math.exp((hand.sizeSpread + 0.1 * wild) * size) * missed,
    stretch: Math.exp((0.06 + 0.12 * wild) * random.normal()),
    slantDeg: hand.slantDeg + (hand.slantSdDeg + 5 * wild) * slant,
    turnDeg: (0.9 + 3.2 * wild) * random.normal(),
    liftMm: (hand.hopMm + 0.35 * wild) * lift,
    reach: (1 + 0.07 * random.normal()) * shot,
  };
}

/** A narrow strip from the middle of the bowl upward. */
function openingOf(random: Random, left: number, width: number, sizeMm: number): Chain {
  const middle = left + random.between(0.38, 0.55) * Math.min(width, 1.1 * sizeMm);
  const half = random.between(0.09, 0.15) * sizeMm;
  const lean = random.between(-0.15, 0.25) * sizeMm;
  return Float64Array.from([
    ...[middle - half, 0.55 * sizeMm, middle + half, 0.55 * sizeMm],
    ...[middle + half + lean, 1.25 * sizeMm, middle - half + lean, 1.25 * sizeMm],
  ]);
}

/** Letters that the font lacks are left out rather than drawn as boxes. */
const writable = (font: LetterFont, text: string): string[] =>
  [...text].filter((char) => char === ' ' || font.has(char));

/** Breaks lines that would run off the sheet, at word ends, as a writer does. */
export function wrapLines(spec: DemoPageSpec, sheet: Sheet): string[] {
  const { hand } = spec;
  const font = outlineFont(hand.font);
  const width = (word: string): number =>
    writable(font, word).reduce((sum, char) => sum + font.glyph(char).advance + hand.letterSpaceXh, 0);
  return spec.lines.flatMap((text, row) => {
    const lines: string[] = [];
    let line: string[] = [];
    let used = 0;
    for (const word of text.split(' ').filter((part) => part !== '')) {
      const sizeMm = hand.xHeightMm * Math.exp(hand.lnPerWord * line.length + hand.lnPerLine * (row + lines.length));
      const next = (width(word) + (line.length ? hand.wordGapXh : 0)) * sizeMm;
      if (line.length > 0 && sheet.leftMm + used + next > sheet.rightMm) {
        lines.push(line.join(' '));
        line = [];
        used = 0;
      }
      line.push(word);
      used += next;
    }
    return line.length ? [...lines, line.join(' ')] : lines;
  });
}

/** Writes the lines of a page with the hand of its specification; the same seed writes the same page. */
export function writeLines(spec: DemoPageSpec, sheet: Sheet): WrittenLetter[] {
  const { hand } = spec;
  const font = outlineFont(hand.font);
  const random = seededRandom(spec.seed);
  const written: WrittenLetter[] = [];
  const fields: Field[] = [
    smoothField(random, 0.035 * hand.xHeightMm, 2.3 * hand.xHeightMm),
    smoothField(random, (0.012 + 0.05 * hand.overshoot) * hand.xHeightMm, 0.9 * hand.xHeightMm),
    tremorField(random, hand.tremor.amplitudeMm, hand.tremor.wavesPerMm),
  ];
  const size = wanderer(random, font.joined ? 0.8 : 0.45);
  const lift = wanderer(random, font.joined ? 0.9 : 0.6);
  const slant = wanderer(random, 0.5);
  const press = wanderer(random, 0.85);
  for (const [row, text] of spec.lines.entries()) {
    const tilt = ((hand.tiltDeg + hand.tiltSdDeg * random.normal()) * Math.PI) / 180;
    const bendPhase = random.between(0, 2 * Math.PI);
    const bendLength = random.between(90, 160);
    const startX = sheet.leftMm + 1.6 * random.normal() * (0.4 + hand.overshoot);
    const baseY = sheet.firstBaselineMm + row * sheet.pitchMm + 0.25 * random.normal();
    const onSheet = (x: number, y: number): [number, number] => {
      const up = y + hand.bendMm * Math.sin((2 * Math.PI * x) / bendLength + bendPhase);
      let px = startX + x * Math.cos(tilt) - up * Math.sin(tilt);
      let py = baseY - x * Math.sin(tilt) - up * Math.cos(tilt);
      for (const field of fields) {
        const { dx, dy } = field(px, py);
        px += dx;
        py += dy;
      }
      return [px, py];
    };
    const warped = (chain: Chain, dx: number): Chain => {
      const fine = subdivided(chain, 0.22);
      const out = new Float64Array(fine.length);
      for (let i = 0; i + 1 < fine.length; i += 2) {
        const [x, y] = onSheet((fine[i] as number) + dx, fine[i + 1] as number);
        out[i] = x;
        out[i + 1] = y;
      }
      return out;
    };
    let cursor = 0;
    let before: string | null = null;
    let word = 0;
    for (const char of writable(font, text)) {
      const sizeMm = hand.xHeightMm * Math.exp(hand.lnPerWord * word + hand.lnPerLine * row);
      if (char === ' ') {
        word += 1;
        const gap = hand.wordGapXh + hand.wordGapSdXh * random.normal() * (1 + hand.overshoot);
        cursor += Math.max(gap, 0.35 * hand.wordGapXh) * sizeMm;
        before = null;
        continue;
      }
      const glyph = font.glyph(char);
      if (before !== null) cursor += font.kern(before, char) * sizeMm;
      const shape = letterShape(random, hand, sizeMm, [size(), lift(), slant()]);
      const rings = glyph.rings.map((ring) => place(ring, shape));
      const seen = extent(rings);
      if (seen) {
        // At the beginning of a word the ink, not the letter's side bearing, keeps the gap.
        if (before === null) cursor -= seen.left;
        const open = OPENABLE.has(char) && random.next() < hand.openLoops;
        const opening = open ? openingOf(random, seen.left, seen.right - seen.left, shape.scale) : null;
        written.push({
          rings: rings.map((ring) => warped(ring, cursor)),
          opening: opening && warped(opening, cursor),
          pressure: Math.min(1, Math.max(0.35, 0.86 + 0.16 * hand.unevenPressure * press())),
        });
      }
      const space = hand.letterSpaceXh * (1 + 0.5 * random.normal()) + 0.12 * hand.overshoot * random.normal();
      cursor += (glyph.advance * shape.stretch + (font.joined ? hand.letterSpaceXh * 0.5 : space)) * sizeMm;
      before = char;
    }
  }
  return written;
}
