/** What every shipped text is called, whatever its words: `item.<code>.title`, `caution.<code>`, `dose.how.<code>`. */
import type { RuleTable } from '../../../db/types/rules.ts';
import { doseHows } from './dose-hows.ts';

export type TextKey =
  | `item.${string}.${'title' | 'text'}`
  | `item.${string}.${'version' | 'addition'}.${string}`
  | `caution.${string}`
  | `dose.how.${string}`
  | 'phrase.letters-on-sheet';

export const titleKey = (item: string): TextKey => `item.${item}.title`;
export const cautionKey = (code: string): TextKey => `caution.${code}`;
export const howKey = (code: string): TextKey => `dose.how.${code}`;

/** Stands for the client's own letters where none are known. */
export const lettersOnSheet = 'those on your sheet';

/** Key of an item's own words, or of the version that fits. */
export const textKey = (item: string, version: string | null): TextKey =>
  version === null ? `item.${item}.text` : `item.${item}.version.${version}`;

export const additionKey = (item: string, addition: string): TextKey => `item.${item}.addition.${addition}`;

/** The English of every key, with the clinic's own words where it has changed a row. */
export function englishTexts(rules: Pick<RuleTable, 'items' | 'cautionTexts'>): Map<TextKey, string> {
  const texts = new Map<TextKey, string>([['phrase.letters-on-sheet', lettersOnSheet]]);
  for (const { code, title, text, versions, additions } of rules.items) {
    texts.set(titleKey(code), title).set(textKey(code, null), text);
    for (const each of versions) texts.set(textKey(code, each.code), each.text);
    for (const each of additions) texts.set(additionKey(code, each.code), each.text);
  }
  for (const { code, text } of rules.cautionTexts) texts.set(cautionKey(code), text);
  for (const [code, text] of Object.entries(doseHows)) texts.set(howKey(code), text);
  return texts;
}
