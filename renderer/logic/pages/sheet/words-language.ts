/**
 * In which language somebody typed a sentence that stands on a page of another: a reader of the page speaks it so. Small
 * words that one of the languages has and the others have not tell it (common practice, no source).
 */
import type { Language } from '../../texts/languages.ts';

const small: Readonly<Record<Language, ReadonlySet<string>>> = {
  en: new Set(
    'the and of to is are were you your my her his she he we with what from for that this it at on by not have has can their three weeks good'.split(
      ' ',
    ),
  ),
  es: new Set(
    'llame el la los las de del y que se por con una un su sus para en al lo le más muy está son fue mi tiene puede cada sin'.split(
      ' ',
    ),
  ),
  de: new Set(
    'der das und ist nicht mit sie ein eine einen zu dem den im für auf von bei sich ich wir ihr ihre mein auch wird kann hat aus nach'.split(
      ' ',
    ),
  ),
};

const count = (words: readonly string[], language: Language): number =>
  words.filter((word) => small[language].has(word)).length;

/** Sentences of a text, each with the space behind it; a quotation after a colon is one of its own. */
const sentences = (text: string): string[] => text.match(/.+?(?:[.:!?]["”»“]?\s+|$)/gs) ?? [text];

/** A text cut where its language changes; null = that of the page, or not known. */
export function spokenParts(text: string, page: Language): { text: string; language: Language | null }[] {
  const parts: { text: string; language: Language | null }[] = [];
  for (const sentence of sentences(text)) {
    const words = sentence.toLowerCase().match(/\p{L}+/gu) ?? [];
    const others = (Object.keys(small) as Language[]).filter((one) => one !== page && count(words, one) > 0);
    const language = count(words, page) === 0 && others.length === 1 ? others[0]! : null;
    const last = parts.at(-1);
    if (last?.language === language) last.text += sentence;
    else parts.push({ text: sentence, language });
  }
  return parts;
}
