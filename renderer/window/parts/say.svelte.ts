/** The words of the screens in the language that the therapist chose; a change of language redraws what reads them. */
import type { ScreenTexts } from '../../logic/texts/screens/en/screens-en.ts';
import type { Texts } from '../../logic/texts/en.ts';
import { languageOf, languages, type Language } from '../../logic/texts/languages.ts';
import type { ScreenLanguage } from '../../../db/types/common.ts';
import { type Decimals, decimalsIn } from '../../logic/texts/decimals.ts';
import { isScreenLanguage, screensIn } from '../../logic/texts/screens/screen-languages.ts';
import type { Telling } from '../../logic/texts/screens/telling.ts';
import { retold } from '../../logic/texts/retold.ts';
import { toldEnglish } from '../../logic/texts/screens/told-english.ts';
import { inWords, tableWordsIn, type TableWords } from '../../logic/texts/table-words.ts';
import printedDe from '../../../db/rules/texts/de.json' with { type: 'json' };
import printedEs from '../../../db/rules/texts/es.json' with { type: 'json' };
import rowsDe from '../../../db/rules/texts/screens/de.json' with { type: 'json' };
import rowsEs from '../../../db/rules/texts/screens/es.json' with { type: 'json' };

const system = typeof navigator === 'undefined' ? 'en' : navigator.language;
/** The system's language where there are words for it, else English. */
const systemLanguage = languageOf(system);

let language = $state.raw<ScreenLanguage>(systemLanguage);
const texts = $derived(screensIn(language));

/** `say.sample.takeOut`: read where it is shown, never kept, so that it follows the language. */
export const say = new Proxy({} as ScreenTexts, {
  get: (_, screen) => texts[screen as keyof ScreenTexts],
});

export const shownLanguage = (): ScreenLanguage => language;

/** For sentences that pages say too. */
export const shownPageLanguage = (): Language => (language === 'long' ? 'en' : language);

/** For dates and numbers: the system's own region where it speaks the shown language. */
export const shownLocale = (): string => {
  if (language === 'long') return 'en';
  return system.slice(0, 2).toLowerCase() === language ? system : language;
};

/** Shows the screens in a language; 'system' = the system's own. */
export function speak(chosen: string): void {
  language = isScreenLanguage(chosen) ? chosen : systemLanguage;
}

/** Made when first needed: a start in English waits for none of them. */
const tables = new Map<Language, TableWords>([['en', (text) => text]]);
const rowsOf: Readonly<Record<'es' | 'de', Parameters<typeof tableWordsIn>>> = {
  es: [rowsEs, printedEs],
  de: [rowsDe, printedDe],
};
function tableIn(code: Language): TableWords {
  const known = tables.get(code);
  if (known || code === 'en') return known!;
  const { told } = screensIn(code);
  const made = retold(
    { ...toldEnglish.draft, ...toldEnglish.printed },
    { ...told.draft, ...told.printed },
    tableWordsIn(...rowsOf[code]),
  );
  tables.set(code, made);
  return made;
}

/** A text of the rule table, or a sentence that is kept in English, in the shown language. */
export const inTable: TableWords = (english) => tableIn(shownPageLanguage())(english);

/** What was walked before: the table is large, and stays the same while it is looked at. */
const shownBefore = new WeakMap<object, { language: Language; part: unknown }>();

/** A part of the rule table with its words in the shown language: to be read only, since what is kept is the table's own. */
export function shownTable<T extends object>(part: T): T {
  const shown = shownPageLanguage();
  if (shown === 'en') return part;
  const known = shownBefore.get(part);
  if (known?.language === shown) return known.part as T;
  const told = inWords(part, tableIn(shown));
  shownBefore.set(part, { language: shown, part: told });
  return told;
}

/** How much and how often a line is done, in the shown language. */
export const shownDoses = (): Texts['dose'] => {
  const { dose } = languages[shownPageLanguage()].texts;
  const { how } = languages.en.texts.dose;
  return { ...dose, how: Object.fromEntries(Object.entries(how).map(([code, text]) => [code, inTable(text)])) };
};

/** Words within a sentence: no capital, but for German, where nouns keep theirs. */
export const withinSentence = (words: string): string => languages[shownPageLanguage()].texts.family.inSentence(words);

/** Numbers in sentences, with the decimal mark of the shown language. */
export const shownDecimals: Decimals = (value, most, least) => decimalsIn(shownLocale())(value, most, least);

/** What logic tells with, in the shown language. */
export const telling: Telling = {
  get told() {
    return say.told;
  },
  decimals: shownDecimals,
};
