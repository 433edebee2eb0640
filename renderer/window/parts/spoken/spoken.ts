/** A language of the screens, as it is fetched: all that the window says in it. */
import type { MessageCode } from '../../../../electron/contract/messages.ts';
import { eachText, withWholePercents } from '../../../logic/texts/screens/each-text.ts';
import { retold } from '../../../logic/texts/retold.ts';
import type { ScreenTexts } from '../../../logic/texts/screens/en/screens-en.ts';
import { type Refusals, refusalIn } from '../../../logic/texts/screens/refusals.ts';
import { toldEnglish } from '../../../logic/texts/screens/told-english.ts';
import { tableWordsIn, type TableWords } from '../../../logic/texts/table-words.ts';

export interface Spoken {
  screens: ScreenTexts;
  /** A text of the rule table, or a sentence that is kept in English. */
  table: TableWords;
  /** What cannot be done; null = the contract's own sentence is of this language. */
  refusal: ((code: MessageCode, detail: string | undefined) => string) | null;
}

/** @param rows, printed words of the rule table by their English, on screens and on printed pages */
export function spoken(
  screens: ScreenTexts,
  refusals: Refusals,
  rows: Parameters<typeof tableWordsIn>[0],
  printed: Parameters<typeof tableWordsIn>[1],
): Spoken {
  const { told } = screens;
  const table = retold(
    { ...toldEnglish.draft, ...toldEnglish.printed, ...toldEnglish.ruleChecks },
    { ...told.draft, ...told.printed, ...told.ruleChecks },
    tableWordsIn(rows, printed),
  );
  return {
    screens: eachText(screens, withWholePercents),
    table,
    refusal: (code, detail) => refusalIn(refusals, code, detail, table),
  };
}
