/** Kinds of page that can be made, and what a new one starts with. */
import type { PageKind } from '../../db/types/page.ts';
import type { FamilyOptions } from './family.ts';
import type { LetterOptions } from './letter.ts';
import type { SheetName } from './paper.ts';
import type { ReportOptions } from './progress-report.ts';
import type { ReferralOptions } from './referral.ts';

export const pageKinds: readonly { kind: PageKind; label: string; hint: string }[] = [
  { kind: 'family-summary', label: 'Family summary', hint: 'one page, plain words' },
  { kind: 'home-program', label: 'Home program', hint: 'with log and check card' },
  { kind: 'practice-pages', label: 'Practice pages', hint: 'true to scale' },
  { kind: 'visit-note', label: 'Visit note', hint: 'text to copy' },
  { kind: 'progress-report', label: 'Progress report', hint: 'for the payer' },
  { kind: 'letter', label: 'Letter', hint: 'to a referrer' },
  { kind: 'referral', label: 'Referral', hint: 'after a red flag' },
  { kind: 'discharge', label: 'Discharge summary', hint: 'with a plan to keep it up' },
];

/** Everything the therapist typed or chose for pages that is no fact of the record. */
export interface PageWords {
  family: Omit<FamilyOptions, 'pictures' | 'pt'>;
  letter: Omit<LetterOptions, 'pictures' | 'trueSize'>;
  report: ReportOptions;
  referral: ReferralOptions;
  programWords: string;
}

export const emptyWords = (): PageWords => ({
  family: { when: '', bring: '', ownWords: '' },
  letter: { to: '', question: '', opinion: '', falls: '', lastInjection: '' },
  report: {
    from: '',
    skilled: '',
    plan: '',
    coSign: false,
  },
  referral: { to: '', lastWell: '', ownWords: '' },
  programWords: '',
});

/** Letter size where it is the common paper (North America, parts of Latin America, the Philippines), else A4. */
export function usualSheet(locale: string): SheetName {
  const region = new Intl.Locale(locale).maximize().region ?? '';
  return ['US', 'CA', 'MX', 'CL', 'CO', 'VE', 'GT', 'CR', 'PA', 'DO', 'PR', 'PH'].includes(region) ? 'Letter' : 'A4';
}
