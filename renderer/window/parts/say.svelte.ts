/** The words of the screens in the language that the therapist chose; a change of language redraws what reads them. */
import type { MessageCode } from '../../../electron/contract/messages.ts';
import type { Language, ScreenLanguage } from '../../../db/types/common.ts';
import { type Decimals, decimalsIn } from '../../logic/texts/decimals.ts';
import { isScreenLanguage, languageOf } from '../../logic/texts/known-languages.ts';
import { firstWordsEn } from '../../logic/texts/screens/first-words-en.ts';
import type { ScreenTexts } from '../../logic/texts/screens/en/screens-en.ts';
import type { Telling } from '../../logic/texts/screens/telling.ts';
import { inWords, type TableWords } from '../../logic/texts/table-words.ts';
import type { Spoken } from './spoken/spoken.ts';

const system = typeof navigator === 'undefined' ? 'en' : navigator.language;
/** The system's language where there are words for it, else English. */
const systemLanguage = languageOf(system);

let language = $state.raw<ScreenLanguage>(systemLanguage);
/** A start in English waits for no file of words: the desk brings the rest of them. */
let spoken = $state.raw<Spoken>({ screens: firstWordsEn as ScreenTexts, table: (english) => english, refusal: null });

/** `say.sample.takeOut`: read where it is shown, never kept, so that it follows the language. */
export const say = new Proxy({} as ScreenTexts, {
  get: (_, screen) => spoken.screens[screen as keyof ScreenTexts],
});

export const shownLanguage = (): ScreenLanguage => language;

/** For sentences that pages say too. */
export const shownPageLanguage = (): Language => pageLanguage(language);
const pageLanguage = (shown: ScreenLanguage): Language => (shown === 'long' ? 'en' : shown);

/** For dates and numbers: the system's own region where it speaks the shown language. */
export const shownLocale = (): string => {
  if (language === 'long') return 'en';
  return system.slice(0, 2).toLowerCase() === language ? system : language;
};

/** A language is fetched when it is first spoken. */
const files: Readonly<Record<ScreenLanguage, () => Promise<Spoken>>> = {
  en: async () => (await import('./spoken/spoken-en.ts')).spokenEn,
  es: async () => (await import('./spoken/spoken-es.ts')).spokenEs,
  de: async () => (await import('./spoken/spoken-de.ts')).spokenDe,
  long: async () => (await import('./spoken/spoken-en.ts')).spokenLong(),
};

let chosenLast: ScreenLanguage = systemLanguage;
/** Shows the screens in a language; 'system' = the system's own. */
export async function speak(chosen: string): Promise<void> {
  const next = isScreenLanguage(chosen) ? chosen : systemLanguage;
  chosenLast = next;
  const words = await files[next]();
  // Another one may have been chosen meanwhile.
  if (chosenLast === next) [language, spoken] = [next, words];
}

/** Before the first screen. */
export const firstWords: Promise<void> = systemLanguage === 'en' ? Promise.resolve() : speak('system');

/** What cannot be done; null = as the contract has it, in English. */
export const refusalTold = (code: MessageCode, detail: string | undefined): string | null =>
  spoken.refusal?.(code, detail) ?? null;

/** A text of the rule table, or a sentence that is kept in English, in the shown language. */
export const inTable: TableWords = (english) => spoken.table(english);

/** What was walked before: the table is large, and stays the same while it is looked at. */
const shownBefore = new WeakMap<object, { words: TableWords; part: unknown }>();

/** A part of the rule table with its words in the shown language: to be read only, since what is kept is the table's own. */
export function shownTable<T extends object>(part: T): T {
  if (shownPageLanguage() === 'en') return part;
  const { table } = spoken;
  const known = shownBefore.get(part);
  if (known?.words === table) return known.part as T;
  const told = inWords(part, table);
  shownBefore.set(part, { words: table, part: told });
  return told;
}

/** Numbers in sentences, with the decimal mark of the shown language. */
export const shownDecimals: Decimals = (value, most, least) => decimalsIn(shownLocale())(value, most, least);

/** What logic tells with, in the shown language. */
export const telling: Telling = {
  get told() {
    return say.told;
  },
  decimals: shownDecimals,
};
