import type { Told } from '../../en/screens-en.ts';

/** In German. Words read and fatigue over time: series, marks, rows, notes and the numbers behind a verdict. */
export const courseDe: Told['course'] = {
  readers: { unfamiliar: 'fremde Person', family: 'aus der Familie', therapist: 'Therapie, kennt den Text' },
  manyReaders: {
    unfamiliar: (n) => `${n} fremde Personen`,
    family: (n) => `${n} aus der Familie`,
    therapist: (n) => `${n} aus der Therapie, kennen den Text`,
  },
  notBlind: (readers) => `${readers}, mit Vorwissen`,
  wordsAndReaders: (right, words, readers) => `${right} von ${words} Wörtern, ${readers}`,
  wordsReadBy: {
    unfamiliar: 'Gelesene Wörter, fremde Person',
    family: 'Gelesene Wörter, Familie',
    therapist: 'Gelesene Wörter, Therapie, kennt den Text',
    probe: 'Gelesene Wörter, blankes Papier ohne Hilfe',
  },
  fatigue: {
    before: ['Müdigkeit vor dem Schreiben, Termin', (value) => `Müdigkeit vorher ${value} von 10`],
    after: ['Müdigkeit nach dem Schreiben, Termin', (value) => `Müdigkeit nachher ${value} von 10`],
    homeBefore: ['Müdigkeit vor dem Üben, Protokoll', (value) => `zu Hause, Müdigkeit vorher ${value} von 10`],
    homeAfter: ['Müdigkeit nach dem Üben, Protokoll', (value) => `zu Hause, Müdigkeit nachher ${value} von 10`],
  },
  goal: (percent, output) => `Ziel: ${percent} % der Wörter, ${output}`,
  programStarts: (tier) => `Programm beginnt, Stufe ${tier}`,
  programChanged: (tier) => `Programm geändert, Stufe ${tier}`,
  otherConditions: (names) => `Anders: ${names}`,
  /** Dates below the chart, as date-fns writes them. */
  axis: { day: 'd. MMM', month: 'MMM yyyy' },
  changes: (n) => `${n} Änderungen`,
  noSample: 'Noch keine Schriftprobe. Nehmen Sie an einem Termin eine, dann steht sie hier.',
  noneInSpan: 'In diesem Zeitraum liegt keine Schriftprobe. Wählen Sie einen längeren.',
  unread: (n) =>
    n === 1
      ? 'Eine Schriftprobe ist noch nicht gelesen: Ihre Lesbarkeit ist nicht bekannt.'
      : `${n} Schriftproben sind noch nicht gelesen: Ihre Lesbarkeit ist nicht bekannt.`,
  orphans: (n) =>
    n === 1
      ? 'Eine Lesung gehört zu einer Schriftprobe, die entfernt wurde, und zählt nicht.'
      : `${n} Lesungen gehören zu einer Schriftprobe, die entfernt wurde, und zählen nicht.`,
  kindsOfReaders:
    'Verschiedene Arten von Lesenden haben gelesen; verglichen wird nur die Art, die die Schrift am wenigsten kennt.',
  probe: 'Probe ohne Hilfe',
  baseline: 'Schriftprobe der Ausgangslage',
  sample: 'Schriftprobe',
  notRead: 'noch nicht gelesen',
  homePractice: 'Üben zu Hause',
  columns: [
    'Datum',
    'Was',
    'Gelesene Wörter',
    'Geschriebene Wörter',
    'Prozent',
    'Unten (95 %)',
    'Oben (95 %)',
    'Gelesen von',
    'Müdigkeit vorher (0-10)',
    'Müdigkeit nachher (0-10)',
    'Schmerz nachher (0-10)',
    'Minuten',
    'Notiz',
  ],
  spans: {
    all: 'seit Beginn',
    '30': 'der letzte Monat',
    '91': 'die letzten 3 Monate',
    '365': 'das letzte Jahr',
  },
  wordsRead: 'Gelesene Wörter',
  aboutThenNow: (before, now, of) => `etwa ${before} von ${of} Wörtern, jetzt ${now}`,
  ofWords: (right, words) => `${right} von ${words} Wörtern`,
  fatigueAfter: 'Müdigkeit nach dem Schreiben',
  ofTen: 'von 10; 10 heißt so müde wie nur möglich',
  change: (mid, low, high, held, more) =>
    `Änderung am wahrscheinlichsten ${mid} Punkte; mit einer Wahrscheinlichkeit von ${held} % zwischen ${low} und ${high}. Wahrscheinlichkeit für mehr als vorher: ${more} %.`,
  numbers: {
    range: (mid, low, high) => `${mid} Punkte (${low} bis ${high} Punkte)`,
    moreThan: (percent) => `mehr als ${percent} %`,
    lessThan: (percent) => `weniger als ${percent} %`,
    level: 'Vorher und jetzt',
    levelHow: (before, now, decay) =>
      `Niveau hinter ${before} und ${now} Terminen, Prozent der Wörter; ein späterer Termin zählt mehr (${decay} für jeden Termin danach)`,
    change: 'Änderung',
    changeHow: (held) => `das Intervall enthält die wahre Änderung mit einer Wahrscheinlichkeit von ${held} %`,
    chance: 'Wahrscheinlichkeit für mehr, für weniger',
    chanceHow: (sure, leaning) => `„ja“ heißt es ab ${sure} %, „wahrscheinlich“ ab ${leaning} %`,
    steady: (points) => `Wahrscheinlichkeit für eine Änderung unter ${points} Punkten`,
    steadyHow: (chance) => `„etwa gleich“ heißt es ab ${chance} %`,
    spread: 'Von Tag zu Tag',
    spreadHow:
      'Standardabweichung zwischen Terminen, Logit des Anteils der Wörter; aus diesem Klienten und den Wiederholungspaaren der Praxis',
    smallest: 'Kleinste Änderung, die zählt',
    smallestValue: (mdc, callable) => `${mdc} Punkte; ${callable} Punkte werden bei 8 von 10 Klienten erkannt`,
    smallestHow: (words) =>
      `bei so vielen Terminen mit ${words} Wörtern; längere Texte und mehr Termine machen sie kleiner`,
    method: 'Methode',
    methodHow: 'ihre Fehlerraten wurden simuliert: siehe Anleitung',
  },
};
