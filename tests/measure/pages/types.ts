import type { OutlineHand } from '../../../build/letters/outline-fonts.ts';
import type { PenHand } from '../../../build/letters/pen-fonts.ts';

/** What is printed on the sheet before anybody writes. Distances in mm. */
export type Ruling = { color?: string; widthMm?: number } & (
  | { kind: 'plain' }
  | { kind: 'ruled'; pitchMm: number; marginMm: number | null }
  | { kind: 'midline'; bodyMm: number; pitchMm: number; dashMm?: number }
  | { kind: 'squares'; sideMm: number }
  /** Fairhand's own sheet: dashed midlines between corner marks. */
  | { kind: 'own-sheet'; bodyMm: number; pitchMm: number; dashMm?: number }
);

type PaperSize = 'A4' | 'Letter';

/** How the page is written. All numbers are exact; nothing is rounded to pixels. */
export interface Writing {
  font: OutlineHand | PenHand;
  /** Height of the small letters, ink included, of the first word, mm. */
  xHeightMm: number;
  /** Width of the pen, mm; only single-stroke fonts use it. */
  penMm: number;
  /** Shear added to the font's own slant, degrees, + leans right. */
  slantDeg: number;
  /** Spread (standard deviation) of that shear from word to word, degrees. */
  slantSdDeg: number;
  lines: number;
  wordsPerLine: number;
  /** Ink-to-ink gap between words along the baseline, in x-heights of the word before. */
  wordGapXh: number;
  /** Standard deviation of that gap, in x-heights; gaps stay above half the mean. */
  wordGapSdXh: number;
  /** Ink-to-ink gap between letters, in x-heights; null keeps the font's own spacing. */
  letterGapXh: number | null;
  /** ln(x-height) gained per word of a line (negative = shrinking). */
  lnPerWord: number;
  /** Percent of x-height gained per line (negative = shrinking). */
  percentPerLine: number;
  /** Rise of every line against the sheet, degrees, + rising. */
  lineAngleDeg: number;
  /** Angle added per line, degrees. */
  lineAngleStepDeg: number;
  /** Sine wave of the baseline: amplitude and length in mm; amplitude 0 = straight. */
  waveMm: number;
  waveLengthMm: number;
  /** Share of the letters a d g o q that are left open at the top. */
  openShare: number;
  /** Width of that opening, in x-heights. */
  openGapXh: number;
  /** Words end in commas and points now and then. */
  punctuation: boolean;
  /** Lower-case words only, or with short words, figures, capitals and words in capitals among them. */
  vocabulary?: 'plain' | 'mixed';
  leftMm: number;
  topMm: number;
  /** Distance between baselines; with rulings it should be a multiple of theirs, mm. */
  pitchMm: number;
  /** Baseline above (+) or below the printed line, mm. */
  aboveRulingMm: number;
}

/**
 * What people do and fonts do not. Figures of 37 pages that two people wrote (CSAFE Handwriting Database; Crawford, Ray,
 * Carriquiry 2020, Data in Brief) unless said otherwise. Gaps are ln(gap / x-height + 0.1): mean and spread.
 */
export interface People {
  /** Coefficient of variation of the height of letters. */
  letterCv: number;
  /** Spread of the letters' feet about the baseline, x-heights. */
  feetXh: number;
  /** Spread of the slant from letter to letter, degrees. */
  letterSlantSdDeg: number;
  inner: { mean: number; sd: number };
  between: { mean: number; sd: number };
  /** How far lines differ in how wide they are spaced, ln. */
  lineSd: number;
  /** Share of letters that touch the one before. */
  touching: number;
  /** Share of words parted inside, and of points and commas set apart. */
  parted: number;
  marksApart: number;
  /** Words crossed out and words inserted above a line, on the page. */
  crossedOut: number;
  inserted: number;
  /** Contrast of the ink to the paper, share; null = that of the ink's color. */
  contrast: number | null;
  /** Strength of the other side's writing, share of the ink's. */
  showThrough: number;
  holes: boolean;
}

/** How the page became a picture. */
export interface Picture {
  dpi: number;
  /** The page lay turned counter-clockwise by this, degrees. */
  rotationDeg: number;
  /** Tilt of the camera about the horizontal and the vertical axis, degrees; null = flatbed. */
  tilt: { pitchDeg: number; yawDeg: number; distanceMm: number; marginMm: number } | null;
  /** What a photographed sheet lies on. */
  table?: string;
  /** Loss of light from one corner to the other, 0 to 1. */
  uneven: number;
  /** Depth of a soft shadow across the page, 0 to 1. */
  shadow: number;
  /** Gaussian blur, sigma in px. */
  blurPx: number;
  /** Normal noise, gray levels. */
  noise: number;
  /** JPEG quality, or null for PNG. */
  jpeg: number | null;
}

export interface PageSpec {
  name: string;
  seed: number;
  paper: PaperSize;
  ruling: Ruling;
  ink: 'blue' | 'black' | 'pencil';
  /** Whether the engine is told the text. */
  textGiven?: boolean;
  writing: Writing;
  /** A page like one that a person wrote. */
  people?: People;
  picture: Picture;
}

/** Box on the sheet, origin top left, y down, mm. */
export interface BoxMm {
  xMm: number;
  yMm: number;
  widthMm: number;
  heightMm: number;
}

interface WordTruth {
  text: string;
  box: BoxMm;
  /** Size of the word: the font's usual small-letter height at this word's scale, mm. */
  xHeightMm: number;
  /** Ink-to-ink distance to the word before, along the baseline, mm; null for the first. */
  gapBeforeMm: number | null;
}

export interface LineTruth {
  box: BoxMm;
  xHeightMm: number;
  /** Least-squares rise of the line against the sheet, degrees. */
  baselineAngleDeg: number;
  /** Root mean square of the baseline about that straight line, mm. */
  baselineRmsMm: number;
  words: WordTruth[];
}

interface PageTruth {
  dpi: number;
  widthMm: number;
  heightMm: number;
  /** True turn of the sheet in the picture, degrees, + counter-clockwise. */
  rotationDeg: number;
  /** Whether rulings or edges show that turn; without them the engine may count it to the lines. */
  turnIsVisible: boolean;
  lines: LineTruth[];
  /** Median height of the small letters as written, mm. */
  xHeightMm: number;
  /** The same in pixels of the picture. */
  xHeightPx: number;
  lineDecrement: number;
  /** What the mix of tall and low letters may add to it by itself, ln per word, 0 or more. */
  apparentDecrement: number;
  pageDecrementPercent: number;
  /** Median word gap in x-heights. */
  wordGapXh: number;
  letterGapXh: number | null;
  /** White areas enclosed by ink; low and high differ where a gap is under 2 px. */
  closedLoops: { low: number; high: number };
  /** Only single-stroke fonts have an exact width, mm. */
  strokeWidthMm: number | null;
  /** Only upright single-stroke fonts have an exact slant, degrees. */
  slantDeg: number | null;
  /** Corners of the sheet in the picture: top left, top right, bottom right, bottom left, px. */
  corners: [number, number][];
}

/** A finished page. */
export interface MadePage {
  spec: PageSpec;
  /** The file as a scanner or a phone would leave it (PNG or JPEG). */
  bytes: Buffer;
  /** The decoded file as gray values, row by row. */
  gray: Uint8Array;
  width: number;
  height: number;
  truth: PageTruth;
}
