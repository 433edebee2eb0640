/** Kinds of page that can be made, and what a new one starts with. */
import type { PageDraft, PageKind, PageWords } from '../../../../db/types/page.ts';
import type { SheetName } from '../practice/sheet-sizes.ts';

export const pageKinds: readonly { kind: PageKind; label: string; hint: string }[] = [
  { kind: 'family-summary', label: 'Family summary', hint: 'one page, plain words' },
  { kind: 'home-program', label: 'Home program', hint: 'with log and check card' },
  { kind: 'practice-pages', label: 'Practice pages', hint: 'true to scale' },
  { kind: 'spiral-sheet', label: 'Spiral sheet', hint: 'to draw on, true to scale' },
  { kind: 'caregiver', label: 'Page for the helper', hint: 'one cue, then less' },
  { kind: 'initial-evaluation', label: 'Initial evaluation', hint: 'first visit, with the screen' },
  { kind: 'visit-note', label: 'Visit note', hint: 'text to copy' },
  { kind: 'progress-report', label: 'Progress report', hint: 'for the payer' },
  { kind: 'letter', label: 'Letter', hint: 'to a referrer' },
  { kind: 'referral', label: 'Referral', hint: 'after a red flag' },
  { kind: 'discharge', label: 'Discharge summary', hint: 'with a plan to keep it up' },
];

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
