import type { Told } from '../../en/screens-en.ts';

/** In German. Writing with the pen in the window: what a bout shows, its measures, why one is missing, its scale. */
export const penDe: Told['pen'] = {
  names: {
    'writing-time': ['Schreibzeit', 'von der ersten bis zur letzten Berührung des Stifts'],
    'paper-time': ['Zeit auf dem Blatt', 'Summe aller Kontakte'],
    'air-time': ['Zeit in der Luft', 'Lücken zwischen Kontakten über 20 ms'],
    'air-share': ['Anteil der Zeit in der Luft', 'Zeit in der Luft durch Schreibzeit'],
    lifts: ['Abheben', 'Lücken zwischen Kontakten über 20 ms'],
    'lifts-per-word': ['Abheben innerhalb eines Wortes', 'Abheben in Wörtern durch Wörter'],
    pauses: ['Pausen', 'der Stift bleibt 0,3 s innerhalb von 0,5 mm, oder 0,5 s in der Luft'],
    'pause-time': ['Dauer der Pausen', 'Summe der Pausen'],
    stops: ['Lange Halte', 'der Stift bleibt eine Sekunde auf dem Blatt innerhalb von 1 mm'],
    'stop-time': ['Dauer der langen Halte', 'Summe der langen Halte'],
    'letters-per-minute': ['Buchstaben pro Minute', 'gemeinte Buchstaben und Ziffern durch Schreibzeit'],
    'path-length': ['Weg des Stifts', 'gefilterter Weg'],
    'speed-mean': ['Mittlere Geschwindigkeit', 'Weg durch Zeit'],
    'speed-peak': ['Spitzengeschwindigkeit', '99. Perzentil'],
    strokes: ['Striche', 'zwischen Umkehrungen von mindestens 0,3 mm'],
    'stroke-height': ['Strichhöhe', 'Median der Auf- und Abstriche'],
    'stroke-duration': ['Strichdauer', 'Median, von null zu null der senkrechten Geschwindigkeit'],
    'stroke-peak-speed': ['Spitzengeschwindigkeit eines Strichs', 'Median'],
    'stroke-height-cv': ['Streuung der Strichhöhe', 'Standardabweichung durch Mittel'],
    'velocity-peaks': ['Geschwindigkeitsspitzen pro Strich', '1 ist flüssig (Tucha 2006)'],
    sparc: ['Flüssigkeit, spektral', 'spektrale Bogenlänge (Balasubramanian 2015); näher an 0 ist flüssiger'],
    ldlj: ['Flüssigkeit, Ruck', 'Log des dimensionslosen Rucks (Balasubramanian 2015); näher an 0 ist flüssiger'],
    'pressure-mean': ['Druck', 'mittlerer Anteil dessen, was der Stift anzeigen kann'],
    'pressure-cv': ['Streuung des Drucks', 'Standardabweichung durch Mittel'],
    'pressure-drift': ['Abwandern des Drucks', 'Theil-Sen seines Logarithmus'],
    'size-decrement': ['Größenänderung beim Schreiben', 'Theil-Sen des Logarithmus der Strichhöhen'],
    'speed-decrement': ['Tempoänderung beim Schreiben', 'Theil-Sen des Logarithmus der Strichgeschwindigkeiten'],
    'size-drift': ['Größenänderung über die Zeit', 'Theil-Sen des Logarithmus der Strichhöhen'],
    'first-last-five': ['Erste fünf Striche gegen die letzten fünf', 'der Mittel'],
    'power-law': ['Abbremsen in Kurven', '1/3 beim flüssigen Zeichnen (Lacquaniti 1983); nicht für Entscheidungen'],
    'tremor-frequency': ['Rhythmus der Hand', 'höchste Spitze des Geschwindigkeitsspektrums'],
    'tremor-amplitude': ['Größe des Rhythmus', 'Effektivwert (rms) um die Spitze'],
  },
  tasks: {
    writing: 'Die Wörter dieser Schriftprobe',
    loops: 'Eine Reihe verbundener Schleifen',
    line: 'Eine Linie zwischen zwei Punkten',
    spiral: 'Eine Spirale',
    hold: 'Stift ruhig auf einem Punkt',
  },
  surfaces: {
    screen: 'Auf dem Glas eines Bildschirms',
    'screen-film': 'Auf einem Bildschirm mit papierähnlicher Folie',
    'tablet-paper': 'Auf Papier, das auf einem Tablet liegt',
    'tablet-blind': 'Auf einem Tablet, mit Blick auf den Bildschirm',
  },
  signal: { good: 'gut', limited: 'eingeschränkt', unusable: 'unbrauchbar' },
  replayOnly:
    'Das Signal dieses Stifts zeigt nicht, wie er sich bewegt hat; die Schrift lässt sich nur wieder abspielen.',
  noRhythm: {
    'no-clear-peak': 'Kein stetiger Rhythmus tritt hervor.',
    'below-noise': 'Kein Rhythmus über dem, was dieses Gerät anzeigen kann.',
    short: 'Zu kurz, um nach einem Rhythmus zu suchen: mindestens vier Sekunden ohne Abheben.',
    'no-scale': 'Ohne Maßstab wird kein Rhythmus angegeben.',
    rate: 'Dieser Stift wird zu selten abgefragt, um einen Rhythmus zu zeigen.',
    other: 'Es wird kein Rhythmus angegeben.',
  },
  rhythm: (hz, mm) => `Ein stetiger Rhythmus mit ${hz} Hz, ${mm} mm (rms).`,
  size: {
    less: (percent) => `${percent} % kleiner über die Zeile`,
    more: (percent) => `${percent} % größer über die Zeile`,
    held: 'Größe gehalten',
  },
  speed: {
    less: (percent) => `${percent} % langsamer über die Zeile`,
    more: (percent) => `${percent} % schneller über die Zeile`,
    held: 'Tempo gehalten',
  },
  lettersAMinute: (rate) => `${rate} Buchstaben pro Minute`,
  inTheAir: (percent) => `Stift ${percent} % der Zeit in der Luft`,
  longStops: (n) => (n === 0 ? 'kein langer Halt' : n === 1 ? '1 langer Halt' : `${n} lange Halte`),
  pauses: (n) => (n === 0 ? 'keine Pausen' : n === 1 ? '1 Pause' : `${n} Pausen`),
  why: {
    few: 'zu wenig geschrieben wurde',
    noise: 'das Gerät zu stark streut',
    rate: 'der Stift zu selten abgefragt wird',
    task: 'diese Aufgabe das nicht zeigt',
    'no-scale': 'der Maßstab nicht bekannt ist',
    'no-time': 'die Tinte ohne Zeiten kam',
    'no-pressure': 'der Stift keinen Druck anzeigt',
    'no-text': 'die gemeinten Wörter nicht bekannt sind',
    'no-words': 'die Wörter nicht markiert sind',
    quality: 'das Signal nicht gut genug ist',
  },
  hits: (inBand, strokes, mm, low, high) =>
    strokes === 0
      ? 'Keine Striche zu zählen.'
      : `${inBand} von ${strokes} Strichen innerhalb von 15 % um ${mm} mm (95 %: ${low} bis ${high} %).`,
  lessHelp: {
    sizes: 'ohne die Größe der letzten Striche',
    pace: 'ohne das Tempo',
    marks: 'ohne die Marken',
    none: 'ohne die Höhe zum Füllen, also ganz ohne Hilfe',
  },
  scale: {
    refused:
      'Breite und Höhe weichen um mehr als 1 % voneinander ab, was bei keinem Bildschirm vorkommt. Stellen Sie den Rahmen noch einmal ein.',
    first: 'Bitte noch einmal: Beide Einstellungen müssen auf ein halbes Prozent übereinstimmen.',
    differs:
      'Die beiden Einstellungen weichen um mehr als ein halbes Prozent voneinander ab. Nichts wurde behalten. Beginnen Sie von vorn.',
  },
  slipped: (before, after, moved) =>
    `Die Kreuze lagen vor dem Schreiben ${before} mm und danach ${after} mm auseinander und sind um ${moved} mm gewandert: Das Papier ist verrutscht, oder der Maßstab stimmt nicht. Millimeter dieser Runde sind zweifelhaft.`,
  layStill: (moved) => `Kreuze vorher und nachher geprüft: Das Papier lag still (${moved} mm).`,
  series: {
    firstTry: 'Der erste Versuch mit einem Gerät dient der Gewöhnung: nicht verglichen.',
    oneVisit: 'Bisher ein Termin: nichts zum Vergleichen.',
    moreRepeats: (n) =>
      n === 1
        ? 'Noch nicht zu sagen: 1 weitere Wiederholung dieser Aufgabe an einem Termin zeigt, wie sehr diese Hand auf diesem Gerät streut.'
        : `Noch nicht zu sagen: ${n} weitere Wiederholungen dieser Aufgabe an einem Termin zeigen, wie sehr diese Hand auf diesem Gerät streut.`,
    doNotVary: 'Nicht zu sagen: Die Werte streuen nicht.',
    missing: 'Nicht zu sagen: Auf einer Seite fehlt ein Wert.',
    within: (before, now) =>
      `Innerhalb dessen, wie diese Hand auf diesem Gerät streut (${before} vorher, ${now} jetzt).`,
    higher: (before, now) => `Höher, um mehr als diese Hand auf diesem Gerät streut (${before} vorher, ${now} jetzt).`,
    lower: (before, now) =>
      `Niedriger, um mehr als diese Hand auf diesem Gerät streut (${before} vorher, ${now} jetzt).`,
    per10Strokes: (value) => `${value} % auf 10 Striche`,
    first: (value) => `${value} (erster Versuch)`,
    title: (task, hand, dose, surface, device) =>
      `${task}, Hand: ${hand}${dose ? `, ${dose}` : ''}; ${surface}${device ? `, ${device}` : ''}`,
  },
  warnings: {
    empty: 'In dieser Aufzeichnung gibt es keine Tinte mit aufgesetztem Stift; gemessen wird nichts.',
    'no-scale':
      'Die Größe einer Einheit ist nicht bekannt: Zeiten und Druck werden angegeben, Längen und Geschwindigkeiten nicht.',
    'no-time': 'Die Punkte tragen keine Zeiten: Die Tinte lässt sich zeichnen, eine Bewegung wird nicht angegeben.',
    'no-pressure': 'Der Stift zeigt keinen Druck an, oder einen, der sich nie ändert.',
    'no-hover':
      'Vom Stift in der Luft ist nichts bekannt; das Abheben ergibt sich aus den Lücken zwischen den Kontakten.',
    'low-rate': 'Der Stift wurde weniger als 80-mal pro Sekunde abgefragt: Feine Bewegung wird nicht angegeben.',
    dropped: 'Mehr als 2 % der Punkte gingen unterwegs verloren; die Bewegung wird mit Vorsicht angegeben.',
    'time-backward': 'Einige Punkte waren nicht später als der vor ihnen; sie wurden ausgelassen.',
  },
};
