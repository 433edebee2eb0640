/** Kinds of page that can be made, and what a new one starts with. */
import type { PageDraft, PageKind, PageWords } from '../../../../db/types/page.ts';
import type { SheetName } from '../practice/sheet-sizes.ts';
import type { Told } from '../../texts/screens/en/screens-en.ts';
import { toldEnglish } from '../../texts/screens/told-english.ts';

export const pageKinds: readonly { kind: PageKind; label: string; hint: string }[] = pageKindsIn(toldEnglish.paper);

/** The same in the words of a language. */
export function pageKindsIn({ kinds }: Told['paper']): { kind: PageKind; label: string; hint: string }[] {
  return Object.entries(kinds).map(([kind, [label, hint]]) => ({ kind: kind as PageKind, label, hint }));
}

export const emptyWords = (): PageWords => ({
  family: { when: '', bring: '', ownWords: '' },
  letter: { to: '', question: '', opinion: '', falls: '', lastInjection: '' },
  report: { from: '', skilled: '', plan: '', coSign: false },
  referral: { to: '', lastWell: '', ownWords: '' },
  programWords: '',
});

/** What a visit's pages start with: hours and what to bring stay from visit to visit, everything else is said anew. */
export function startingWords(drafts: readonly PageDraft[]): PageWords {
  const last = [...drafts].sort((a, b) => a.at.localeCompare(b.at)).at(-1)?.words.family;
  const words = emptyWords();
  return last ? { ...words, family: { ...words.family, when: last.when, bring: last.bring } } : words;
}

/** Letter size where it is the common paper (North America, parts of Latin America, the Philippines), else A4. */
export function usualSheet(locale: string): SheetName {
  const region = new Intl.Locale(locale).maximize().region ?? '';
  return ['US', 'CA', 'MX', 'CL', 'CO', 'VE', 'GT', 'CR', 'PA', 'DO', 'PR', 'PH'].includes(region) ? 'Letter' : 'A4';
}
