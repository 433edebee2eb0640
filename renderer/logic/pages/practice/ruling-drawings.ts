import type { RulingKind } from '../../../../db/types/page.ts';
import type { Decimals } from '../../texts/decimals.ts';
import type { Told } from '../../texts/screens/en/screens-en.ts';

/**
 * The papers that practice pages are printed on. All lengths in mm.
 */
export type RulingCode =
  | 'squares-10'
  | 'squares-7'
  | 'squares-5'
  | 'dashed-12'
  | 'dashed-10'
  | 'dashed-8.7'
  | 'ruled-8.7'
  | 'ruled-8'
  | 'ruled-7.1'
  | 'ruled-6.35'
  | 'plain'
  | 'guide-10'
  | 'guide-8.7'
  | 'guide-7.1'
  | 'boxes-8'
  | 'boxes-6'
  | 'boxes-5'
  | 'signature'
  | 'signature-large'
  | 'check-large'
  | 'check-true'
  | 'dots-30'
  | 'lean-10';

export interface Ruling {
  kind: RulingKind;
  /** Square or box side, distance of ruled lines, or headline to baseline of a dashed row. */
  sizeMm: number;
  /** Tallest sensible height of a letter without reach. */
  xHeightMm: number;
  source: string;
}

const usRuled = 'US ruling distances 11/32, 9/32 and 1/4 inch, rounded to 0.1 mm (ruled-paper reference)';
const common = 'common practice, no source';

/** A whole letter, tall or hanging, has to fit one square: three zones. */
function squares(sizeMm: number): Ruling {
  return { kind: 'squares', sizeMm, xHeightMm: sizeMm / 3, source: common };
}

/**
 * A dashed row: headline, dashed line at half, baseline; below it a zone for letters that hang and one zone of gap.
 * So zones are 1:1:1 and solid lines lie the same distance apart all down the page.
 */
function dashed(sizeMm: number): Ruling {
  return { kind: 'dashed', sizeMm, xHeightMm: sizeMm / 2, source: common };
}

/** Three equal zones have to fit between two lines, so letters without reach get a third. */
function ruled(sizeMm: number): Ruling {
  return { kind: 'ruled', sizeMm, xHeightMm: sizeMm / 3, source: usRuled };
}

function guide(sizeMm: number): Ruling {
  return { kind: 'guide', sizeMm, xHeightMm: sizeMm / 3, source: common };
}

function boxes(sizeMm: number): Ruling {
  return { kind: 'boxes', sizeMm, xHeightMm: sizeMm / 3, source: common };
}

export const rulings: Record<RulingCode, Ruling> = {
  'squares-10': squares(10),
  'squares-7': squares(7),
  'squares-5': squares(5),
  'dashed-12': dashed(12),
  'dashed-10': dashed(10),
  'dashed-8.7': dashed(8.7),
  'ruled-8.7': ruled(8.7),
  'ruled-8': { ...ruled(8), source: 'common practice in the United Kingdom, no source' },
  'ruled-7.1': ruled(7.1),
  'ruled-6.35': ruled(6.35),
  plain: { kind: 'plain', sizeMm: 0, xHeightMm: 3, source: common },
  'guide-10': guide(10),
  'guide-8.7': guide(8.7),
  'guide-7.1': guide(7.1),
  'boxes-8': boxes(8),
  'boxes-6': boxes(6),
  'boxes-5': boxes(5),
  signature: { kind: 'signature', sizeMm: 20, xHeightMm: 3.5, source: common },
  'signature-large': { kind: 'signature', sizeMm: 36, xHeightMm: 6, source: common },
  'check-large': { kind: 'check', sizeMm: 104, xHeightMm: 4, source: common },
  'check-true': {
    kind: 'check',
    sizeMm: 70,
    xHeightMm: 3,
    source: 'A personal check of 6 by 2 3/4 inches, from memory',
  },
  'dots-30': { kind: 'dots', sizeMm: 30, xHeightMm: 3, source: common },
  'lean-10': { kind: 'lean', sizeMm: 10, xHeightMm: 3, source: common },
};

/** What a paper is called. */
export function rulingLabel(code: RulingCode, words: Told['paper'], decimals: Decimals): string {
  const { kind, sizeMm } = rulings[code];
  const mm = decimals(sizeMm, 2, 0);
  const other = words.otherRulings[code];
  if (other !== undefined) return other;
  if (kind === 'ruled') return words.rulings.ruled(mm, words.ruledNames[code] ?? '');
  return words.rulings[kind as 'squares' | 'dashed' | 'guide' | 'boxes'](mm);
}

/** Line widths in mm and grey (0 black to 1 white); bold ones are for low vision. */
export const inks = {
  baseline: { normal: { width: 0.55, grey: 0.42 }, bold: { width: 1.6, grey: 0 } },
  headline: { normal: { width: 0.35, grey: 0.5 }, bold: { width: 1, grey: 0.2 } },
  midline: { normal: { width: 0.3, grey: 0.5 }, bold: { width: 0.7, grey: 0.2 } },
  ruled: { normal: { width: 0.3, grey: 0.45 }, bold: { width: 1.6, grey: 0 } },
  square: { normal: { width: 0.22, grey: 0.55 }, bold: { width: 0.7, grey: 0.2 } },
  box: { normal: { width: 0.35, grey: 0.3 }, bold: { width: 0.9, grey: 0 } },
  guide: { normal: { width: 1.1, grey: 0 }, bold: { width: 2, grey: 0 } },
  start: { normal: { width: 2, grey: 0 }, bold: { width: 3, grey: 0 } },
  mark: { normal: { width: 1, grey: 0 }, bold: { width: 1.8, grey: 0 } },
} as const;
export type InkRole = keyof typeof inks;

/** Papers without letters of their own: they fill the sheet. */
export const withoutModels: ReadonlySet<RulingKind> = new Set<RulingKind>([
  'guide',
  'signature',
  'dots',
  'lean',
  'check',
]);

/** Dash and gap of the midline, mm. */
export const midlineDash = [2.5, 2] as const;
