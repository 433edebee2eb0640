/** Languages that family pages can be printed in. Another one is one more row and one more file of texts. */
import { texts as en, type Texts } from './en.ts';
import { shippedEs } from './shipped-es.ts';
import { shippedEsLines } from './shipped-es-lines.ts';
import { shippedEsTexts } from './shipped-es-texts.ts';
import { es } from './es.ts';

export type Language = 'en' | 'es';

interface LanguageOfPages {
  name: string;
  /** For dates; null = the window's. */
  locale: string | null;
  texts: Texts;
  /** Titles, texts and cautions of the shipped rule table by their English words. */
  shipped: Readonly<Record<string, string>>;
}

export const languages: Readonly<Record<Language, LanguageOfPages>> = {
  en: { name: 'English', locale: null, texts: en, shipped: {} },
  es: { name: 'Español', locale: 'es', texts: es, shipped: { ...shippedEs, ...shippedEsTexts, ...shippedEsLines } },
};

/** The client's language where there are texts for it, else English. */
export function languageOf(code: string): Language {
  const short = code.slice(0, 2).toLowerCase();
  return short in languages ? (short as Language) : 'en';
}
