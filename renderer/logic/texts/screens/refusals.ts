/** What cannot be done, by its code, in other languages than English: the contract has the English sentences. */
import type { MessageCode } from '../../../../electron/contract/messages.ts';
import { INK_REFUSALS, type InkRefusalCode } from '../../../ink/index.ts';
import type { Language } from '../languages.ts';
import { inkRefusalsDe, refusalsDe } from './de/told/refusals-de.ts';
import { inkRefusalsEs, refusalsEs } from './es/told/refusals-es.ts';

interface Refusals {
  sentences: Readonly<Record<MessageCode, string>>;
  ink: Readonly<Record<InkRefusalCode, string>>;
  /** In place of a short fact that was not given. */
  seeTheEntry: string;
}

export const refusalsIn: Readonly<Record<Exclude<Language, 'en'>, Refusals>> = {
  es: { sentences: refusalsEs, ink: inkRefusalsEs, seeTheEntry: 'vea la entrada' },
  de: { sentences: refusalsDe, ink: inkRefusalsDe, seeTheEntry: 'siehe den Eintrag' },
};

/**
 * What cannot be done, as a sentence of another language than English.
 * @param detail a short fact, or the engine's English sentence on an ink file
 * @param inTable a text of the rule table in that language
 */
export function refusalIn(
  language: Exclude<Language, 'en'>,
  code: MessageCode,
  detail: string | undefined,
  inTable: (english: string) => string,
): string {
  const { sentences, ink, seeTheEntry } = refusalsIn[language];
  const known = (Object.keys(INK_REFUSALS) as InkRefusalCode[]).find((each) => INK_REFUSALS[each] === detail);
  const fact = detail === undefined ? seeTheEntry : known ? ink[known] : inTable(detail);
  return sentences[code].replace('{detail}', fact);
}
