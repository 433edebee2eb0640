/** Languages that family pages can be printed in. Another one is one more row and one more file of texts. */
import { texts as en, type Texts } from './texts.ts';
import { es } from './texts-es.ts';

export type Language = 'en' | 'es';

export const languages: Readonly<Record<Language, { name: string; locale: string | null; texts: Texts }>> = {
  en: { name: 'English', locale: null, texts: en },
  es: { name: 'Español', locale: 'es', texts: es },
};

/** The client's language where there are texts for it, else English. */
export function languageOf(code: string): Language {
  const short = code.slice(0, 2).toLowerCase();
  return short in languages ? (short as Language) : 'en';
}
