import { toldEnglish } from '../texts/screens/told-english.ts';

/** Usual reasons why an item was not tested, as they are stored; the therapist may write another. */
export const notTestedReasons: readonly string[] = Object.keys(toldEnglish.findings.reasons);
