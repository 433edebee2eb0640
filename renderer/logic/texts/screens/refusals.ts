/** What cannot be done, by its code, in other languages than English: the contract has the English sentences. */
import type { MessageCode } from '../../../../electron/contract/messages.ts';
import { INK_REFUSALS, type InkRefusalCode } from '../../../ink/index.ts';

export interface Refusals {
  sentences: Readonly<Record<MessageCode, string>>;
  ink: Readonly<Record<InkRefusalCode, string>>;
  /** In place of a short fact that was not given. */
  seeTheEntry: string;
}

/**
 * What cannot be done, as a sentence of another language than English.
 * @param detail a short fact, or the engine's English sentence on an ink file
 * @param inTable a text of the rule table in that language
 */
export function refusalIn(
  { sentences, ink, seeTheEntry }: Refusals,
  code: MessageCode,
  detail: string | undefined,
  inTable: (english: string) => string,
): string {
  const known = (Object.keys(INK_REFUSALS) as InkRefusalCode[]).find((each) => INK_REFUSALS[each] === detail);
  const fact = detail === undefined ? seeTheEntry : known ? ink[known] : inTable(detail);
  return sentences[code].replace('{detail}', fact);
}
