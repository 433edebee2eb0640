import { lengthened } from '../../../logic/texts/screens/lengthened.ts';
import { screensEn } from '../../../logic/texts/screens/en/screens-en.ts';
import type { Spoken } from './spoken.ts';

/** The rule table and the contract are in English themselves. */
export const spokenEn: Spoken = { screens: screensEn, table: (english) => english, refusal: null };

/** Longer words, for tests of what they clip. */
export const spokenLong = (): Spoken => ({ ...spokenEn, screens: lengthened(screensEn) });
