import type { PageKind } from '../../../../db/types/page.ts';
import { type PageInput, programOf } from './page-facts.ts';
import { type Speaker } from '../../texts/said-line.ts';

/** What prints in English on a page of another language, and why. */
export function leftInEnglish(kind: PageKind, input: PageInput, speaker: Speaker, name: string): string[] {
  const warnings: string[] = [];
  const left = [...speaker.english];
  const said = (why: string): void => {
    const shown = left.slice(0, 3).map((words) => `“${words}”`);
    const more = left.length > 3 ? ` and ${left.length - 3} more` : '';
    warnings.push(`In English, because ${why}: ${shown.join(', ')}${more}.`);
  };
  const reasons = new Set(speaker.untold.values());
  if (reasons.has('changed')) said(`the words were changed after the ${name} was written`);
  else if (reasons.has('missing')) said(`Fairhand has no ${name} for it`);
  const lines = programOf(input)?.lines ?? [];
  if (kind === 'home-program' && lines.some((line) => line.text.trim() && speaker.line(line).text === line.text))
    warnings.push('How each line is done prints in English where its words did not come with Fairhand.');
  return warnings;
}
