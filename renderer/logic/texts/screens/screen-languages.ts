/**
 * Languages of the screens. A language is an object of the shape of the English one; within a screen it is complete
 * (a missing key fails the type check), a screen that is not translated yet speaks English.
 */
import { screensEn, type ScreenTexts } from './en/screens-en.ts';
import { screensEs } from './es/screens-es.ts';
import { screensDe } from './de/screens-de.ts';
import { lengthened } from './lengthened.ts';

/** 'long' is no language: English, stretched, for tests of what a longer language does to a screen. */
export type ScreenLanguage = 'en' | 'es' | 'de' | 'long';
type Screen = keyof ScreenTexts;

const translated: Readonly<Record<Exclude<ScreenLanguage, 'long'>, Partial<ScreenTexts>>> = {
  en: screensEn,
  es: screensEs,
  de: screensDe,
};

/** Names in their own language, as a choice shows them. */
export const screenLanguageNames: Readonly<Record<keyof typeof translated, string>> = {
  en: 'English',
  es: 'Español',
  de: 'Deutsch',
};

export const isScreenLanguage = (code: string): code is ScreenLanguage =>
  code === 'long' || Object.hasOwn(translated, code);

/** The words of every screen: in this language where it has them, else in English. */
export const screensIn = (language: ScreenLanguage): ScreenTexts =>
  language === 'long' ? lengthened(screensEn) : { ...screensEn, ...translated[language] };

/** Screens that this language shows in English. */
export const stillEnglish = (language: ScreenLanguage): Screen[] =>
  language === 'en' || language === 'long'
    ? []
    : (Object.keys(screensEn) as Screen[]).filter((screen) => !(screen in translated[language]));
