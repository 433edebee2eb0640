/** Which languages have words of ours. Apart from the words: whoever asks which there are waits for none of them. */
import type { Language, ScreenLanguage } from '../../../db/types/common.ts';

const known: Readonly<Record<Language, true>> = { en: true, es: true, de: true };

/** The client's or the system's language where there are texts for it, else English. */
export function languageOf(code: string): Language {
  const short = code.slice(0, 2).toLowerCase();
  return Object.hasOwn(known, short) ? (short as Language) : 'en';
}

export const isScreenLanguage = (code: string): code is ScreenLanguage => code === 'long' || Object.hasOwn(known, code);
