import type { Told } from '../../../en/screens-en.ts';

export const goalsToldDe: Told['goals'] = {
  levelNames: {
    [-2]: 'viel weniger als erwartet',
    [-1]: 'weniger als erwartet',
    0: 'wie erwartet',
    1: 'mehr als erwartet',
    2: 'viel mehr als erwartet',
  },
  percentOfWords: '% der Wörter',
  wordsOf: (words) => `Wörter von ${words}`,
  wordsOfTogether: (words, tries) => `Wörter von ${words} (${tries} Versuche zusammen)`,
  fewerThan: (value, unit) => `weniger als ${value} ${unit}`,
  to: (low, high, unit) => `${low} bis ${high} ${unit}`,
  orMore: (value, unit) => `${value} ${unit} oder mehr`,
  mustBeNumbers: 'Ausgangs- und erwartetes Niveau müssen Zahlen sein.',
  expectedAbove: 'Das erwartete Niveau muss über dem Ausgangsniveau liegen.',
  stepTooSmall: (unit) =>
    `Der Schritt ist kleiner als eine Einheit (${unit}). Wählen Sie ein höheres erwartetes Niveau oder eine längere Aufgabe.`,
  topTooHigh: (value, unit, max, most) =>
    `Niveau +2 wäre ${value} ${unit}, über ${max}. Setzen Sie das erwartete Niveau auf höchstens ${most}, oder wählen Sie eine längere Aufgabe.`,
  tooNarrow: (tries, words, width, longer) =>
    `Nach ${tries === 1 ? 'einem Versuch' : `${tries} Versuchen zusammen`} mit ${words} Wörtern muss ein Niveau mindestens ${width} Punkte breit sein, sonst wird es zufällig erreicht: ` +
    `${longer === null ? 'mehr Versuche zusammen zählen' : `mindestens ${longer} Wörter je Versuch schreiben`} oder das erwartete Niveau senken.`,
  noText: (levels) => `Niveau ${levels} hat noch keinen Text.`,
  noNumber: (levels) =>
    `Niveau ${levels} hat keine Zahl, daher lässt sich keine Überschneidung prüfen. Beginnen Sie mit einer Zahl, zum Beispiel „6 bis 8 Wörter“.`,
  twoVariables: 'Die Niveaus nennen mehr als eine Größe. Behalten Sie eine und schreiben Sie den Rest ins Ziel.',
  doNotRise: (a, b) => `Die Niveaus ${a} und ${b} steigen nicht.`,
  overlap: (a, b) => `Die Niveaus ${a} und ${b} überschneiden sich.`,
  hole: (a, b) => `Zwischen den Niveaus ${a} und ${b} ist eine Lücke.`,
  notEqual: 'Die Niveaus haben nicht gleiche Abstände.',
  firstRung:
    'Noch wurde keine Probe gelesen: Das ist die erste Sprosse. Eine gelesene Probe passt sie an diese Hand an.',
  seen: (samples, low, high) =>
    `${samples === 1 ? 'Die letzte Probe zeigt' : `Die letzten ${samples} Proben zeigen`} ${low === high ? `${low} %` : `${low} bis ${high} %`} gelesene Wörter`,
  readyForNext: (seen, output) => `${seen} mit „${output}“: bereit für die nächste Sprosse.`,
  passes100: (seen, points) =>
    `${seen}. Ein messbarer Schritt (${points} Punkte) ginge über 100 %: lieber mit mehr Schreiben oder weniger Hilfe steigen.`,
  lessThanWord: (seen, output) => `${seen} mit „${output}“, weniger als ein Wort unter der Marke dieser Sprosse.`,
  nextStepIs: (seen, target, mdc) =>
    `${seen}; der nächste Schritt ist ${target} %${mdc === null ? '' : `, mehr als die ${mdc} Punkte, um die sich zwei Proben einer unveränderten Hand unterscheiden`}.`,
  stepAgreed: 'Dieser Schritt ist vereinbart, daran wird gearbeitet.',
  firstStep: 'Der erste Schritt zu dem, was der Klient schreiben möchte.',
  wasMet: (output) => `„${output}“ wurde erreicht.`,
  success: (right, of, percent) => `${right} von etwa ${of} Wörtern gelesen (${percent} % oder mehr).`,
  successBy: {
    exact: 'jedes Wort und jede Ziffer stimmt',
    accepted: 'sie im Alltag angenommen wird; wo und wann, ist vermerkt',
  },
  tellsApart: (right, of) => `jemand anderes mindestens ${right} von ${of} Unterschriftenpaaren richtig erkennt`,
  somethingUnnamed: 'etwas noch nicht Genanntes',
  cue: { none: 'ohne Hinweise', visual: 'mit einem sichtbaren Hinweis', verbal: 'mit einem gesprochenen Hinweis' },
  reader: { unfamiliar: 'jemand, der den Text nicht kennt,', family: 'jemand aus der Familie' },
  by: (day) => `Bis ${day}: `,
  willWrite: (who, output, words, paper, aid, cue) =>
    `${who} schreibt ${output}${words === null ? '' : ` (etwa ${words} Wörter)`}${paper ? ` auf ${paper}` : ''}${aid ? ` mit ${aid}` : ''}, ${cue}`,
  soThat: (success) => `, sodass ${success}`,
  onTries: (need, of) => `, bei ${need} von ${of} Versuchen`,
  reads: (reader, percent, counted) => `, sodass ${reader} ${percent} % der Wörter liest${counted}`,
  readsWords: (reader, counted, percent, tries) =>
    `, sodass ${reader} ${counted} Wörtern liest (${percent} % oder mehr${tries})`,
  triesTogether: (of) => `${of} Versuche zusammen`,
  atStart: (day, baseline) => `; am Anfang (${day}): ${baseline}`,
  because: (reason) => `; weil: ${reason}`,
  missing: {
    output: 'was geschrieben wird',
    paper: 'Papier',
    percent: 'wie viele Wörter gelesen werden sollen',
    date: 'ein Datum',
    start: 'das Ausgangsniveau',
    why: 'warum es dem Klienten wichtig ist',
    tries: 'mögliche Versuche (es werden mehr verlangt, als es gibt)',
  },
  status: { active: '', met: 'erreicht', revised: 'überarbeitet', dropped: 'aufgegeben' },
  acceptedIn: (where) => ` Im Alltag angenommen: ${where}.`,
  placeNotNoted: 'Ort nicht vermerkt',
  pairsJudged: (said, of) => `${said} von ${of} Paaren beurteilt; was da ist, bleibt erhalten.`,
  toldApart: (right, of) => `${right} von ${of} Paaren richtig erkannt: Die Unterschrift lässt sich unterscheiden.`,
  notToldApart: (right, of, needed) =>
    `${right} von ${of} Paaren richtig erkannt, ${needed} sind nötig: Das Üben geht weiter.`,
};
