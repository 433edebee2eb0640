/** What is told outside the window, in the language of the screens; before a caseload is open in the system's. */
import { languageOf } from '../renderer/logic/texts/known-languages.ts';
import type { Language } from '../renderer/logic/texts/languages.ts';
import type { Told } from '../renderer/logic/texts/screens/en/screens-en.ts';
import { screensIn } from '../renderer/logic/texts/screens/screen-languages.ts';
import { usualPreferences } from '../renderer/logic/caseload/usual-preferences.ts';

/** @param chosen in Settings: a language, or 'system' */
export function shownIn(chosen: string): Language {
  const system = Intl.DateTimeFormat().resolvedOptions().locale;
  return languageOf(chosen === 'system' || chosen === 'long' ? system : chosen);
}

export const toldIn = (chosen: string): Told => screensIn(shownIn(chosen)).told;

export const systemTold = (): Told => toldIn(usualPreferences.language);
