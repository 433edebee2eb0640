/** How many letters that should close were found where they were drawn, of words that the text told. */
import type { PageResult } from '../../renderer/measure/types.ts';
import { layOut } from '../../tests/measure/pages/layout.ts';
import type { PageSpec } from '../../tests/measure/pages/types.ts';

/** Two stretches are the same letter when they share at least this part of both together. */
const SAME = 0.5;
/** The words of a page may lie this far from where they were drawn, mm: a turn that nothing shows. */
const ASIDE_MM = 2;

/** @param result of the page of this specification, measured with its text */
export function placedLetters(spec: PageSpec, result: PageResult): { placed: number; letters: number } {
  const { lines, words } = layOut(spec);
  let at = 0;
  let [placed, letters] = [0, 0];
  lines.forEach((line, i) => {
    let rest = result.lines[i]?.words ?? [];
    for (const { text, box } of line.words) {
      const drawn = words[at]!.letters;
      at += 1;
      const middle = box.xMm + box.widthMm / 2;
      const found = rest.findIndex(
        (word) => word.text === text && Math.abs(word.box.xMm + word.box.widthMm / 2 - middle) < box.widthMm + ASIDE_MM,
      );
      const word = rest[found];
      if (!word || word.letters.length !== drawn.length) continue;
      rest = rest.slice(found + 1);
      word.letters.forEach((letter, k) => {
        if (!letter.closureExpected) return;
        const from = letter.box.xMm - word.box.xMm;
        const to = from + letter.box.widthMm;
        const { fromMm, toMm } = drawn[k]!;
        letters += 1;
        if (Math.min(to, toMm) - Math.max(from, fromMm) > SAME * (Math.max(to, toMm) - Math.min(from, fromMm)))
          placed += 1;
      });
    }
  });
  return { placed, letters };
}
