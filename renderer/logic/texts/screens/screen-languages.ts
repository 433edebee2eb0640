/** Languages of the screens, those of the pages: an object of the shape of the English one each. */
import type { Language, ScreenLanguage } from '../../../../db/types/common.ts';
import { screensDe } from './de/screens-de.ts';
import { screensEn, type ScreenTexts } from './en/screens-en.ts';
import { screensEs } from './es/screens-es.ts';
import { lengthened } from './lengthened.ts';

const screens: Readonly<Record<Language, ScreenTexts>> = { en: screensEn, es: screensEs, de: screensDe };

/** The words of every screen in a language. */
export const screensIn = (language: ScreenLanguage): ScreenTexts =>
  language === 'long' ? lengthened(screensEn) : screens[language];
