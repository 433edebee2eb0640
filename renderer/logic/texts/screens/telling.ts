/** What logic tells with: sentences of a language, and numbers as its region writes them. */
import { type Decimals, decimalsIn } from '../decimals.ts';
import type { Told } from './en/screens-en.ts';
import { toldEnglish } from './told-english.ts';

export interface Telling {
  told: Told;
  decimals: Decimals;
}

/** For commands, exports, stored lines and tests. */
export const englishTelling: Telling = { told: toldEnglish, decimals: decimalsIn('en') };
