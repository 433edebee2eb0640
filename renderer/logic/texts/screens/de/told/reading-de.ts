import type { Told } from '../../en/screens-en.ts';

/** In German. Read back: what waits, who knows a text, how far two readers agree, own spellings. */
export const readingDe: Told['reading'] = {
  linesWaiting: (n) =>
    n === 0 ? 'Keine Zeilen warten darauf, gelesen zu werden.' : n === 1 ? '1 Zeile wartet' : `${n} Zeilen warten`,
  wordsRead: (right, words, percent) => `${right} von ${words} Wörtern gelesen (${percent})`,
  of: (right, words) => `${right} von ${words}`,
  baseline: 'Ausgangslage',
  readersAgree: (same, words) =>
    `Die beiden Lesenden sind sich einig: gleiche Antwort bei ${same} von ${words} Wörtern.`,
  readersDiffer: (same, words) =>
    `Die beiden Lesenden sind sich nicht einig; eine dritte Lesung würde helfen: gleiche Antwort bei ${same} von ${words} Wörtern.`,
  textKnown: (samples, times, day) =>
    `Diese Person kennt ${samples === 1 ? 'den Text einer wartenden Schriftprobe' : `die Texte von ${samples} wartenden Schriftproben`}: ${times === 1 ? 'einmal gesehen' : `bis zu ${times}-mal gesehen`}, zuletzt am ${day}.`,
  takenByReader: (n) =>
    n === 1 ? 'Eine davon hat diese Person selbst genommen.' : `${n} davon hat diese Person selbst genommen.`,
  sameTextTwice: 'Einige wartende Schriftproben haben denselben Text: Die zweite wird mit der ersten im Kopf gelesen.',
  whoKnowsReadsMore:
    'Wer einen Text kennt, liest mehr, als geschrieben steht. Bitten Sie, wenn möglich, eine andere Person; bei jeder Lesung wird festgehalten, wie oft.',
  spelling: {
    bothWords: 'Tippen Sie beide Wörter: das gemeinte und wie der Klient es schreibt. Nichts wurde notiert.',
    oneWord:
      'Ein Wort auf jeder Seite: Eine verlorene Lücke zählt als Lücke, nicht als Schreibweise. Nichts wurde notiert.',
    same: 'Beides ist dasselbe Wort. Nichts wurde notiert.',
    known: 'Diese Schreibweise ist schon notiert.',
    most: (n) => `Für eine Schriftprobe lassen sich höchstens ${n} Schreibweisen notieren. Nichts wurde notiert.`,
    notInText:
      'Keines der Wörter steht im Text dieser Schriftprobe. Prüfen Sie den Text unter „Schriftprobe“. Nichts wurde notiert.',
  },
  sizeUnknown: 'in unbekannter Größe',
  trueSize: 'in wahrer Größe',
  timesAsLarge: (times) => `${times}-mal so groß wie geschrieben`,
};
