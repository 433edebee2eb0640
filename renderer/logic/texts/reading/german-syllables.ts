/** Syllables of a German word: groups of vowels, in which ai, au, äu, ei, eu, ie, oi and doubled vowels are one sound. */

/** Source: rules of German spelling as taught in schools (from memory); words from other languages may be one off. */
export function germanSyllables(word: string): number {
  const letters = word
    .toLowerCase()
    .replace(/qu/g, 'q')
    // "ie" at the end of such words is two sounds: Familie, Linie.
    .replace(/(famil|lin|fer)ie(?=n?$)/g, '$1i-e');
  const sounds = letters.match(/äu|au|ai|ay|ei|ey|eu|ie|oi|aa|ee|oo|[aeiouäöüy]/g) ?? [];
  return Math.max(1, sounds.length);
}
