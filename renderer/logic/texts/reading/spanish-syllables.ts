/** Syllables of a Spanish word by the rules of its spelling: strong vowels part, weak ones join, an accent on a weak one parts. */

/** Source: rules of diphthong and hiatus as taught in Spanish schools (from memory). */
export function spanishSyllables(word: string): number {
  const letters = word
    .toLowerCase()
    // u is silent in que, qui, gue, gui; y is a vowel at the end of a word or alone.
    .replace(/qu(?=[eiéí])/g, 'q')
    .replace(/gu(?=[eiéí])/g, 'g')
    .replace(/y(?=$|[^aeiouáéíóúü])/g, 'i');
  let count = 0;
  for (const group of letters.match(/[aeiouáéíóúü]+/g) ?? []) {
    count += 1;
    for (let i = 1; i < group.length; i++) {
      const before = group[i - 1]!;
      const here = group[i]!;
      const strong = (letter: string): boolean => /[aeoáéóíú]/.test(letter);
      if (strong(before) && strong(here)) count += 1;
    }
  }
  return Math.max(1, count);
}
