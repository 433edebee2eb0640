import type { ScreenTexts } from '../en/screens-en.ts';

/** In German. Parts that every screen uses. */
export const partsDe: ScreenTexts['parts'] = {
  close: 'Schließen',
  thisFieldHoldsCharacters: (maxlength, over) =>
    `Dieses Feld fasst ${maxlength} Zeichen. Die letzten ${over} kamen nicht hinein; sie stehen noch in dem Text, den Sie kopiert haben. Setzen Sie sie in ein anderes Feld.`,
  boxToFitBy: (width, height) => `Rahmen, ${width} mal ${height} Pixel`,
  acrossPx: 'Quer, px',
  downPx: 'Hoch, px',
  how: 'wie',
  newPassphrase: 'Neue Passphrase',
  atLeast12Characters: 'Ab 12 Zeichen; vier Wörter ohne Zusammenhang.',
  again: (label) => `${label}, noch einmal`,
  typingErrorWouldLock: 'Ein Tippfehler würde Sie aussperren.',
  strength: (words) => `Stärke: ${words}`,
  thisIsNotNumber: 'Das ist keine Zahl. Sie wurde nicht gespeichert; tippen Sie nur Ziffern.',
  thisMustLieBetween: (min, max, value) =>
    `Der Wert muss zwischen ${min} und ${max}${value} liegen. Er wurde nicht gespeichert; prüfen Sie ihn.`,
  tooShortAddMore: 'zu kurz; nehmen Sie mehr Wörter',
  fairLongerIsBetter: 'mittel; länger ist besser',
  veryGood: 'sehr gut',
  twoPassphrasesDifferNothing:
    'Die beiden Passphrasen sind verschieden. Nichts wurde geändert. Tippen Sie sie noch einmal.',
  good: 'gut',
  sources: {
    published: 'Literatur',
    'published-from-memory': 'veröffentlicht, aus dem Gedächtnis zitiert',
    'common-practice': 'übliche Praxis, ohne Quelle',
    'from-memory': 'aus dem Gedächtnis',
    computed: 'hier berechnet',
    clinic: 'diese Praxis',
  },
};
