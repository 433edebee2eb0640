/** Dates, times, amounts and numbers that are drawn anew for each practice line, so that no page is written by heart. */
import { numberWords } from '../../texts/number-words.ts';
import type { Choice } from '../../sample/seeded-choice.ts';

const two = (value: number): string => String(value).padStart(2, '0');
const digits = (count: number, choice: Choice): string =>
  Array.from({ length: count }, (_, i) => (i === 0 ? 1 + choice.below(9) : choice.below(10))).join('');

const monthDays = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

/** A sum in numbers and the same sum in words. */
export function drawnSum(language: string, choice: Choice): { digits: string; words: string } {
  const spanish = language.startsWith('es');
  const whole = 2 + choice.below(197);
  const cents = two(5 * choice.below(20));
  return {
    digits: `${whole}${spanish ? ',' : '.'}${cents}`,
    words: `${numberWords(whole, language)} ${spanish ? 'con' : 'and'} ${cents}/100`,
  };
}

/** Value of a slot that is drawn; null = the slot is none of these. Telephone numbers begin with 555: nobody's. */
export function drawnValue(slot: string, language: string, choice: Choice): string | null {
  const spanish = language.startsWith('es');
  const month = choice.below(12);
  const day = 1 + choice.below(monthDays[month]!);
  const whole = 2 + choice.below(197);
  const cents = 5 * choice.below(20);
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
      return `${whole}${spanish ? ',' : '.'}${two(cents)}`;
    case 'amount-words':
      return `${numberWords(whole, language)} ${spanish ? 'con' : 'and'} ${two(cents)}/100`;
    case 'digits-date':
      return spanish ? `${two(day)}/${two(month + 1)}` : `${two(month + 1)}/${two(day)}`;
    case 'date': {
      const name = new Intl.DateTimeFormat(spanish ? 'es' : 'en', { month: 'long', timeZone: 'UTC' }).format(
        new Date(Date.UTC(2026, month, 1)),
      );
      return spanish ? `${day} de ${name}` : `${name} ${day}`;
    }
    default:
      return null;
  }
}
