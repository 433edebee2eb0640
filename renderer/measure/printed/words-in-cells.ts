import type { Correction } from '../measure-options.ts';
import type { BoxMm, PageResult, PointMm } from '../types.ts';

/** Letters of neighboring cells make one word; a cell left empty parts two. */
export function wordsInCells({ lines }: Pick<PageResult, 'lines'>, cellMm: number): Correction[] {
  return lines.flatMap(({ words }) =>
    words.slice(1).flatMap((word, i): Correction[] => {
      const before = words[i]!;
      const gap = word.box.xMm - before.box.xMm - before.box.widthMm;
      return gap < cellMm ? [{ kind: 'join-words', at: middleOf(before.box), with: middleOf(word.box) }] : [];
    }),
  );
}

const middleOf = ({ xMm, yMm, widthMm, heightMm }: BoxMm): PointMm => ({
  xMm: xMm + widthMm / 2,
  yMm: yMm + heightMm / 2,
});
