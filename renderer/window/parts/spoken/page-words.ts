/** Words that pages and screens share, in the shown language. */
import type { Texts } from '../../../logic/texts/en.ts';
import { languages } from '../../../logic/texts/languages.ts';
import { inTable, shownPageLanguage } from '../say.svelte.ts';

/** How much and how often a line is done. */
export const shownDoses = (): Texts['dose'] => {
  const { dose } = languages[shownPageLanguage()].texts;
  const { how } = languages.en.texts.dose;
  return { ...dose, how: Object.fromEntries(Object.entries(how).map(([code, text]) => [code, inTable(text)])) };
};

/** Words within a sentence: no capital, but for German, where nouns keep theirs. */
export const withinSentence = (words: string): string => languages[shownPageLanguage()].texts.family.inSentence(words);
