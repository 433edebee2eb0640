import { eachText, withWholePercents } from '../../../logic/texts/screens/each-text.ts';
import { lengthened } from '../../../logic/texts/screens/lengthened.ts';
import { screensEn } from '../../../logic/texts/screens/en/screens-en.ts';
import type { Spoken } from './spoken.ts';

/** The rule table and the contract are in English themselves. */
export const spokenEn: Spoken = {
  screens: eachText(screensEn, withWholePercents),
  table: (english) => english,
  refusal: null,
};

/** Longer words, for tests of what they clip. */
export const spokenLong = (): Spoken => ({ ...spokenEn, screens: lengthened(screensEn) });
