/** Names of papers as a printed page says them, in its own language, whatever the screens speak. */
import type { Language } from '../../../../db/types/common.ts';
import { paperToldDe } from './de/told/clinic/paper-de.ts';
import { paperToldEn } from './en/told/clinic/paper-en.ts';
import { paperToldEs } from './es/told/clinic/paper-es.ts';
import type { Told } from './en/screens-en.ts';

const papers: Readonly<Record<Language, Told['paper']>> = { en: paperToldEn, es: paperToldEs, de: paperToldDe };

export const paperIn = (language: Language): Told['paper'] => papers[language];
