import type { Told } from '../../en/screens-en.ts';

/** In German. A client in short and over time. */
export const clientDe: Told['client'] = {
  writesWith: (hand) => `schreibt mit ${hand === 'left' ? 'links' : 'rechts'}`,
  goal: 'Ziel',
  goalReached: (output, percent) => `${output}${percent === null ? '' : `, ${percent} % der Wörter`}`,
  lastVisit: 'Letzter Termin',
  noneYet: 'noch keiner',
  planThen: 'Damaliger Plan',
  nextVisit: 'Nächster Termin',
  program: 'Programm',
  approvedOn: (day) => `freigegeben ${day}`,
  mind: 'Vorsicht',
  wordsRead: (first, now, samples) =>
    `Wörter, die jemand lesen konnte: ${first} %${samples > 1 ? ` → ${now} % (${samples} Schriftproben)` : ' (1 Schriftprobe)'}`,
  kinds: {
    visit: 'Termin',
    flag: 'Warnzeichen',
    medicine: 'Medikament',
    sample: 'Schriftprobe',
    pen: 'Stift',
    trial: 'Versuch',
    program: 'Programm',
    goal: 'Ziel',
    missed: 'Versäumt',
  },
  dose: { on: 'wirkt', off: 'wirkt nicht', unsure: 'nicht sicher, ob es wirkt' },
  approvedTier: (tier) => `freigegeben, Stufe ${tier}`,
  baseline: 'Ausgangslage',
  tasks: {
    pangram: 'Eine Zeile mit allen Buchstaben',
    sentences: 'Sätze aus dem Alltag',
    'date-line': 'Datum und Uhrzeit',
    personal: 'Eigener Name und Adresse',
    signature: 'Unterschrift, dreimal',
    digits: 'Ziffern und Beträge',
    free: 'Freies Schreiben',
    'goal-output': 'Was das Ziel verlangt',
    'transfer-probe': 'Eine Zeile auf blankem Papier, ohne Hilfe',
    'repeated-letter': 'Ein Buchstabe, fünfzehnmal',
  },
};
