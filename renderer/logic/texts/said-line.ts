/**
 * A line of the program in another language: each text by its key. Own wording stays as it is; a text whose English has
 * changed since it was translated, or that was never translated, stays English and is told.
 */
import type { ProgramLine } from '../../../db/types/program.ts';
import type { RulesInUse } from '../../../db/types/rules-in-use.ts';
import { textDigest } from './text-digest.ts';
import { cautionKey, englishTexts, howKey, type TextKey, titleKey } from './text-keys.ts';

/** Why a shipped text prints in English. */
type Untold = 'changed' | 'missing';

export interface Speaker {
  /** The line with its words said. */
  line: (line: ProgramLine) => ProgramLine;
  /** A sentence of the rule table for the whole page. */
  pageSentence: (text: string) => string;
  /** How a dose is done, by its code. */
  hows: (codes: readonly string[]) => Record<string, string>;
  /** English words left on the page: their keys, and why. */
  untold: Map<TextKey, Untold>;
  /** The same as they print. */
  english: Set<string>;
}

type Values = Readonly<Record<'letters' | 'words', readonly string[]>>;
const none: Values = { letters: [], words: [] };

/** The client's own letters and words in place of `{letters}` and `{words}`. */
export const filled = (text: string, values: Values, lettersUnknown: string): string =>
  text
    .replace('{letters}', values.letters.length > 0 ? values.letters.join(', ') : lettersUnknown)
    .replace('{words}', values.words.join(', '));

/** @param language a language that db/rules/texts has a file of */
export function speakerOf(rules: RulesInUse, language: string): Speaker {
  const english = englishTexts(rules);
  const rows = rules.translations[language] ?? {};
  const untold: Speaker['untold'] = new Map();
  const left: Speaker['english'] = new Set();

  /** One text; null = it stays English. */
  const one = (key: TextKey): string | null => {
    const row = rows[key];
    const current = row?.english === textDigest(english.get(key) ?? '');
    if (!current) untold.set(key, row ? 'changed' : 'missing');
    return current ? row.text : null;
  };
  /** Texts in a row, said where they are the shipped words. @param stored what the program keeps */
  const said = (keys: readonly TextKey[], stored: string, values: Values = none): string => {
    const known = keys.flatMap((key) => english.get(key) ?? []);
    const shipped = filled(known.join(' '), values, english.get('phrase.letters-on-sheet')!);
    if (keys.length === 0 || known.length < keys.length || shipped !== stored) return stored;
    const noLetters = values.letters.length === 0 && known.some((text) => text.includes('{letters}'));
    const parts = keys.map(one);
    const lettersUnknown = noLetters ? one('phrase.letters-on-sheet') : '';
    if (!parts.includes(null) && lettersUnknown !== null) return filled(parts.join(' '), values, lettersUnknown);
    left.add(stored);
    return stored;
  };
  const ownLanguage = new Set(rules.items.filter(({ ref }) => ref?.kind === 'content').map(({ code }) => code));

  return {
    line: (line) => {
      const { item, keys } = line;
      if (item === null || ownLanguage.has(item)) return line;
      return {
        ...line,
        title: said([titleKey(item)], line.title),
        text: keys ? said(keys.text as TextKey[], line.text, keys) : line.text,
        cautions: line.cautions.map((words, i) => {
          const code = keys?.cautions[i];
          return code === undefined ? words : said([cautionKey(code)], words);
        }),
      };
    },
    pageSentence: (text) => {
      const row = rules.cautionTexts.find((each) => each.on === 'page' && each.text === text);
      return row ? said([cautionKey(row.code)], text) : text;
    },
    hows: (codes) =>
      Object.fromEntries(
        codes
          .filter((code) => english.has(howKey(code)))
          .map((code) => [code, said([howKey(code)], english.get(howKey(code))!)]),
      ),
    untold,
    english: left,
  };
}
