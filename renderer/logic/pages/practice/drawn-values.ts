/** Dates, times, amounts and numbers that are drawn anew for each practice line, so that no page is written by heart. */
import { languageOf } from '../../texts/known-languages.ts';
import type { Language } from '../../texts/languages.ts';
import { numberWords } from '../../texts/number-words.ts';
import type { Choice } from '../../sample/seeded-choice.ts';

const two = (value: number): string => String(value).padStart(2, '0');
const digits = (count: number, choice: Choice): string =>
  Array.from({ length: count }, (_, i) => (i === 0 ? 1 + choice.below(9) : choice.below(10))).join('');

const monthDays = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

/** How a language writes what is drawn: the decimal sign, cents in words, a day in digits and in words. */
interface Writing {
  decimal: string;
  cents: string;
  digitsDate: (day: string, month: string) => string;
  date: (day: number, monthName: string) => string;
}
const writings: Readonly<Record<Language, Writing>> = {
  en: {
    decimal: '.',
    cents: 'and',
    digitsDate: (day, month) => `${month}/${day}`,
    date: (day, name) => `${name} ${day}`,
  },
  es: {
    decimal: ',',
    cents: 'con',
    digitsDate: (day, month) => `${day}/${month}`,
    date: (day, name) => `${day} de ${name}`,
  },
  de: {
    decimal: ',',
    cents: 'und',
    digitsDate: (day, month) => `${day}.${month}.`,
    date: (day, name) => `${day}. ${name}`,
  },
};

/** A sum in numbers and the same sum in words. */
export function drawnSum(language: string, choice: Choice): { digits: string; words: string } {
  const { decimal, cents } = writings[languageOf(language)];
  const whole = 2 + choice.below(197);
  const rest = two(5 * choice.below(20));
  return { digits: `${whole}${decimal}${rest}`, words: `${numberWords(whole, language)} ${cents} ${rest}/100` };
}

/** Value of a slot that is drawn; null = the slot is none of these. Telephone numbers begin with 555: nobody's. */
export function drawnValue(slot: string, language: string, choice: Choice): string | null {
  const writing = writings[languageOf(language)];
  const month = choice.below(12);
  const day = 1 + choice.below(monthDays[month]!);
  const whole = 2 + choice.below(197);
  const cents = two(5 * choice.below(20));
  switch (slot) {
    case 'hour':
      return `${1 + choice.below(12)}:${two(5 * choice.below(12))}`;
    case 'phone':
      return `555 ${digits(4, choice)}`;
    case 'three':
      return digits(3, choice);
    case 'five':
      return digits(5, choice);
    case 'amount':
      return `${whole}${writing.decimal}${cents}`;
    case 'amount-words':
      return `${numberWords(whole, language)} ${writing.cents} ${cents}/100`;
    case 'digits-date':
      return writing.digitsDate(two(day), two(month + 1));
    case 'date': {
      const name = new Intl.DateTimeFormat(languageOf(language), { month: 'long', timeZone: 'UTC' }).format(
        new Date(Date.UTC(2026, month, 1)),
      );
      return writing.date(day, name);
    }
    default:
      return null;
  }
}
