/** Why a change to the rule table is refused: the checks keep it in English, it is read back and told anew. No full stop. */
export const ruleChecksToldEn = {
  noCautionKnown: (code: string) => `There is no caution "${code}" in the vocabulary`,
  noDiagnosisKnown: (code: string) => `There is no diagnosis "${code}" in the vocabulary`,
  noFindingKnown: (code: string) => `There is no finding "${code}" in the vocabulary`,
  noMeasureKnown: (code: string) => `There is no measure "${code}" in the vocabulary`,
  noOccasionKnown: (code: string) => `There is no occasion "${code}" in the vocabulary`,
  noThresholdKnown: (code: string) => `There is no threshold "${code}" in the vocabulary`,
  noDetailKnown: (detail: string, code: string) =>
    `There is no detail of "${detail}" called "${code}" in the vocabulary`,
  standsTwiceIn: (code: string, list: string) => `"${code}" stands twice in ${list}`,
  chainOfNext: (code: string) => `The chain of next steps from "${code}" comes back to itself`,
  staysBelow: (name: string, upper: string) => `"${name}" must stay below "${upper}"`,
  noCautionText: (code: string) => `There is no caution text "${code}"`,
  noDose: (code: string) => `There is no dose "${code}"`,
  noItem: (code: string) => `There is no item "${code}"`,
  noFinding: (code: string) => `There is no finding "${code}"`,
  noCaution: (code: string) => `There is no caution "${code}"`,
  noRedFlag: (code: string) => `There is no red flag "${code}"`,
  canHurt: (code: string, risk: string) => `"${code}" can hurt (${risk}), so it needs a caution`,
  testedFirst: (code: string) => `"${code}" must name what has to be tested first`,
  forbidsNothing: (id: string) => `Veto ${id} forbids nothing`,
  wholeNumber: (name: string) => `"${name}" must be a whole number`,
  liesBetween: (name: string, min: string, max: string) => `"${name}" must lie between ${min} and ${max}`,
  makesLetters: (text: string, longest: string, most: string) =>
    `"${text}" makes up to ${longest} letters, and a line has room for ${most}`,
  standsThere: (text: string) => `"${text}" stands there already`,
  braces: (text: string) => `The frame "${text}" has a brace too many or an empty slot`,
  namesOccasion: (text: string) =>
    `The frame "${text}" must name an occasion if it is for practice, and none if it is measured`,
  asksForWords: (text: string, slot: string) =>
    `The frame "${text}" asks for words called "${slot}", and there is no such list`,
  givesAway: (slot: string, has: string, needs: string) =>
    `"${slot}" has ${has} words and needs ${needs}: else the sentence gives them away`,
  singleWords: (slot: string) => `Words of "${slot}" must be single words, so that every measured sentence has as many`,
  measuredWords: (text: string, words: string) => `The measured frame "${text}" must have ${words} words`,
  inBothStreams: (text: string) => `"${text}" stands in both streams: measured texts stay unknown`,
  wordTwice: (code: string) => `A word stands twice in "${code}"`,
  topicWords: (name: string, has: string, needs: string) => `"${name}" has ${has} words and needs ${needs}`,
  topicThings: (name: string, has: string, needs: string) => `"${name}" has ${has} things to handle and needs ${needs}`,
};
