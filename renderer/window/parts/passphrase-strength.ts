/**
 * A rough, honest word for how hard a passphrase is to guess. Long phrases win; repeated characters do not.
 * Common practice, no source: length counts most; the words are a hint, the limit of 12 characters is enforced by the shell.
 */
export function passphraseStrength(passphrase: string): { score: 0 | 1 | 2 | 3; words: string } {
  const distinct = new Set(passphrase.toLowerCase()).size;
  const words = passphrase
    .trim()
    .split(/\s+/)
    .filter((w) => w.length > 2).length;
  if (passphrase.length < 12 || distinct < 6) return { score: 0, words: 'too short; add more words' };
  if (passphrase.length < 16 && words < 3) return { score: 1, words: 'fair; longer is better' };
  if (passphrase.length < 24 && words < 4) return { score: 2, words: 'good' };
  return { score: 3, words: 'very good' };
}

/** What to say about a new passphrase typed twice; '' when the two are the same. */
export const differ = (passphrase: string, again: string): string =>
  passphrase === again ? '' : 'The two passphrases differ. Nothing was changed. Type them again.';
