import type { Told } from '../../../en/screens-en.ts';

/** In German. Why a change to the rule table is refused. */
export const ruleChecksToldDe: Told['ruleChecks'] = {
  noCautionKnown: (code) => `Das Vokabular kennt den Hinweis "${code}" nicht`,
  noDiagnosisKnown: (code) => `Das Vokabular kennt die Diagnose "${code}" nicht`,
  noFindingKnown: (code) => `Das Vokabular kennt den Befund "${code}" nicht`,
  noMeasureKnown: (code) => `Das Vokabular kennt den Messwert "${code}" nicht`,
  noOccasionKnown: (code) => `Das Vokabular kennt den Schreibanlass "${code}" nicht`,
  noThresholdKnown: (code) => `Das Vokabular kennt den Grenzwert "${code}" nicht`,
  noDetailKnown: (detail, code) => `Das Vokabular kennt zu "${detail}" keine Einzelheit "${code}"`,
  standsTwiceIn: (code, list) => `"${code}" steht zweimal in ${list}`,
  chainOfNext: (code) => `Die Kette der nächsten Schritte von "${code}" führt auf sich selbst zurück`,
  staysBelow: (name, upper) => `"${name}" muss unter "${upper}" bleiben`,
  noCautionText: (code) => `Es gibt keinen Hinweistext "${code}"`,
  noDose: (code) => `Es gibt keinen Umfang "${code}"`,
  noItem: (code) => `Es gibt keinen Eintrag "${code}"`,
  noFinding: (code) => `Es gibt keinen Befund "${code}"`,
  noCaution: (code) => `Es gibt keinen Hinweis "${code}"`,
  noRedFlag: (code) => `Es gibt kein Warnzeichen "${code}"`,
  canHurt: (code, risk) => `"${code}" kann schaden (${risk}) und braucht darum einen Hinweis`,
  testedFirst: (code) => `"${code}" muss nennen, was zuerst zu testen ist`,
  forbidsNothing: (id) => `Das Veto ${id} verbietet nichts`,
  wholeNumber: (name) => `"${name}" muss eine ganze Zahl sein`,
  liesBetween: (name, min, max) => `"${name}" muss zwischen ${min} und ${max} liegen`,
  makesLetters: (text, longest, most) =>
    `"${text}" ergibt bis zu ${longest} Buchstaben, und eine Zeile hat Platz für ${most}`,
  standsThere: (text) => `"${text}" steht schon da`,
  braces: (text) => `Der Rahmen "${text}" hat eine Klammer zu viel oder eine leere Lücke`,
  namesOccasion: (text) =>
    `Der Rahmen "${text}" muss einen Schreibanlass nennen, wenn er zum Üben ist, und keinen, wenn er gemessen wird`,
  asksForWords: (text, slot) => `Der Rahmen "${text}" verlangt Wörter namens "${slot}", und diese Liste gibt es nicht`,
  givesAway: (slot, has, needs) => `"${slot}" hat ${has} Wörter und braucht ${needs}: Sonst verrät der Satz sie`,
  singleWords: (slot) =>
    `Die Wörter von "${slot}" müssen einzelne Wörter sein, damit jeder gemessene Satz gleich viele hat`,
  measuredWords: (text, words) => `Der gemessene Rahmen "${text}" muss ${words} Wörter haben`,
  inBothStreams: (text) => `"${text}" steht in beiden Vorräten: Gemessene Texte bleiben unbekannt`,
  wordTwice: (code) => `Ein Wort steht zweimal in "${code}"`,
  topicWords: (name, has, needs) => `"${name}" hat ${has} Wörter und braucht ${needs}`,
  topicThings: (name, has, needs) => `"${name}" hat ${has} Dinge zum Anfassen und braucht ${needs}`,
};
