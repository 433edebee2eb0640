/** Languages that family pages can be printed in; their shipped titles, texts and cautions stand in db/rules/texts. */
import type { Language } from '../../../db/types/common.ts';
import { texts as en, type Texts } from './en.ts';
import { de } from './de.ts';
import { es } from './es.ts';

export type { Language };

interface LanguageOfPages {
  /** In its own language. */
  name: string;
  /** As an English sentence says it. */
  english: string;
  /** For dates; null = the window's. */
  locale: string | null;
  texts: Texts;
}

export const languages: Readonly<Record<Language, LanguageOfPages>> = {
  en: { name: 'English', english: 'English', locale: null, texts: en },
  es: { name: 'Español', english: 'Spanish', locale: 'es', texts: es },
  de: { name: 'Deutsch', english: 'German', locale: 'de', texts: de },
};
