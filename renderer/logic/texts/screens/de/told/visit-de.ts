import type { Told } from '../../en/screens-en.ts';

/** In German. A visit: how far its steps are, what is next, what was planned. */
export const visitDe: Told['visit'] = {
  answersFlagsAsked: (n) => `${n === 1 ? '1 Antwort' : `${n} Antworten`}, Warnzeichen gefragt`,
  flagsAsked: 'Warnzeichen gefragt',
  answersFlagsLeft: (answers, left) =>
    `${answers === 0 ? '' : answers === 1 ? '1 Antwort, ' : `${answers} Antworten, `}noch ${left} Warnzeichen zu fragen`,
  doneEarlier: 'an einem früheren Termin',
  notBegun: 'nicht begonnen',
  noSampleHere: 'keine an diesem Termin',
  noPageYet: 'noch kein Blatt',
  pagesMeasured: (measured, pages) =>
    measured === pages
      ? `${measured === 1 ? '1 Blatt' : `${measured} Blätter`} gemessen`
      : `${measured} von ${pages === 1 ? '1 Blatt' : `${pages} Blättern`} gemessen`,
  nothingToRead: 'noch nichts zu lesen',
  waitsForReader: 'wartet auf Lesende',
  wordsRead: (right, words) => `${right} von ${words} Wörtern`,
  readKeptApart: 'gelesen, getrennt geführt',
  approved: 'freigegeben',
  draft: 'Entwurf',
  approvedEarlier: 'früher freigegeben',
  noProgram: 'noch keines',
  goalsAgreed: (n) => `${n} vereinbart`,
  noGoal: 'keines vereinbart',
  pagesIssued: (n) => `${n} ausgegeben`,
  nonePage: 'keine ausgegeben',
  next: {
    firstVisit: ['Ersten Termin beginnen', 'Alles Beobachtete gehört zu einem Termin.'],
    redFlags: ['Warnzeichen abfragen', 'Zwei Minuten, vor allem anderen.'],
    screen: ['Screening', 'Sind Hand, Haltung und Tisch bereit?'],
    sample: ['Schriftprobe nehmen', 'An diesem Termin noch keine Schriftprobe.'],
    program: ['Übungsprogramm', 'Noch kein Programm.'],
    draft: ['Übungsprogramm', 'Der Entwurf ist noch nicht freigegeben.'],
    goal: ['Ziel vereinbaren', 'Kein Ziel ist aktiv.'],
    summary: ['Familienblatt drucken', 'Eine Seite für die Familie.'],
  },
  readBack: 'Gegenlesen',
  samplesWait: (n) => (n === 1 ? 'Eine Schriftprobe wartet auf Lesende.' : `${n} Schriftproben warten auf Lesende.`),
  plannedFor: (day, hour) => `Der Termin war geplant für ${day}${hour ? ` um ${hour}` : ''}.`,
  writeAgain: (task) => `Wieder schreiben: ${task}, zur gleichen Tageszeit.`,
  medicine: (dose) => `Medikament: ${dose}`,
  goOnWithTrial: 'Den offenen Versuch fortsetzen.',
  ask: (questions) => `Fragen: ${questions}`,
};
