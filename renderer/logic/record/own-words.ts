/** The client's own words as they are typed: separated by commas or on lines of their own. */
import type { OwnWord, OwnWordKind } from '../../../db/types/occasions.ts';

const most = 20;

/** Words of one kind as one text to edit. Phrases stand on lines of their own: they may hold commas. */
export const wordsText = (words: readonly OwnWord[], kind: OwnWordKind): string =>
  words
    .filter((word) => word.kind === kind)
    .map((word) => word.text)
    .join(kind === 'phrase' ? '\n' : ', ');

/** The words with those of one kind typed anew; each once, at most twenty of a kind. */
export function withWords(words: readonly OwnWord[], kind: OwnWordKind, typed: string): OwnWord[] {
  const texts = typed
    .split(kind === 'phrase' ? /\n+/ : /[\n,;]+/)
    .map((text) => text.replace(/\s+/g, ' ').trim().slice(0, 120))
    .filter(Boolean);
  const once = texts.filter((text, i) => texts.findIndex((other) => other.toLowerCase() === text.toLowerCase()) === i);
  return [...words.filter((word) => word.kind !== kind), ...once.slice(0, most).map((text) => ({ kind, text }))];
}
