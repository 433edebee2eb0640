/**
 * The picture that a page measurement takes and what comes out. Plain JSON throughout: the result is stored as it is.
 * Page coordinates are mm from the top left corner of the page after its turn was taken out, y down.
 * Angles are degrees, + is rising (baselines) or leaning right (slant). What is unknown is null, never NaN.
 */

/** One page as gray bytes, row by row: 0 is black, 255 is white. */
export interface GrayImage {
  width: number;
  height: number;
  data: Uint8Array;
}

/** Where the scale of a page came from, the most trusted first. */
export type ScaleSource = 'bar' | 'two-clicks' | 'dpi' | 'corner-marks' | 'ruling' | 'file-dpi';

/** How many pixels of the picture make one millimeter of paper. */
export interface Scale {
  pxPerMm: number;
  source: ScaleSource;
}

export interface PointMm {
  xMm: number;
  yMm: number;
}

export interface BoxMm {
  xMm: number;
  yMm: number;
  widthMm: number;
  heightMm: number;
}

/** A letter (or the part of a joined word that stands for one). */
export interface LetterResult {
  box: BoxMm;
  /** The letter meant, when the text is known. */
  text: string | null;
  /** Top of the ink above the baseline, mm. */
  topMm: number | null;
  /** Bottom of the ink below the baseline, mm (negative when it floats above). */
  bottomMm: number | null;
  /** x-height letter (a c e …), ascender, descender, or null when it cannot be told. */
  zone: 'x' | 'ascender' | 'descender' | 'both' | null;
  /** Number of the kind of letters that look like this one, where the text is not known and the letter stands alone. */
  shape: number | null;
  /** Closed loops in the ink. */
  loops: number;
  /** Whether the letter should close: known with the text only. */
  closureExpected: boolean | null;
  /** Set by a correction: not used by any measure. */
  excluded: boolean;
}

export interface WordResult {
  box: BoxMm;
  xHeightMm: number | null;
  /** Free space between the ink of the word before and this one, mm; null for the first word of a line. */
  gapBeforeMm: number | null;
  text: string | null;
  /** x-height that the course of the whole line gives at this word, mm: the unit for gaps. */
  sizeMm: number;
  /** Heights of its small letters, mm: what `xHeightMm` is the median of. */
  xHeightsMm: number[];
  /**
   * Heights of its small letters with the very low and high ones, mm, as the model of the page tells
   * them from tall letters and joins. How uneven the hand is; the typical height is told by `xHeightsMm`.
   */
  unevenMm?: number[];
  /** Which of them look alike, by numbers of the page; of joined writing without its text only. */
  headKinds?: (number | null)[];
  /** Heights of its ascenders above the baseline, mm. */
  ascendersMm: number[];
  /** Depths of its descenders below the baseline, mm. */
  descendersMm: number[];
  /** Free spaces between neighboring letters that do not touch, mm; negative when they overlap. */
  letterGapsMm: number[];
  /** Median slant and width of its upright strokes. */
  slantDeg: number | null;
  strokeWidthMm: number | null;
  slantsDeg: number[];
  strokeWidthsMm: number[];
  /** Closed loops of ink in it. */
  loops: number;
  /** How many letters it has; estimated from the width of its ink where the text is not known. */
  letterCount: number;
  letters: LetterResult[];
  excluded: boolean;
  /** Moved here from another line by a correction: it counts as a word, its height is not read. */
  moved?: true;
  /** Set where a gap beside it may as well be of the other kind, or where the ink is no word of the text. */
  doubt?: true;
}

export interface LineResult {
  box: BoxMm;
  xHeightMm: number | null;
  baselineAngleDeg: number | null;
  baselineRmsMm: number | null;
  words: WordResult[];
  /** The baseline as read, from left to right; the top of the x-height band is xHeightMm above it. */
  baseline: PointMm[];
  /** Where its first letter begins along the page, mm: the left margin as written. */
  startMm: number;
  /** Mean signed distance of the letters' bottoms from the printed line, mm, + above it; null without a printed line. */
  rulingOffsetMm: number | null;
}

export interface MeasureValue {
  code: string;
  value: number | null;
  unit: string;
  /** How many letters, words, gaps or lines it rests on. */
  n: number;
  /** 95 % interval; null where it cannot be told. */
  low: number | null;
  high: number | null;
  /** Spread (standard deviation) of the single readings, in the unit of the measure; null where it has no meaning. */
  spread: number | null;
  method: string;
}

export interface PageWarning {
  code: string;
  message: string;
}

/** A closed loop of ink, for the overlay. */
export interface LoopResult {
  box: BoxMm;
}

/** A printed line of the paper. */
export interface RulingResult {
  kind: 'line' | 'dashed' | 'margin' | 'grid';
  from: PointMm;
  to: PointMm;
}

export interface PageInfo {
  widthMm: number | null;
  heightMm: number | null;
  dpi: number | null;
  /** + means that the page lay turned counter-clockwise. 0 when neither rulings nor edges were seen. */
  rotationDeg: number;
  scaleSource: ScaleSource | 'paper-size' | null;
  /** Printed lines' distance, mm; null on plain paper. */
  rulingMm: number | null;
  /**
   * Map from page mm to pixels of the picture as given, row by row:
   * x = (m0 X + m1 Y + m2) / (m6 X + m7 Y + m8), y = (m3 X + m4 Y + m5) / (m6 X + m7 Y + m8).
   */
  toPicture: number[];
}

export interface PageResult {
  /** Version of the whole method: results of different versions are not compared. */
  version: string;
  page: PageInfo;
  lines: LineResult[];
  measures: MeasureValue[];
  warnings: PageWarning[];
  /** Whether the text meant was known and fits the words. */
  textFits: boolean | null;
  /** Share of the gaps expected to be taken for the wrong kind, per word; 0 where the text parts the words. */
  wordDoubt?: number;
  /** How dark the ink is: contrast to the paper as a share of the paper's brightness, %; null without ink. */
  darknessPercent: number | null;
  rulings: RulingResult[];
  loops: LoopResult[];
}
