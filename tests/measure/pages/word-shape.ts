import { extent } from '../../../build/letters/glyph.ts';
import type { Chain, LetterFont } from '../../../build/letters/glyph.ts';
import type { Random } from '../../../build/letters/random.ts';
import { letterOfPerson, gapOfPerson } from './people.ts';
import type { People, Writing } from './types.ts';

/** A word as written, in mm; x along the baseline from the ink's left edge, y up from the baseline. */
export interface WordShape {
  text: string;
  /** mm for one x-height. */
  scaleMm: number;
  rings: Chain[];
  strokes: Chain[];
  /** Areas where ink is taken away again: the openings of unclosed letters. */
  erasers: Chain[];
  penMm: number;
  /** Ink width, mm. */
  widthMm: number;
  /** Baseline-to-top heights of the small letters, mm. */
  smallLetters: number[];
  /** Ink-to-ink gaps between its letters, mm. */
  letterGaps: number[];
  /** Where the ink of each of its letters lies, mm. */
  letters: { char: string; fromMm: number; toMm: number }[];
}

const SMALL = new Set('acemnorsuvwxz');
const OPENABLE = new Set('adgoq');

/** Writes one word at a size; the scale of pen letters allows for the pen's width so that the ink is as high as asked. */
export function shapeWord(
  font: LetterFont,
  text: string,
  scaleMm: number,
  slantDeg: number,
  writing: Writing,
  random: Random,
  people?: People,
): WordShape {
  const penMm = font.kind === 'pen' ? writing.penMm : 0;
  const scale = scaleMm - penMm;
  const shear = Math.tan((slantDeg * Math.PI) / 180);
  const shape: WordShape = {
    text,
    scaleMm,
    rings: [],
    strokes: [],
    erasers: [],
    penMm,
    widthMm: 0,
    smallLetters: [],
    letterGaps: [],
    letters: [],
  };
  let cursor = 0;
  let inkRight: number | null = null;
  let before: string | null = null;
  const ofWord = people ? random.normal() : 0;
  const parted = people && random.next() < people.parted ? 1 + Math.floor(random.next() * (text.length - 1)) : -1;
  for (const [at, char] of [...text].entries()) {
    const glyph = font.glyph(char);
    const own = people ? letterOfPerson(people, random, ofWord) : { size: 1, width: 1, footXh: 0, shear: 0 };
    const place = (chain: Chain, dx: number): Chain => {
      const out = new Float64Array(chain.length);
      for (let i = 0; i + 1 < chain.length; i += 2) {
        const y = (chain[i + 1] as number) * scale * own.size + penMm / 2;
        out[i] = (chain[i] as number) * scale * own.width + (shear + own.shear) * y + dx;
        out[i + 1] = y + own.footXh * scaleMm;
      }
      return out;
    };
    const still = extent([...glyph.rings, ...glyph.strokes].map((chain) => place(chain, 0)));
    if (before !== null) cursor += font.kern(before, char) * scale;
    if (still) {
      const left = still.left - penMm / 2;
      const right = still.right + penMm / 2;
      if (writing.letterGapXh !== null && inkRight !== null) cursor = inkRight + writing.letterGapXh * scaleMm - left;
      if (people && inkRight !== null)
        cursor = inkRight + gapOfPerson(people, random, { char, isParted: at === parted }) * scaleMm - left;
      if (inkRight !== null) shape.letterGaps.push(cursor + left - inkRight);
      inkRight = Math.max(inkRight ?? -Infinity, cursor + right);
      shape.letters.push({ char, fromMm: cursor + left, toMm: cursor + right });
      for (const ring of glyph.rings) shape.rings.push(place(ring, cursor));
      for (const stroke of glyph.strokes) shape.strokes.push(place(stroke, cursor));
      if (SMALL.has(char)) shape.smallLetters.push(people ? still.high - still.low + penMm : still.high + penMm / 2);
      if (OPENABLE.has(char) && random.next() < writing.openShare) {
        // A strip straight up from the middle of the bowl, leaning with the letter.
        const bowl = char === 'o' ? 0.5 : 0.42;
        const width = Math.min(right - left, scaleMm);
        const half = (writing.openGapXh * scaleMm) / 2;
        const strip = (x: number, y: number): number[] => [
          cursor + left + bowl * width + x + shear * (y - scaleMm / 2),
          y,
        ];
        shape.erasers.push(
          Float64Array.from([
            ...strip(-half, 0.33 * scaleMm),
            ...strip(half, 0.33 * scaleMm),
            ...strip(half, 1.25 * scaleMm),
            ...strip(-half, 1.25 * scaleMm),
          ]),
        );
      }
    }
    cursor += glyph.advance * scale;
    before = char;
  }
  const all = extent([...shape.rings, ...shape.strokes]);
  if (!all) return shape;
  const left = all.left - penMm / 2;
  shape.widthMm = all.right + penMm / 2 - left;
  shape.letters = shape.letters.map(({ char, fromMm, toMm }) => ({ char, fromMm: fromMm - left, toMm: toMm - left }));
  for (const chain of [...shape.rings, ...shape.strokes, ...shape.erasers])
    for (let i = 0; i < chain.length; i += 2) chain[i] = (chain[i] as number) - left;
  return shape;
}
