import type { ConditionName } from '../../../change/index.ts';
import type { ChangeTexts } from './change-texts.ts';

const numbers = ['kein', 'ein', 'zwei', 'drei', 'vier', 'fünf', 'sechs', 'sieben', 'acht', 'neun', 'zehn'];
const conditions: Partial<Record<ConditionName, Readonly<Record<string, string>>>> = {
  task: { copy: 'beim Abschreiben', own: 'mit eigenen Worten', digits: 'in Ziffern' },
  cue: { none: 'ohne Hinweis', visual: 'mit sichtbarem Hinweis', verbal: 'mit gesprochenem Hinweis' },
  dose: {
    on: 'mit Wirkung des Medikaments',
    off: 'ohne Wirkung des Medikaments',
    unsure: 'ohne zu wissen, ob das Medikament wirkte',
    none: 'ohne Medikament',
  },
  hand: { right: 'mit der rechten Hand', left: 'mit der linken Hand', same: 'mit derselben Hand' },
  surface: {
    paper: 'auf Papier',
    screen: 'auf einem Bildschirm',
    'screen-film': 'auf einem Bildschirm mit Folie',
    'tablet-paper': 'auf Papier auf einem Tablet',
    'tablet-blind': 'auf einem Tablet',
  },
  view: { 'true-size': 'in wahrer Größe gelesen', 'unknown-size': 'in unbekannter Größe gelesen' },
};

const count = (n: number): string => numbers[n] ?? String(n);
const words = (n: number): string => (n === 1 ? '1 Wort' : `${n} Wörter`);
const ofWords = (n: number): string => (n === 1 ? '1 Wort' : `${n} Wörtern`);
const amount = (n: number): string =>
  n === 0 ? 'gar keinem' : `${ofWords(Math.abs(n))} ${n > 0 ? 'mehr' : 'weniger'}`;
const visits = (n: number): string => `${count(n)} ${n === 1 ? 'Termin' : 'Termine'}`;
const more = (direction: 'up' | 'down'): string => (direction === 'up' ? 'mehr' : 'weniger');

function and(items: readonly string[]): string {
  return items.length < 2 ? (items[0] ?? '') : `${items.slice(0, -1).join(', ')} und ${items.at(-1)}`;
}

/** Surface and device, as "screen, Slate 12". */
function surfaceWords(value: string): string {
  const [surface = '', ...device] = value.split(', ');
  return [
    conditions.surface?.[surface] ?? `auf ${surface}`,
    ...(device.length > 0 ? [`(${device.join(', ')})`] : []),
  ].join(' ');
}

export const changeDe: ChangeTexts = {
  headline: {
    nothing: 'Noch nichts gelesen',
    'not-comparable': 'Nicht vergleichbar',
    'cannot-tell': 'Noch nicht zu sagen',
    steady: 'Etwa gleich',
    sure: { up: 'Ja, mehr', down: 'Ja, weniger' },
    probable: { up: 'Wahrscheinlich mehr', down: 'Wahrscheinlich weniger' },
  },
  visits: (n) => visits(n).charAt(0).toUpperCase() + visits(n).slice(1),
  nothing: 'Noch keine Schriftprobe wurde gelesen. Sobald jemand sie liest, der den Text nicht kennt, steht es hier.',
  oneVisit: (right, of, low, high) =>
    `Ein Termin: ${right.replace('.', ',')} von ${of} Wörtern waren lesbar (${low} bis ${high} wären am selben Tag keine Überraschung). ` +
    'Ein Termin kann keine Veränderung zeigen: Zwei weitere Schriftproben unter gleichen Bedingungen bilden die Ausgangslage.',
  afterBreak:
    'Es ist der erste Termin nach einer langen Pause; was dazwischen war, ist nicht bekannt: Nehmen Sie ihn als neue Ausgangslage.',
  sinceBreak: (day) => `Gezählt seit der Pause, ab ${day}.`,
  onlyBaseline:
    'Alle Termine gehören bisher zur Ausgangslage. Zwei weitere Schriftproben danach können eine Veränderung zeigen.',
  moved: (direction, { from, to, of }, chances, least, leastChances) =>
    `von etwa ${from} auf etwa ${to} Wörter von ${of}; mindestens ${chances}, dass es ${more(direction)} ist als am Anfang` +
    (least ? `, etwa ${leastChances}, dass es mindestens ${words(least)} ${more(direction)} sind` : '') +
    '.',
  steady: ({ to, of }, largest, chances) =>
    `etwa ${to} von ${of} Wörtern. Eine Veränderung um mehr als ${words(largest)} von ${of} ist unwahrscheinlich (${chances}).`,
  unclear: ({ from, to, of }, low, high) =>
    `${from === to ? `etwa ${to} von ${of} Wörtern` : `von etwa ${from} auf etwa ${to} Wörter von ${of}`}; ` +
    `alles von ${amount(low)} bis zu ${amount(high)} ist möglich. ` +
    'Ob das mehr ist als die Schwankung von Tag zu Tag, ist noch nicht zu sagen.',
  probably: (direction, chances) =>
    `Wahrscheinlich ${more(direction)}: etwa ${chances}. Nehmen Sie an einem anderen Tag noch eine Schriftprobe.`,
  more: (n) =>
    n === 1
      ? 'Geht es so weiter, würde etwa eine weitere Schriftprobe unter gleichen Bedingungen reichen.'
      : `Geht es so weiter, würden etwa ${count(n)} weitere Schriftproben unter gleichen Bedingungen reichen.`,
  moreHardly:
    'Mehr solche Schriftproben würden es kaum zeigen: Nehmen Sie einen längeren Text oder zwei Schriftproben an einem Termin.',
  notes: {
    'readers-differ': 'Die zwei Lesenden zeigen in entgegengesetzte Richtungen: Fragen Sie eine dritte Person.',
    'readers-change': 'Am Anfang und später lasen andere Personen; das ist berücksichtigt.',
  },
  allRight: (n) =>
    `An allen Terminen (${n}) war jedes Wort lesbar. Dieses Maß kann keinen weiteren Gewinn zeigen: Wählen Sie eine schwerere Aufgabe, weniger Hilfe oder mehr Tempo.`,
  noneRight: (n) =>
    `An allen Terminen (${n}) war kein Wort lesbar. Einzelne Buchstaben zeigen eine Veränderung früher als Wörter: Zählen Sie Buchstaben, oder kürzen Sie die Aufgabe.`,
  notComparable: (first, later) =>
    `Nicht vergleichbar: Die ersten Termine wurden ${first} geschrieben, die späteren ${later}. ` +
    'Nehmen Sie eine Schriftprobe wie am Anfang, oder zwei weitere wie jetzt.',
  condition: (name, value) =>
    conditions[name]?.[value] ??
    (name === 'view' ? `bei ${value} % der Größe gelesen` : name === 'surface' ? surfaceWords(value) : value),
  visitsOf: (n, how) => `${n} ${how}`,
  partly: (compared, leftOut) => `Verglichen: ${compared}. Nicht gezählt: ${leftOut}.`,
  readByTherapist:
    'Gelesen wurde nur in der Therapie, wo Text und Schrift bekannt sind: Fremde würden weniger Wörter lesen.',
  askRepeat: 'Weniger Wörter als vorher: Nehmen Sie innerhalb von zwei Wochen an einem anderen Tag eine Schriftprobe.',
  chances: (part, of) => `${part} von ${of} Chancen`,
  and,
};
