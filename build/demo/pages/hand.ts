import type { OutlineHand } from '../../letters/outline-fonts.ts';

/** How an invented client writes. Lengths in mm or in x-heights (xh), angles in degrees. */
export interface DemoHand {
  font: OutlineHand;
  /** Height of the small letters at the start of the page, mm. */
  xHeightMm: number;
  /** Factor on the thickness of the strokes: 1 keeps the font's own. */
  weight: number;
  /** Slant added to the font's own, and its spread from letter to letter, degrees. */
  slantDeg: number;
  slantSdDeg: number;
  /** Spread of letter sizes, share of 1. */
  sizeSpread: number;
  /** ln(x-height) per word of a line; negative shrinks. */
  lnPerWord: number;
  /** ln(x-height) per line of the page; negative shrinks. */
  lnPerLine: number;
  /** Gap between words, xh, and its spread. */
  wordGapXh: number;
  wordGapSdXh: number;
  /** Added to the font's own letter spacing, xh; negative crowds. */
  letterSpaceXh: number;
  /** Rise of the lines, degrees, + rising; its spread from line to line; bend of a line, mm. */
  tiltDeg: number;
  tiltSdDeg: number;
  bendMm: number;
  /** How far single letters leave the baseline, mm (standard deviation). */
  hopMm: number;
  /** Small regular shaking of the stroke: amplitude mm, waves per mm of paper. */
  tremor: { amplitudeMm: number; wavesPerMm: number };
  /** Misjudged strokes: 0 none, 1 strong (letters far too large or too small, strokes that shoot past). */
  overshoot: number;
  /** Share of a d g o q left open at the top. */
  openLoops: number;
  /** Unsteady pressure: 0 even, 1 strongly uneven. */
  unevenPressure: number;
}

/** A practiced, readable adult hand to start from. */
export const STEADY_HAND: DemoHand = {
  font: 'kalam',
  xHeightMm: 2.7,
  weight: 1,
  slantDeg: 0,
  slantSdDeg: 1.6,
  sizeSpread: 0.045,
  lnPerWord: 0,
  lnPerLine: 0,
  wordGapXh: 1.5,
  wordGapSdXh: 0.22,
  letterSpaceXh: 0.03,
  tiltDeg: 0.3,
  tiltSdDeg: 0.25,
  bendMm: 0.35,
  hopMm: 0.09,
  tremor: { amplitudeMm: 0, wavesPerMm: 0.9 },
  overshoot: 0,
  openLoops: 0.04,
  unevenPressure: 0.35,
};

/** The sheet and the pen. */
export interface DemoPaper {
  size: 'A4' | 'Letter';
  ruling: 'plain' | 'ruled' | 'midline' | 'squares';
  ink: 'blue' | 'black' | 'pencil';
  /** The sheet lay turned counter-clockwise on the scanner by this, degrees. */
  rotationDeg: number;
}

export interface DemoPageSpec {
  /** What is written, one string a line. */
  lines: readonly string[];
  hand: DemoHand;
  paper: DemoPaper;
  seed: number;
}
