import type { Told } from '../../../en/screens-en.ts';

export const draftToldDe: Told['draft'] = {
  graspFirst: 'Nicht geprüft ist nicht sicher: Die Stifthaltung kommt zuerst.',
  notTested: (names) => `Nicht geprüft ist nicht sicher: ${names}.`,
  notKnown: (names, because) => `Nicht bekannt: ${names}. Es kann diese Zeile ausschließen: ${because}`,
  flagOpen: (title) => `Ein Warnzeichen ist offen: ${title}. Nichts wird freigegeben, bis es abgeklärt ist.`,
  forbidden: (title, because) =>
    `„${title}“ ist für diesen Klienten ausgeschlossen: ${because} Herausnehmen oder einen Grund für das Behalten angeben.`,
  answeredYes: 'Es wurde mit Ja beantwortet.',
  noExercise: 'Vorerst keine Übung: Worte kommen auf andere Weise aufs Papier.',
  clash: (group) => `${group}: Eine andere Zeile sagt es schon.`,
  fromLibrary: 'Von der Therapeutin aus der Bibliothek aufgenommen.',
  ownLine: 'Eigene Zeile der Therapeutin.',
  noTime: 'Kein Platz: Die Minuten des Tages sind verbraucht.',
  noPlace: 'Kein Platz: Der Tag hat seine Punkte.',
  tooTired: 'Schreiben ermüdet: Übungsreihen fallen zuerst weg.',
  tooHigh: 'Mehr als eine Stufe über der des Programms.',
  inItsPlace: 'Alles Geschriebene hat seinen eigenen Platz: Liniertes Papier ist nicht nötig.',
  noWriting: 'Ein Stift kann gehalten werden, aber derzeit darf kein Schreiben gegeben werden.',
  upAndBack: (up, back) => `Vor: ${up} Zurück: ${back}`,
  up: (up) => `Vor: ${up}`,
  redFlagIsOpen: 'ein Warnzeichen ist offen',
};
