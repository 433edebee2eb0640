/** A written or read word after normalising, with the spellings that count as the same word. */
export interface Word {
  text: string;
  /** Other forms that a reader may type for it, for example with the question mark that ends the sentence. */
  also: readonly string[];
}

const APOSTROPHES = /['\u2018\u2019\u201b\u02bc\u00b4`\u2032]/gu;
const HYPHENS = /[\u2010\u2011\u2012\u2013\u2212]/gu;
const CURRENCY = '$\u00a2\u00a3\u20ac\u00a5';

/**
 * Words of a text as they are compared: lower case, single spaces, apostrophes dropped, hyphens kept, other
 * punctuation dropped; digits and amounts keep their points, commas, slashes, colons and signs, so that 2.5 is
 * not 25. An ampersand is read as "and".
 * @param keepQuestionMarks true for what a reader typed, where each '?' stands for a letter that could not be read
 */
export function words(text: string, keepQuestionMarks = false): Word[] {
  return text
    .normalize('NFC')
    .toLowerCase()
    .replace(APOSTROPHES, '')
    .replace(HYPHENS, '-')
    .replace(new RegExp(`([${CURRENCY}])\\s+(?=\\d)`, 'gu'), '$1')
    .replace(new RegExp(`(\\d)\\s+(?=[${CURRENCY}%](\\s|$))`, 'gu'), '$1')
    .replace(/&/gu, ' and ')
    .split(/\s+/u)
    .flatMap((token) => wordsOfToken(token, keepQuestionMarks));
}

/** The words joined again by single spaces: the string that letters are compared on. */
export function normalise(text: string, keepQuestionMarks = false): string {
  return words(text, keepQuestionMarks)
    .map((word) => word.text)
    .join(' ');
}

function wordsOfToken(token: string, keepQuestionMarks: boolean): Word[] {
  let kept = '';
  for (let i = 0; i < token.length; i++) {
    kept += keep(token[i]!, token[i - 1] ?? '', token[i + 1] ?? '', token[i - 2] ?? '', keepQuestionMarks);
  }
  const asked = !keepQuestionMarks && /\?[^\p{L}\p{N}]*$/u.test(token);
  const parts = kept
    .split(' ')
    .map((part) => part.replace(/^-+(?!\d)/u, '').replace(/-+$/u, ''))
    .filter((part) => /[\p{L}\p{N}?]/u.test(part));
  return parts.map((part, i) => ({ text: part, also: asked && i === parts.length - 1 ? [`${part}?`] : [] }));
}

/** What becomes of one character: itself, nothing, or a space where it parts two words. */
function keep(here: string, before: string, after: string, beforeThat: string, questionMarks: boolean): string {
  if (/[\p{L}\p{M}\p{N}-]/u.test(here) || /[\ud800-\udfff]/.test(here)) return here;
  if (here === '?') return questionMarks ? here : '';
  const digit = (character: string) => /\p{Nd}/u.test(character) || (questionMarks && character === '?');
  if (digit(after) && (digit(before) || before === '' || CURRENCY.includes(before))) {
    if ('.,:/'.includes(here) || (here === '+' && before === '')) return here;
  }
  if (CURRENCY.includes(here) && (digit(after) || digit(before) || after === '.')) return here;
  if (here === '%' && digit(before)) return here;
  const letter = (character: string) => /\p{L}/u.test(character);
  // p.m. is one word, "end.Next" two.
  if (here === '.' && letter(before) && letter(after) && !letter(beforeThat)) return '';
  return letter(before) && letter(after) ? ' ' : '';
}
