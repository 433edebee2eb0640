import type { Told } from '../../en/screens-en.ts';

/** In German. Measures of a page: names, values with their units, ranges, and how they were read. */
export const measuresDe: Told['measures'] = {
  names: {
    'x-height': 'Höhe der kleinen Buchstaben',
    'x-height-cv': 'Ungleichheit der Buchstabenhöhe',
    'ascender-ratio': 'Höhe der Oberlängen',
    'descender-ratio': 'Tiefe der Unterlängen',
    'line-decrement': 'Größenänderung entlang der Zeile, pro Wort',
    'line-decrement-letter': 'Größenänderung entlang der Zeile, pro Buchstabe',
    'first-last-five': 'Größenverlust von den ersten zu den letzten fünf Buchstaben',
    'page-decrement': 'Größenänderung das Blatt hinunter, pro Zeile',
    'baseline-angle': 'Winkel der Zeilen',
    'baseline-rms': 'Welligkeit der Zeilen',
    'ruling-distance': 'Abstand zur gedruckten Linie',
    'word-gap': 'Abstand zwischen Wörtern',
    'word-gap-cv': 'Ungleichheit des Wortabstands',
    'letter-gap': 'Abstand zwischen Buchstaben, die sich nicht berühren',
    'gap-ratio': 'Wortabstand zu Buchstabenabstand',
    'gap-separation': 'Wahrscheinlichkeit, dass ein Wortabstand größer ist als ein Buchstabenabstand',
    'closed-loops': 'Geschlossene Schlaufen',
    closure: 'Geschlossene von den zu schließenden Buchstaben',
    slant: 'Schräge',
    'slant-sd': 'Ungleichheit der Schräge',
    'stroke-width': 'Strichbreite',
    darkness: 'Schwärze der Tinte',
    'margin-drift': 'Wandern des linken Rands, pro Zeile',
  },
  hows: {
    'x-height':
      'Median der Höhe der kleinen Buchstaben über der Grundlinie, mit Strich, jedes Wort nach seinen Buchstaben, Intervall über Wörter',
    'x-height-cv':
      'Standardabweichung durch Mittel aller kleinen Buchstaben, auch der sehr niedrigen und hohen, aus der Streuung von ln(Höhe), Intervall über Wörter',
    'ascender-ratio': 'Median der Höhe der Oberlängen durch die Größe der Zeile dort, Intervall über Wörter',
    'descender-ratio': 'Median der Tiefe der Unterlängen durch die Größe der Zeile dort, Intervall über Wörter',
    'line-decrement':
      'Theil-Sen-Steigung von ln(Höhe) über die Wörter einer Zeile, über die Zeilen zusammengefasst, t-Intervall über die Zeilen',
    'line-decrement-letter':
      'Theil-Sen-Steigung von ln(Höhe) über die Buchstaben einer Zeile, über die Zeilen zusammengefasst, t-Intervall über die Zeilen',
    'first-last-five':
      'mittlere Höhe der ersten fünf kleinen Buchstaben einer Zeile gegen die letzten fünf, Median über Zeilen ab zehn, Intervall über Zeilen',
    'page-decrement': 'Theil-Sen-Steigung über die Zeilen, t-Intervall der kleinsten Quadrate',
    'baseline-angle':
      'Median über Zeilen des Winkels der kleinsten Quadrate durch die Füße, die auf der Linie stehen, Intervall über Zeilen',
    'baseline-rms': 'Median über Zeilen, Intervall über Zeilen',
    'ruling-distance': 'Median über Zeilen des mittleren Abstands, Intervall über Zeilen; nur liniertes Papier',
    'word-gap':
      'Median des freien Raums entlang der Grundlinie durch den Median der Buchstabenhöhe des Blattes, Intervall über Zeilen',
    'word-gap-cv': 'Standardabweichung durch Mittel der Wortabstände, Intervall über Zeilen',
    'letter-gap':
      'Median des freien Raums zwischen unverbundenen Buchstaben durch den Median der Buchstabenhöhe des Blattes, Intervall über Wörter',
    'gap-ratio':
      'Verhältnis der Mediane, Intervall über Zeilen; unbekannt, wo Buchstaben sich berühren oder überlappen',
    'gap-separation':
      'Anteil der Paare aus Wortabstand und Buchstabenabstand, in denen der Wortabstand größer ist, Intervall über Zeilen',
    'closed-loops': 'weiße Flächen, die von der Tinte der Wörter umschlossen sind',
    closure:
      'Buchstaben mit geschlossener Schlaufe durch die Buchstaben des Textes, die sich schließen sollen; braucht den Text',
    slant: 'Median der Schräge der geraden Aufrechtstriche, Intervall über Wörter',
    'slant-sd': 'robuste Standardabweichung (1,4826 MAD) der Schrägen der Striche, Intervall über Wörter',
    'stroke-width': 'unteres Quartil der Breiten der geraden Aufrechtstriche, Intervall über Wörter',
    darkness: 'mittlerer Kontrast der dunkleren Hälfte der Tinte durch die Helligkeit des Papiers',
    'margin-drift': 'Theil-Sen-Steigung über die Zeilen, t-Intervall der kleinsten Quadrate',
  },
  otherNames: {
    'x-height-before': 'Höhe der kleinen Buchstaben vorher',
    'x-height-goal': 'Angestrebte Höhe der kleinen Buchstaben',
    'word-gap-mm': 'Lücken zwischen Wörtern',
    'letter-gap-mm': 'Lücken zwischen Buchstaben',
    'baseline-end-offset-mm': 'Anstieg jeder Zeile über ihre Länge',
  },
  ruled: {
    'x-height': [
      'Höhe der kleinen Buchstaben (a c e m n o …), mm',
      'mindestens 10 Buchstaben, in der Reihenfolge des Schreibens',
    ],
    'word-gap-mm': ['Lücken zwischen Wörtern, mm', 'mindestens 5 Lücken'],
    'letter-gap-mm': ['Lücken zwischen Buchstaben, mm', 'mindestens 10 Lücken; Überlappung ist negativ'],
    'baseline-end-offset-mm': ['Anstieg jeder Zeile über ihre Länge, mm', 'einer pro Zeile; Abfall ist negativ'],
  },
  unknown: 'unbekannt',
  letterHeights: (value) => `${value} × Buchstabenhöhe`,
  ways: { smaller: 'kleiner', larger: 'größer', left: 'nach links', right: 'nach rechts' },
  per: { word: 'pro Wort', letter: 'pro Buchstabe', line: 'pro Zeile' },
  noChange: (each) => `keine Änderung ${each}`,
  changeOf: (amount, way) => `${amount} ${way}`,
  change: (change, each) => `${change} ${each}`,
  onThisPage: (change) => `${change}, auf diesem Blatt`,
  range: (low, high) => `${low} bis ${high}`,
  ranges:
    'Dieses Blatt: wie genau dieses Blatt gelesen wurde (95 %). Diese Hand: wo 95 von 100 Blättern einer unveränderten Hand liegen würden. Weniger auseinander ist keine Änderung.',
  readings: (n) => (n === 1 ? 'Aus 1 Ablesung.' : `Aus ${n} Ablesungen.`),
  pageRange: (range) => `Dieses Blatt (95 %): ${range}.`,
  handRange: (range) => `Diese Hand, von Blatt zu Blatt: ${range}.`,
  handFromPages: (pages) =>
    `Diese Hand: aus ${pages} an einem Tag wiederholten Blättern und daraus, wie gewöhnlich Schreibende streuen.`,
  handFromWriters:
    'Diese Hand: daraus, wie gewöhnlich Schreibende von Blatt zu Blatt streuen (zwei Schreibende); wiederholen Sie an einem Tag ein Blatt, um zu erfahren, wie dieser Klient streut.',
  method: (version, how) => `Methode: ${version}: ${how}.`,
  notes: {
    'x-height': 'größer hilft, wo die Schrift klein geworden war',
    'ascender-ratio': 'nahe 2 liest sich gut',
    'descender-ratio': 'nahe 1 liest sich gut',
    'line-decrement': 'gleichbleibend ist besser als schrumpfend',
    'line-decrement-letter': 'gleichbleibend ist besser als schrumpfend',
    'first-last-five': 'in einer Reihe aus einem Buchstaben, ohne Halt geschrieben',
    'page-decrement': 'gleichbleibend ist besser als schrumpfend',
    'word-gap': 'etwa eine Buchstabenbreite liest sich gut',
    'gap-ratio': 'ab 3 stehen Wörter getrennt',
    slant: 'es zählt die Gleichmäßigkeit, nicht der Winkel',
    'stroke-width': 'hängt vom Stift ab',
    darkness: 'hängt vom Stift ab',
    'baseline-angle': 'näher an 0 ist waagrecht',
  },
  drawnPage: (name) => `${name}, gezeichnetes Blatt`,
  layers: {
    lines: 'Grundlinien',
    words: 'Wörter',
    bands: 'Buchstabenhöhe',
    decrement: 'Größe entlang der Zeile',
    gaps: 'Lücken',
    letters: 'Buchstaben',
    closure: 'Schließen',
    slant: 'Schräge',
  },
  troubles: {
    small: 'Kleine Buchstaben',
    gaps: 'Enge Wortlücken',
    open: 'Offen gebliebene Buchstaben',
    gap: (mm) => `Lücke ${mm} mm`,
    closed: (closed, of) => `${closed} von ${of} geschlossen`,
  },
  caption: {
    height: (mm) => `Buchstabenhöhe ${mm} mm`,
    gap: (mm) => `Lücke davor ${mm} mm`,
    slant: (degrees) => `Schräge ${degrees}°`,
    stroke: (mm) => `Strich ${mm} mm`,
    word: (line, word, text, parts) =>
      `Zeile ${line}, Wort ${word}${text ? ` „${text}“` : ''}: ${parts === '' ? 'nichts war lesbar' : parts}.`,
  },
};
