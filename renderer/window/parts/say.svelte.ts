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

const system = typeof navigator === 'undefined' ? 'en' : navigator.language;
/** The system's language where there are words for it, else English. */
const systemLanguage = languageOf(system);

let language = $state.raw<ScreenLanguage>(systemLanguage);
const texts = $derived(screensIn(language));
/** The rule table is in English; the start screen shows none of it. */
let table = $state.raw<TableWords>((english) => english);

/** `say.sample.takeOut`: read where it is shown, never kept, so that it follows the language. */
export const say = new Proxy({} as ScreenTexts, {
  get: (_, screen) => texts[screen as keyof ScreenTexts],
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

let chosenLast: ScreenLanguage = systemLanguage;
/** Shows the screens in a language, with the words of its table; 'system' = the system's own. */
export async function speak(chosen: string): Promise<void> {
  const next = isScreenLanguage(chosen) ? chosen : systemLanguage;
  chosenLast = next;
  const words = await tableIn(pageLanguage(next));
  // Another one may have been chosen meanwhile.
  if (chosenLast === next) [language, table] = [next, words];
}

/** Large files, fetched when first spoken: a start in English waits for none of them. */
const files = {
  es: () =>
    Promise.all([
      import('../../../db/rules/texts/screens/es.json', { with: { type: 'json' } }),
      import('../../../db/rules/texts/es.json', { with: { type: 'json' } }),
    ]),
  de: () =>
    Promise.all([
      import('../../../db/rules/texts/screens/de.json', { with: { type: 'json' } }),
      import('../../../db/rules/texts/de.json', { with: { type: 'json' } }),
    ]),
};
const tables = new Map<Language, TableWords>([['en', (english) => english]]);
async function tableIn(code: Language): Promise<TableWords> {
  const known = tables.get(code);
  if (known || code === 'en') return known!;
  const [rows, printed] = await files[code]();
  const { told } = screensIn(code);
  const made = retold(
    { ...toldEnglish.draft, ...toldEnglish.printed },
    { ...told.draft, ...told.printed },
    tableWordsIn(rows.default, printed.default),
  );
  tables.set(code, made);
  return made;
}

void speak('system');

/** A text of the rule table, or a sentence that is kept in English, in the shown language. */
export const inTable: TableWords = (english) => table(english);

/** What was walked before: the table is large, and stays the same while it is looked at. */
const shownBefore = new WeakMap<object, { words: TableWords; part: unknown }>();

/** A part of the rule table with its words in the shown language: to be read only, since what is kept is the table's own. */
export function shownTable<T extends object>(part: T): T {
  if (shownPageLanguage() === 'en') return part;
  const known = shownBefore.get(part);
  if (known?.words === table) return known.part as T;
  const told = inWords(part, table);
  shownBefore.set(part, { words: table, part: told });
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
