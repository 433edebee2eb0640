import { extent } from '../../../build/letters/glyph.ts';
import { median } from '../../../renderer/statistics/order-statistics.ts';
import type { Chain, LetterFont } from '../../../build/letters/glyph.ts';
import { OUTLINE_HANDS, outlineFont } from '../../../build/letters/outline-fonts.ts';
import type { OutlineHand } from '../../../build/letters/outline-fonts.ts';
import { penFont } from '../../../build/letters/pen-fonts.ts';
import type { PenHand } from '../../../build/letters/pen-fonts.ts';
import { seededRandom } from '../../../build/letters/random.ts';
import { shapeWord } from './word-shape.ts';
import type { WordShape } from './word-shape.ts';
import { caret, INSERTED, scribble, struckWords, wordGapOfPerson } from './people.ts';
import { lineOfWords } from './words.ts';
import type { BoxMm, LineTruth, PageSpec } from './types.ts';

export const PAPERS = { A4: { widthMm: 210, heightMm: 297 }, Letter: { widthMm: 215.9, heightMm: 279.4 } } as const;

/** The ink of a page on the sheet: chains in mm, origin top left, y down. */
export interface PageInk {
  rings: Chain[];
  strokes: Chain[];
  erasers: Chain[];
  penMm: number;
  /** Strokes of a pen of this width beside the letters': crossings out and carets. */
  scribbles: Chain[];
  scribbleMm: number;
  lines: LineTruth[];
  words: WordShape[];
  smallLetters: number[];
  letterGapsXh: number[];
  wordGapsXh: number[];
}

/** The hand by its name. */
export function fontOf(name: OutlineHand | PenHand): LetterFont {
  return name in OUTLINE_HANDS ? outlineFont(name as OutlineHand) : penFont(name as PenHand);
}

function boxOf(chains: readonly Chain[], penMm: number): BoxMm {
  const seen = extent(chains);
  if (!seen) return { xMm: 0, yMm: 0, widthMm: 0, heightMm: 0 };
  return {
    xMm: seen.left - penMm / 2,
    yMm: seen.low - penMm / 2,
    widthMm: seen.right - seen.left + penMm,
    heightMm: seen.high - seen.low + penMm,
  };
}

/** Least-squares line through the true baseline, sampled evenly along the ink: rise in degrees and rms about it. */
function baselineTruth(
  wave: (u: number) => number,
  lengthMm: number,
  angleDeg: number,
): { angle: number; rms: number } {
  const samples = 400;
  let [su, sw, suu, suw] = [0, 0, 0, 0];
  for (let i = 0; i < samples; i += 1) {
    const u = (lengthMm * i) / (samples - 1);
    const w = wave(u);
    su += u;
    sw += w;
    suu += u * u;
    suw += u * w;
  }
  const slope = (samples * suw - su * sw) / (samples * suu - su * su);
  const offset = (sw - slope * su) / samples;
  let square = 0;
  for (let i = 0; i < samples; i += 1) {
    const u = (lengthMm * i) / (samples - 1);
    square += (wave(u) - offset - slope * u) ** 2;
  }
  const angle = angleDeg + (Math.atan(slope) * 180) / Math.PI;
  return { angle, rms: Math.sqrt(square / samples) * Math.cos(Math.atan(slope)) };
}

/** Writes the page of a specification and says exactly where everything lies. */
export function layOut(spec: PageSpec, text?: readonly (readonly string[])[]): PageInk {
  const { writing } = spec;
  const font = fontOf(writing.font);
  const random = seededRandom(spec.seed);
  const page: PageInk = {
    rings: [],
    strokes: [],
    erasers: [],
    penMm: font.kind === 'pen' ? writing.penMm : 0,
    scribbles: [],
    scribbleMm: Math.max(0.25, writing.xHeightMm / 8),
    lines: [],
    words: [],
    smallLetters: [],
    letterGapsXh: [],
    wordGapsXh: [],
  };
  const roomMm = PAPERS[spec.paper].widthMm - writing.leftMm - 9;
  for (let row = 0; row < writing.lines; row += 1) {
    const words = text?.[row] ?? lineOfWords(random, writing.wordsPerLine, writing.punctuation, writing.vocabulary);
    const people = spec.people;
    const spacing = people ? people.lineSd * random.normal() : 0;
    const struck = people ? struckWords(people, random, writing.lines, words.length) : [];
    const angleDeg = writing.lineAngleDeg + row * writing.lineAngleStepDeg;
    const phase = random.between(0, 2 * Math.PI);
    const wave = (u: number): number => writing.waveMm * Math.sin((2 * Math.PI * u) / writing.waveLengthMm + phase);
    const [cos, sin] = [Math.cos((angleDeg * Math.PI) / 180), Math.sin((angleDeg * Math.PI) / 180)];
    const x0 = writing.leftMm;
    const y0 = writing.topMm + row * writing.pitchMm - writing.aboveRulingMm;
    const onSheet = (chain: Chain, startMm: number): Chain => {
      const out = new Float64Array(chain.length);
      for (let i = 0; i + 1 < chain.length; i += 2) {
        const u = (chain[i] as number) + startMm;
        const v = (chain[i + 1] as number) + wave(u);
        out[i] = x0 + u * cos - v * sin;
        out[i + 1] = y0 - u * sin - v * cos;
      }
      return out;
    };
    const line: LineTruth = { box: boxOf([], 0), xHeightMm: 0, baselineAngleDeg: 0, baselineRmsMm: 0, words: [] };
    const lineChains: Chain[] = [];
    let cursor = 0;
    let gapMm: number | null = null;
    for (const [index, word] of words.entries()) {
      const scaleMm =
        writing.xHeightMm * Math.exp(writing.lnPerWord * index) * (1 + writing.percentPerLine / 100) ** row;
      const slantDeg = writing.slantDeg + writing.slantSdDeg * random.normal();
      const shape = shapeWord(font, word, scaleMm, slantDeg, writing, random, people);
      if (cursor + shape.widthMm > roomMm && index > 0) break;
      const placed = [...shape.rings, ...shape.strokes].map((chain) => onSheet(chain, cursor));
      page.rings.push(...placed.slice(0, shape.rings.length));
      page.strokes.push(...placed.slice(shape.rings.length));
      page.erasers.push(...shape.erasers.map((chain) => onSheet(chain, cursor)));
      lineChains.push(...placed);
      if (struck.includes(index)) page.scribbles.push(onSheet(scribble(shape.widthMm, scaleMm, random), cursor));
      line.words.push({ text: word, box: boxOf(placed, page.penMm), xHeightMm: scaleMm, gapBeforeMm: gapMm });
      if (gapMm !== null) page.wordGapsXh.push(gapMm / scaleMm);
      page.words.push(shape);
      page.smallLetters.push(...shape.smallLetters);
      page.letterGapsXh.push(...shape.letterGaps.map((gap) => gap / scaleMm));
      const wanted = writing.wordGapXh + writing.wordGapSdXh * random.normal();
      gapMm = (people ? wordGapOfPerson(people, random, spacing) : Math.max(wanted, writing.wordGapXh / 2)) * scaleMm;
      if (people && index + 1 < words.length && random.next() < people.inserted / (writing.lines * words.length)) {
        // Written small above the gap, with a caret in it: a word of this line.
        const extra = shapeWord(font, random.pick(INSERTED), 0.8 * scaleMm, slantDeg, writing, random, people);
        const [left, up] = [cursor + shape.widthMm + gapMm / 2 - extra.widthMm / 2, 1.9 * scaleMm];
        const raised = [...extra.rings, ...extra.strokes].map((chain) =>
          onSheet(
            chain.map((value, i) => (i % 2 ? value + up : value)),
            left,
          ),
        );
        page.rings.push(...raised.slice(0, extra.rings.length));
        page.strokes.push(...raised.slice(extra.rings.length));
        page.scribbles.push(onSheet(caret(scaleMm), cursor + shape.widthMm + gapMm / 2));
        line.words.push({
          text: extra.text,
          box: boxOf(raised, page.penMm),
          xHeightMm: 0.8 * scaleMm,
          gapBeforeMm: null,
        });
      }
      cursor += shape.widthMm + gapMm;
    }
    if (line.words.length === 0) continue;
    const truth = baselineTruth(wave, cursor - (gapMm ?? 0), angleDeg);
    line.box = boxOf(lineChains, page.penMm);
    line.xHeightMm = median(line.words.map((word) => word.xHeightMm))!;
    line.baselineAngleDeg = truth.angle;
    line.baselineRmsMm = truth.rms;
    page.lines.push(line);
  }
  return page;
}
