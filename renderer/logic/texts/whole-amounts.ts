/** Amounts that no line end parts: "28 1/4 in (72 cm)", "8.7 mm", "90 %". */
import { withWholePercents } from './screens/each-text.ts';

/** Inches only where no word follows: "in" is one itself. */
const INSIDE = /(?<=\d) (?=(?:mm|cm)(?!\p{L})|\d\/\d|in(?= \(|[.,;:)]|$))/gu;

export const withWholeAmounts = (text: string): string => withWholePercents(text).replace(INSIDE, '\u00a0');

/** The same text as it is kept. */
export const withPlainAmounts = (text: string): string => text.replace(/\u00a0(?=%|mm|cm|in\b|\d\/\d)/g, ' ');
