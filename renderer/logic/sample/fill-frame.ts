/** Puts words into the slots of a frame, and mends what the words ask for. */

/** "a old box" -> "an old box". Letters decide, but for the few common words that sound otherwise. */
const withArticle = (text: string): string =>
  text.replace(/\b([Aa]) (?=[aeiouAEIOU])(?!(?:one|use|used|useful|uni|eu)\b)/g, '$1n ');

/** Spanish: "de el" and "a el" are one word. */
const contracted = (text: string): string => text.replace(/\b([Dd])e el\b/g, '$1el').replace(/\b([Aa]) el\b/g, '$1l');

/** @param words one a slot, in the order of the slots */
export function fillFrame(text: string, words: readonly string[], language: string): string {
  let at = 0;
  const filled = text.replace(/\{[^{}]*\}/g, () => words[at++] ?? '');
  if (language.startsWith('es')) return contracted(filled);
  return language.startsWith('en') ? withArticle(filled) : filled;
}

/** What makes two sentences the same one for a reader: words alone, without case and punctuation. */
export const sentenceKey = (sentence: string): string =>
  sentence
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim();
