import type { ScreenTexts } from '../en/screens-en.ts';

/** In Spanish. Parts that every screen uses. */
export const partsEs: ScreenTexts['parts'] = {
  close: 'Cerrar',
  thisFieldHoldsCharacters: (maxlength, over) =>
    `En este campo caben ${maxlength} caracteres. Los últimos ${over} no entraron; siguen en el texto que copió. Póngalos en otro campo.`,
  boxToFitBy: (width, height) => `Recuadro, ${width} por ${height} píxeles`,
  acrossPx: 'Ancho, px',
  downPx: 'Alto, px',
  how: 'cómo',
  newPassphrase: 'Nueva frase de acceso',
  atLeast12Characters: '12 caracteres o más; cuatro palabras sueltas.',
  again: (label) => `${label}, otra vez`,
  typingErrorWouldLock: 'Un error al teclear le dejaría fuera.',
  strength: (words) => `Fuerza: ${words}`,
  thisIsNotNumber: 'Esto no es un número. No se guardó; escriba solo cifras.',
  thisMustLieBetween: (min, max, value) => `Debe estar entre ${min} y ${max}${value}. No se guardó; revíselo.`,
  tooShortAddMore: 'demasiado corta; añada palabras',
  fairLongerIsBetter: 'regular; más larga es mejor',
  veryGood: 'muy buena',
  twoPassphrasesDifferNothing: 'Las dos frases de acceso no son iguales. No se cambió nada. Escríbalas otra vez.',
  good: 'buena',
  sources: {
    published: 'publicado',
    'published-from-memory': 'publicado, citado de memoria',
    'common-practice': 'práctica común, sin fuente',
    'from-memory': 'de memoria',
    computed: 'calculado aquí',
    clinic: 'esta clínica',
  },
};
