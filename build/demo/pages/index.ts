import { OUTLINE_HANDS } from '../../letters/outline-fonts.ts';
import type { OutlineHand } from '../../letters/outline-fonts.ts';
import type { DemoHand as DemoSampleHand } from '../types.ts';
import { STEADY_HAND } from './hand.ts';
import type { DemoHand } from './hand.ts';
import { drawDemoPage } from './render.ts';

/** Steepest bending by tremor that still looks like a stroke: amplitude times angular frequency. */
const STEEPEST = 0.62;

/** A full hand from the few traits that the demo caseload names. */
export function handFrom(traits: DemoSampleHand): DemoHand {
  const { xHeightMm } = traits;
  const font = traits.font in OUTLINE_HANDS ? (traits.font as OutlineHand) : STEADY_HAND.font;
  const wavesPerMm = traits.tremor?.perMm ?? STEADY_HAND.tremor.wavesPerMm;
  const largest = Math.min(0.12 * xHeightMm, STEEPEST / (2 * Math.PI * wavesPerMm));
  return {
    ...STEADY_HAND,
    font,
    xHeightMm,
    slantDeg: traits.slantDeg ?? 0,
    lnPerWord: traits.decrement ?? 0,
    lnPerLine: (traits.decrement ?? 0) * 0.6,
    wordGapXh: traits.wordGap ?? STEADY_HAND.wordGapXh,
    wordGapSdXh: 0.15 * (traits.wordGap ?? STEADY_HAND.wordGapXh),
    letterSpaceXh: traits.letterGap ?? STEADY_HAND.letterSpaceXh,
    tiltDeg: traits.tiltDeg ?? STEADY_HAND.tiltDeg,
    tremor: { amplitudeMm: Math.min(traits.tremor?.amplitudeMm ?? 0, largest), wavesPerMm },
    overshoot: Math.min((3 * (traits.overshootMm ?? 0)) / xHeightMm, 0.8),
    openLoops: traits.openLoops ?? STEADY_HAND.openLoops,
  };
}

/** What is written on a page, by which hand, and the seed that makes it this page and no other. */
export interface DemoSamplePage extends DemoSampleHand {
  /** One string a written line; what is too long for the sheet is broken at a word end. */
  lines: readonly string[];
  seed: number;
  dpi: number;
}

/** The scanned page of one sample of the demo caseload: the bytes of a JPEG that states its resolution. */
export async function renderDemoPage(page: DemoSamplePage): Promise<Uint8Array> {
  const { lines, seed, dpi, ...traits } = page;
  const ruling = traits.paper === 'dashed' ? 'midline' : (traits.paper ?? 'plain');
  const paper = { size: 'A4', ruling, ink: traits.ink ?? 'blue', rotationDeg: (((seed * 37) % 21) - 10) / 9 } as const;
  const made = await drawDemoPage({ lines, hand: handFrom(traits), paper, seed }, dpi);
  return new Uint8Array(made.bytes);
}
