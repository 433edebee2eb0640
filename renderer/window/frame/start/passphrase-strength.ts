/**
 * A rough, honest word for how hard a passphrase is to guess. Long phrases win; repeated characters do not.
 * Common practice, no source: length counts most; the words are a hint, the limit of 12 characters is enforced by the shell.
 */
import { say } from '../../parts/say.svelte.ts';

export function passphraseStrength(passphrase: string): { score: 0 | 1 | 2 | 3; words: string } {
  const distinct = new Set(passphrase.toLowerCase()).size;
  const words = passphrase
    .trim()
    .split(/\s+/)
    .filter((w) => w.length > 2).length;
  if (passphrase.length < 12 || distinct < 6) return { score: 0, words: say.parts.tooShortAddMore };
  if (passphrase.length < 16 && words < 3) return { score: 1, words: say.parts.fairLongerIsBetter };
  if (passphrase.length < 24 && words < 4) return { score: 2, words: say.parts.good };
  return { score: 3, words: say.parts.veryGood };
}

/** What to say about a new passphrase typed twice; '' when the two are the same. */
export const differ = (passphrase: string, again: string): string =>
  passphrase === again ? '' : say.parts.twoPassphrasesDifferNothing;
