import type { Told } from '../../../en/screens-en.ts';

const check = (language: string) =>
  `Die ${language} Worte kommen mit Fairhand. Was Sie oder Ihre Praxis geschrieben haben, bleibt, wie es ist: Ändern Sie es bei Bedarf auf dem Blatt, und lassen Sie es zuerst von jemandem lesen, der die Sprache spricht.`;
const rest = (lines: string) => `${lines} Übungszeilen werden gezeigt; der Rest steht auf dem Blatt „Üben zu Hause“.`;

export const printedToldDe: Told['printed'] = {
  redFlagOpen: (title) =>
    `Ein Warnzeichen ist offen (${title}). Bis es abgeklärt ist, wird keine Übung gedruckt; das Überweisungsblatt sagt, was zu tun ist.`,
  leftOff: (title, because) => `„${title}“ wurde weggelassen: ${because}`,
  cautionForbids: 'Ein Hinweis schließt es aus.',
  noProgram: 'Noch gibt es kein Programm für zu Hause. Legen Sie es unter Programm an.',
  draft: 'Dieses Programm ist ein Entwurf. Es druckt mit dem Wort ENTWURF, bis es freigegeben ist.',
  notCoSigned:
    'Eine Assistenz hat dieses Programm entworfen oder geändert, und niemand hat es gegengezeichnet: Jedes Blatt sagt das unten.',
  spanish: check('spanischen'),
  german: check('deutschen'),
  noPictures: 'Noch gibt es keine zwei Tage mit einer gescannten Seite, daher keine Bilder.',
  notTrueSize: (why) => `Die Bilder sind nicht in wahrer Größe: ${why}.`,
  lineTooWide: 'eine Zeile ist breiter als das Blatt',
  noScale: 'eine Seite hat keinen Maßstab, Größen lassen sich nicht vergleichen',
  printsEnglish: (why, shown) => `Auf Englisch, denn ${why}: ${shown}.`,
  changedAfter: (language) => `die Worte wurden nach der Fassung auf ${language} geändert`,
  noWordsFor: (language) => `Fairhand hat dafür keine Fassung auf ${language}`,
  howInEnglish: 'Wie jede Zeile gemacht wird, druckt auf Englisch, wo die Worte nicht mit Fairhand kamen.',
  noOwnWords: (occasion) =>
    `Für „${occasion}“ sind keine eigenen Wörter des Klienten vermerkt: Die Blätter nutzen allgemeine. Tragen Sie Namen, Läden oder Wendungen bei der Überweisung ein.`,
  longerThanLine: (words) => `„${words}“ ist länger als eine Zeile dieses Papiers: Es druckt über zwei Zeilen.`,
  bothSides:
    'In dieser Schriftgröße füllt die Seite Vorder- und Rückseite eines Blatts. Drucken Sie beidseitig oder wählen Sie kleinere Schrift.',
  tooLong:
    'Die Seite ist länger als Vorder- und Rückseite eines Blatts oder als 250 Wörter. Kürzen Sie die längsten Zeilen unten oder wählen Sie kleinere Schrift.',
  noConsent:
    'Für diesen Klienten ist keine Einwilligung zur Weitergabe an die Familie vermerkt. Fragen Sie vor dem Aushändigen.',
  stillDraft: 'Das Programm ist noch ein Entwurf. Geben Sie es frei, bevor Sie dies aushändigen.',
  nobodyToCall: 'Für diesen Klienten ist niemand zum Anrufen vermerkt; das Blatt hat eine leere Zeile.',
  readByFamily: 'Die Wörter wurden nicht von jemandem gelesen, der den Text nicht kannte; das Blatt sagt, wer las.',
  letterEmpty: 'Die Frage des Briefs ist leer; das Blatt hat dafür eine leere Zeile.',
  notShownBack: 'Ob das Programm zurückgezeigt wurde, ist nicht vermerkt.',
  noBring: 'Was mitzubringen ist, wurde weggelassen.',
  noWordCount: 'Wie viele Wörter das Ziel zählt, wurde weggelassen.',
  noDrawing: 'Die Zeichnung von Stuhl und Tisch wurde weggelassen; die Höhen stehen im Text.',
  fourLines: rest('Vier'),
  threeLines: rest('Drei'),
  noHelperAdvice: 'Ratschläge für Helfende wurden weggelassen; Stuhl und Tisch sind noch da.',
  noHand: 'Welche Hand, Brille und was nach einem versäumten Tag zu tun ist, wurden weggelassen.',
  noStart: 'Wie es am Anfang war, wurde weggelassen.',
  twoLines: rest('Zwei'),
  noSeat: 'Stuhl und Tisch wurden weggelassen.',
  cautionsTogether: 'Die Hinweise des Klienten stehen in einem Absatz.',
  noPaperPen: 'Papier, Stift und Häufigkeit wurden weggelassen; sie stehen auf dem Blatt „Üben zu Hause“.',
  noGoal: 'Das Ziel wurde weggelassen.',
  picturesOut: 'Die Bilder wurden weggelassen.',
  practiceElsewhere: 'Was zu üben ist, steht nur auf dem Blatt „Üben zu Hause“.',
  cautionsElsewhere:
    'Die eigenen Hinweise des Klienten stehen nur auf dem Blatt „Üben zu Hause“: Händigen Sie es mit diesem aus.',
  factorMissing: 'Der begrenzende Faktor und Ihre Beurteilung sind noch nicht geschrieben.',
  careMissing: 'Der Behandlungsplan ist noch nicht geschrieben.',
  goalMissing: 'Noch ist kein Ziel vereinbart.',
  skillMissing: 'Warum fachliche Therapie nötig ist, ist noch nicht geschrieben.',
  planMissing: 'Der Plan (weiter, ändern oder beenden) ist noch nicht geschrieben.',
  afterMissing: 'Der Plan nach dem Abschluss ist noch nicht geschrieben.',
  noFlagOpen: 'Kein Warnzeichen ist offen. Schreiben Sie unter „Sie ergänzen“, warum Sie überweisen.',
  noVisitToday: 'Es gibt keinen Termin; das Blatt trägt das heutige Datum.',
  noVisitForNote: 'Es gibt keinen Termin für eine Notiz. Beginnen Sie zuerst einen.',
  judgementMissing:
    'Zur fachlichen Beurteilung dieses Termins steht nichts da. Ergänzen Sie, warum eine Hilfsperson es nicht hätte tun können.',
  readsTheSame: (what, day, sentence) =>
    `${what} lautet wie am ${day} („${sentence}“). Sagen Sie, was diesmal anders war.`,
  skilledJudgement: 'Die fachliche Beurteilung',
  theResponse: 'Die Reaktion',
  thePlan: 'Der Plan',
};
