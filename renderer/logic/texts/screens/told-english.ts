/** What logic tells where the output is English by contract: commands, exports, stored lines, tests. */
import { screensEn } from './en/screens-en.ts';

export const toldEnglish = screensEn.told;
