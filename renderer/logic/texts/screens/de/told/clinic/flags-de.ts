import type { Told } from '../../../en/screens-en.ts';

export const flagsToldDe: Told['flags'] = {
  stopEverything: (title, more) => `Alles anhalten: ${title}${more > 0 ? ` und ${more} weitere` : ''}.`,
  noExercises: (title, more) =>
    `Keine Übungen, bis dies abgeklärt ist: ${title}${more > 0 ? ` und ${more} weitere` : ''}.`,
  notAsked: (questions) =>
    questions === 1
      ? 'Eine Frage nach Warnzeichen wurde noch nicht gestellt.'
      : `${questions} Fragen nach Warnzeichen wurden noch nicht gestellt.`,
  yesTo: (question) => `Ja auf: „${question}“`,
  seenAgain: 'Es wurde schon einmal abgeklärt und ist seither wieder aufgetreten.',
  fewerWords: (before, of, now) =>
    `Weniger Wörter als zuvor: etwa ${before} von ${of} am Anfang, jetzt etwa ${now}, ohne vermerkte Erklärung.`,
  painRoseInSample: (before, after) =>
    `Der Schmerz stieg beim Schreiben einer Probe von ${before} auf ${after} von 10.`,
  painRoseInLog: (by) =>
    `Der Schmerz stieg im Übungsprotokoll von den ersten drei zu den letzten drei Tagen um ${by} von 10.`,
  call: {
    'emergency-number': 'den örtlichen Notruf, sofort.',
    'crisis-service': 'den Krisendienst oder die Arztpraxis, gemeinsam mit dem Klienten, bevor er geht.',
    'doctor-today': 'die Arztpraxis des Klienten, heute.',
    'referrer-today': 'die überweisende Stelle, heute.',
    neurology: 'die Arztpraxis des Klienten, heute, mit der Bitte um ein neurologisches Konsil.',
  },
};
