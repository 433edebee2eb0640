import { median } from '../../renderer/statistics/order-statistics.ts';
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { extent, X_HEIGHT_LETTERS } from './glyph.ts';
import type { Chain, Glyph, LetterFont } from './glyph.ts';

/** Single-stroke hands of the npm package hersheytext 2.0 (EMS fonts: OFL 1.1; Hershey fonts: A. V. Hershey, US NBS). */
export const PEN_HANDS = {
  EMSReadability: false,
  EMSNixish: false,
  HersheySans1: false,
  EMSFelix: true,
  EMSAllure: true,
  HersheyScript1: true,
  // For pages that nothing was tuned on.
  EMSTech: false,
  EMSElfin: false,
  EMSOsmotron: false,
  EMSReadabilityItalic: false,
  HersheySansMed: false,
  HersheyScriptMed: true,
} as const;
export type PenHand = keyof typeof PEN_HANDS;

const NAMED: Record<string, string> = { amp: '&', lt: '<', gt: '>', quot: '"', apos: "'" };

function unescapeXml(text: string): string {
  return text.replace(/&(#x[0-9a-f]+|#\d+|\w+);/gi, (whole, name: string) => {
    if (name.startsWith('#x')) return String.fromCodePoint(parseInt(name.slice(2), 16));
    if (name.startsWith('#')) return String.fromCodePoint(Number(name.slice(1)));
    return NAMED[name] ?? whole;
  });
}

function strokesOf(path: string, unit: number): Chain[] {
  return path
    .split('M')
    .map((part) => (part.match(/-?[\d.]+/g) ?? []).map((n) => Number(n) / unit))
    .filter((numbers) => numbers.length >= 4)
    .map((numbers) => Float64Array.from(numbers));
}

const loaded = new Map<PenHand, LetterFont>();

/** Loads one single-stroke hand; heights are of the pen's centre line. */
export function penFont(hand: PenHand): LetterFont {
  const known = loaded.get(hand);
  if (known) return known;
  const file = createRequire(import.meta.url).resolve(`hersheytext/svg_fonts/${hand}.svg`);
  const raw = new Map<string, { advance: number; path: string }>();
  for (const [tag] of readFileSync(file, 'utf8').matchAll(/<glyph [^>]*>/g)) {
    const char = /unicode="([^"]*)"/.exec(tag)?.[1];
    const advance = /horiz-adv-x="([^"]*)"/.exec(tag)?.[1];
    if (char === undefined || advance === undefined) continue;
    raw.set(unescapeXml(char), { advance: Number(advance), path: / d="([^"]*)"/.exec(tag)?.[1] ?? '' });
  }
  const shapes = [...X_HEIGHT_LETTERS].map((char) => extent(strokesOf(raw.get(char)?.path ?? '', 1)));
  const low = median(shapes.map((shape) => shape?.low ?? 0))!;
  const unit = median(shapes.map((shape) => (shape?.high ?? 1) - low))!;
  const glyphs = new Map<string, Glyph>();
  const made: LetterFont = {
    name: hand,
    joined: PEN_HANDS[hand],
    kind: 'pen',
    has: (char) => raw.has(char),
    glyph(char) {
      const seen = glyphs.get(char);
      if (seen) return seen;
      const source = raw.get(char);
      if (!source) throw new RangeError(`${hand} has no letter "${char}"`);
      const strokes = strokesOf(source.path, unit);
      for (const chain of strokes)
        for (let i = 1; i < chain.length; i += 2) chain[i] = (chain[i] as number) - low / unit;
      const glyph: Glyph = { char, advance: source.advance / unit, rings: [], strokes };
      glyphs.set(char, glyph);
      return glyph;
    },
    kern: () => 0,
  };
  loaded.set(hand, made);
  return made;
}
