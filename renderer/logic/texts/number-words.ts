/** Whole numbers in words, as they stand on a check. */

const english = {
  small: [
    ...['zero', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten', 'eleven', 'twelve'],
    ...['thirteen', 'fourteen', 'fifteen', 'sixteen', 'seventeen', 'eighteen', 'nineteen'],
  ],
  tens: ['', '', 'twenty', 'thirty', 'forty', 'fifty', 'sixty', 'seventy', 'eighty', 'ninety'],
};
const spanish = {
  small: [
    ...['cero', 'uno', 'dos', 'tres', 'cuatro', 'cinco', 'seis', 'siete', 'ocho', 'nueve', 'diez', 'once', 'doce'],
    ...['trece', 'catorce', 'quince', 'dieciséis', 'diecisiete', 'dieciocho', 'diecinueve', 'veinte', 'veintiuno'],
    ...['veintidós', 'veintitrés', 'veinticuatro', 'veinticinco', 'veintiséis', 'veintisiete', 'veintiocho'],
    'veintinueve',
  ],
  tens: ['', '', '', 'treinta', 'cuarenta', 'cincuenta', 'sesenta', 'setenta', 'ochenta', 'noventa'],
  hundreds: [
    ...['', 'ciento', 'doscientos', 'trescientos', 'cuatrocientos', 'quinientos', 'seiscientos', 'setecientos'],
    ...['ochocientos', 'novecientos'],
  ],
};

const german = {
  small: [
    ...['null', 'ein', 'zwei', 'drei', 'vier', 'fünf', 'sechs', 'sieben', 'acht', 'neun', 'zehn', 'elf', 'zwölf'],
    ...['dreizehn', 'vierzehn', 'fünfzehn', 'sechzehn', 'siebzehn', 'achtzehn', 'neunzehn'],
  ],
  tens: ['', '', 'zwanzig', 'dreißig', 'vierzig', 'fünfzig', 'sechzig', 'siebzig', 'achtzig', 'neunzig'],
};

function englishWords(value: number): string {
  if (value < 20) return english.small[value]!;
  if (value < 100)
    return [english.tens[Math.floor(value / 10)], value % 10 ? english.small[value % 10] : '']
      .filter(Boolean)
      .join('-');
  const rest = value % 100;
  return `${english.small[Math.floor(value / 100)]} hundred${rest ? ` ${englishWords(rest)}` : ''}`;
}

function inSpanish(value: number): string {
  if (value < 30) return spanish.small[value]!;
  if (value < 100)
    return [spanish.tens[Math.floor(value / 10)], value % 10 ? spanish.small[value % 10] : '']
      .filter(Boolean)
      .join(' y ');
  if (value === 100) return 'cien';
  const rest = value % 100;
  return `${spanish.hundreds[Math.floor(value / 100)]}${rest ? ` ${inSpanish(rest)}` : ''}`;
}

/** "eins" only at the end of a number: einhundertzwei, hunderteins. */
function inGerman(value: number): string {
  const under100 = (rest: number): string => {
    if (rest < 20) return german.small[rest]!;
    return [rest % 10 ? `${german.small[rest % 10]}und` : '', german.tens[Math.floor(rest / 10)]].join('');
  };
  const [hundreds, rest] = [Math.floor(value / 100), value % 100];
  const words = `${hundreds ? `${german.small[hundreds]}hundert` : ''}${rest || !hundreds ? under100(rest) : ''}`;
  return rest === 1 ? `${words}s` : words;
}

/** @throws RangeError outside whole 0 to 999 */
export function numberWords(value: number, language: string): string {
  if (!Number.isInteger(value) || value < 0 || value > 999) throw new RangeError('Whole numbers from 0 to 999 only.');
  if (language.startsWith('de')) return inGerman(value);
  return language.startsWith('es') ? inSpanish(value) : englishWords(value);
}
