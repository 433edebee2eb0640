import type { PageKind } from '../../../../db/types/page.ts';
import { type PageInput, programOf } from './page-facts.ts';
import { type Speaker } from '../../texts/said-line.ts';
import { toldEnglish } from '../../texts/screens/told-english.ts';

/** What prints in English on a page of another language, and why. */
export function leftInEnglish(kind: PageKind, input: PageInput, speaker: Speaker, name: string): string[] {
  const warnings: string[] = [];
  const left = [...speaker.english];
  const said = (why: string): void => {
    const shown = left.slice(0, 3).map((words) => `“${words}”`);
    const more = left.length > 3 ? ` +${left.length - 3}` : '';
    warnings.push(toldEnglish.printed.printsEnglish(why, `${shown.join(', ')}${more}`));
  };
  const reasons = new Set(speaker.untold.values());
  if (reasons.has('changed')) said(toldEnglish.printed.changedAfter(name));
  else if (reasons.has('missing')) said(toldEnglish.printed.noWordsFor(name));
  const lines = programOf(input)?.lines ?? [];
  if (kind === 'home-program' && lines.some((line) => line.text.trim() && speaker.line(line).text === line.text))
    warnings.push(toldEnglish.printed.howInEnglish);
  return warnings;
}
