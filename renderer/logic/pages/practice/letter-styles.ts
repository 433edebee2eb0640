import { joinedWidths, pageBoldWidths, pageWidths, printWidths } from './letter-widths.ts';

/** How model lines are written: print letters, joined letters, or the page's own reading type. */
export type LetterStyleCode = 'print' | 'joined';
export type TypeStyle = LetterStyleCode | 'page' | 'page-bold';

export interface LetterStyle {
  /** Font family as the style sheet names it. */
  family: string;
  /** Heights as shares of the em, from the letters' own outlines. */
  xHeight: number;
  ascender: number;
  descender: number;
  /** Advance widths U+0020 to U+007E in 1/1000 em. */
  widths: readonly number[];
  source: string;
}

/**
 * Shares are outline heights: x-height = median top of a c e m n o r s u v w x z; ascender = median top of b d h k l;
 * descender = median depth of g p q y. Read from the pinned font files, re-read in tests/logic/pages/letter-styles.test.ts.
 */
export const letterStyles: Record<TypeStyle, LetterStyle> = {
  print: {
    family: 'Fairhand Print',
    xHeight: 0.4,
    ascender: 0.8,
    descender: 0.4,
    widths: printWidths,
    source: 'own pen paths, made by build/letters/print-hand.ts; three equal zones',
  },
  joined: {
    family: 'Playwrite US Trad',
    xHeight: 0.519,
    ascender: 1.019,
    descender: 0.519,
    widths: joinedWidths,
    source: '@fontsource/playwrite-us-trad 5.3.0, SIL Open Font License 1.1',
  },
  page: {
    family: 'Atkinson Hyperlegible Next',
    xHeight: 0.504,
    ascender: 0.708,
    descender: 0.162,
    widths: pageWidths,
    source: '@fontsource/atkinson-hyperlegible-next 5.3.0, SIL Open Font License 1.1',
  },
  'page-bold': {
    family: 'Atkinson Hyperlegible Next',
    xHeight: 0.509,
    ascender: 0.708,
    descender: 0.162,
    widths: pageBoldWidths,
    source: '@fontsource/atkinson-hyperlegible-next 5.3.0, SIL Open Font License 1.1',
  },
};

/** Font size in mm at which a letter without reach is exactly `xHeightMm` tall. */
export function fontSizeFor(style: TypeStyle, xHeightMm: number): number {
  return xHeightMm / letterStyles[style].xHeight;
}

/** Width of a text in the unit of `size` (mm or pt). Letters outside U+0020 to U+007E count as a wide letter. */
export function textWidth(text: string, style: TypeStyle, size: number): number {
  const widths = letterStyles[style].widths;
  let sum = 0;
  for (const letter of text.normalize('NFD')) {
    const code = letter.codePointAt(0) ?? 0;
    // Accents sit over their letter and take no room.
    if (code >= 0x300 && code <= 0x36f) continue;
    sum += widths[code - 0x20] ?? 700;
  }
  return (sum / 1000) * size;
}

/**
 * Breaks a text into lines no wider than `width` (same unit as `size`), at spaces; a word wider than the line stands
 * alone and is broken at letters. Line breaks in the text are kept.
 */
export function breakLines(text: string, style: TypeStyle, size: number, width: number): string[] {
  const lines: string[] = [];
  for (const paragraph of text.split('\n')) {
    let line = '';
    for (const word of paragraph.split(/[^\S\u00a0]+/).filter(Boolean)) {
      const longer = line ? `${line} ${word}` : word;
      if (textWidth(longer, style, size) <= width) {
        line = longer;
        continue;
      }
      if (line) lines.push(line);
      line = word;
      while (textWidth(line, style, size) > width && line.length > 1) {
        let cut = line.length - 1;
        while (cut > 1 && textWidth(line.slice(0, cut), style, size) > width) cut--;
        lines.push(line.slice(0, cut));
        line = line.slice(cut);
      }
    }
    lines.push(line);
  }
  return lines;
}
