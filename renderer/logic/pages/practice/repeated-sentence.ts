/** Words that make a sentence worth comparing: "Good day." may repeat. */
const LEAST_WORDS = 4;

const sentences = (text: string): string[] =>
  text
    .split(/(?<=[.!?])\s+|\n+/u)
    .map((sentence) => sentence.trim())
    .filter(Boolean);

const wordsOf = (sentence: string): string[] => sentence.toLowerCase().match(/[\p{L}\p{N}]+/gu) ?? [];

/** Share of equal words of two sentences, percent, whatever their order: twice the common words over all words. */
function alike(a: readonly string[], b: readonly string[]): number {
  const left = [...b];
  let common = 0;
  for (const word of a) {
    const at = left.indexOf(word);
    if (at < 0) continue;
    left.splice(at, 1);
    common++;
  }
  return (200 * common) / (a.length + b.length);
}

/**
 * The first sentence of a note that an earlier note holds in (nearly) the same words; null when there is none.
 * @param percent from this share of equal words on, two sentences count as the same (`limitsOf`)
 */
export function repeatedSentence(text: string, earlier: string, percent: number): string | null {
  const before = sentences(earlier).map(wordsOf);
  return (
    sentences(text).find((sentence) => {
      const words = wordsOf(sentence);
      return words.length >= LEAST_WORDS && before.some((old) => alike(words, old) >= percent);
    }) ?? null
  );
}
