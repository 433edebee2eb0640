import { usualOnes } from '../lines/page-model.ts';
import { median } from '../../statistics/order-statistics.ts';
import type { LineResult } from '../types.ts';

/** The lines without small letters of the text that were cut or laid wrongly: their heights are those of no letter. */
export function withoutMisread(lines: LineResult[]): LineResult[] {
  const isKept = usualOnes(
    lines.flatMap((line) =>
      line.words.flatMap((w) => (w.text === null ? [] : w.xHeightsMm.map((height) => Math.log(height / w.sizeMm)))),
    ),
  );
  return lines.map((line) => {
    const words = line.words.map((word) => {
      if (word.text === null) return word;
      const xHeightsMm = word.xHeightsMm.filter((height) => isKept(Math.log(height / word.sizeMm)));
      return { ...word, xHeightsMm, xHeightMm: median(xHeightsMm) };
    });
    return { ...line, words, xHeightMm: median(words.filter((w) => !w.excluded).flatMap((w) => w.xHeightsMm)) };
  });
}
