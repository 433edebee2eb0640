/** Walking from word to word over a measured page by keyboard. */
interface Box {
  xMm: number;
  yMm: number;
  widthMm: number;
  heightMm: number;
}
interface Lines {
  readonly lines: readonly { readonly words: readonly { readonly box: Box }[] }[];
}
export interface WordAt {
  line: number;
  word: number;
}
export type Step = 'next' | 'before' | 'up' | 'down' | 'first' | 'last';

const middle = (box: Box): number => box.xMm + box.widthMm / 2;

/** The word that a step leads to; stays where there is none. From nowhere: the first word of the page. Null = no words. */
export function walk(page: Lines, from: WordAt | null, step: Step): WordAt | null {
  const flat = page.lines.flatMap((line, l) => line.words.map((_, w) => ({ line: l, word: w })));
  if (flat.length === 0) return null;
  const at = from ? flat.findIndex((one) => one.line === from.line && one.word === from.word) : -1;
  if (!from || at < 0) return flat[0]!;
  if (step === 'next') return flat[Math.min(at + 1, flat.length - 1)]!;
  if (step === 'before') return flat[Math.max(at - 1, 0)]!;
  const words = page.lines[from.line]!.words;
  if (step === 'first') return { line: from.line, word: 0 };
  if (step === 'last') return { line: from.line, word: words.length - 1 };
  const by = step === 'up' ? -1 : 1;
  for (let line = from.line + by; line >= 0 && line < page.lines.length; line += by) {
    const there = page.lines[line]!.words;
    if (there.length === 0) continue;
    const x = middle(words[from.word]!.box);
    const apart = there.map((word) => Math.abs(middle(word.box) - x));
    return { line, word: apart.indexOf(Math.min(...apart)) };
  }
  return from;
}

/** The word at a place, or the nearest: after a correction the same ink may be another word of another line. */
export function wordNear(page: Lines, box: Box): WordAt | null {
  const [x, y] = [middle(box), box.yMm + box.heightMm / 2];
  let best: WordAt | null = null;
  let least = Infinity;
  page.lines.forEach(({ words }, line) =>
    words.forEach(({ box: other }, word) => {
      const away = Math.hypot(middle(other) - x, other.yMm + other.heightMm / 2 - y);
      if (away < least) [least, best] = [away, { line, word }];
    }),
  );
  return best;
}
