/**
 * What the screen tells of a page that is made: its warnings are kept with an issued page, in English, and told anew
 * from there (`texts/retold.ts`).
 */
export const printedToldEn = {
  redFlagOpen: (title: string) =>
    `A red flag is open (${title}). No practice is printed until it was reviewed; the referral page says what to do.`,
  leftOff: (title: string, because: string) => `“${title}” was left off: ${because}`,
  cautionForbids: 'a caution forbids it.',
  noProgram: 'There is no home program yet. Build one under Home program.',
  draft: 'This program is a draft. It prints with the word DRAFT until it is approved.',
  notCoSigned:
    'An assistant drafted or changed this program and nobody has co-signed it: every sheet says so at its foot.',
  spanish:
    'The Spanish words come with Fairhand. What you or your clinic wrote stays as it is: change it on the page where needed, and let somebody who speaks the language read it first.',
  german:
    'The German words come with Fairhand. What you or your clinic wrote stays as it is: change it on the page where needed, and let somebody who speaks the language read it first.',
  noPictures: 'There are no two days with a scanned page yet, so no pictures are shown.',
  notTrueSize: (why: string) => `The pictures are not at true size: ${why}.`,
  lineTooWide: 'a line is wider than the sheet',
  noScale: 'a page has no scale, so sizes cannot be compared',
  printsEnglish: (why: string, shown: string) => `In English, because ${why}: ${shown}.`,
  changedAfter: (language: string) => `the words were changed after the ${language} was written`,
  noWordsFor: (language: string) => `Fairhand has no ${language} for it`,
  howInEnglish: 'How each line is done prints in English where its words did not come with Fairhand.',
  noOwnWords: (occasion: string) =>
    `No words of the client’s own are noted for “${occasion}”: its pages use general ones. Add names, shops or phrases at the referral.`,
  longerThanLine: (words: string) => `“${words}” is longer than a line of this paper: it prints over two lines.`,
  bothSides:
    'In this size of print the page takes both sides of a sheet. Print it on both sides, or choose smaller print.',
  tooLong:
    'The page is longer than both sides of a sheet or than 250 words. Shorten the longest lines below, or choose smaller print.',
  noConsent: 'No consent to share with the family is noted for this client. Ask before you hand this out.',
  stillDraft: 'The home program is still a draft. Approve it before you hand this out.',
  nobodyToCall: 'Nobody to call is noted for this client; the sheet has a blank line.',
  readByFamily: 'The words were not read by somebody who did not know the text; the sheet says who read them.',
  letterEmpty: 'The question of the letter is empty; the page has a blank line for it.',
  notShownBack: 'Whether the home program was shown back is not noted.',
  noBring: 'What to bring was left out.',
  noWordCount: 'How many words the goal counts was left out.',
  noDrawing: 'The drawing of chair and table was left out; its heights are in the text.',
  fourLines: 'Four practice lines are shown; the home program sheet has the rest.',
  threeLines: 'Three practice lines are shown; the home program sheet has the rest.',
  noHelperAdvice: 'Advice for helpers was left out; chair and table are still there.',
  noHand: 'Which hand, glasses and what to do after a missed day were left out.',
  noStart: 'What it was at the start was left out.',
  twoLines: 'Two practice lines are shown; the home program sheet has the rest.',
  noSeat: 'Chair and table were left out.',
  cautionsTogether: 'The client’s cautions stand in one paragraph.',
  noPaperPen: 'Paper, pen and how often were left out; they are on the home program sheet.',
  noGoal: 'The goal was left out.',
  picturesOut: 'The pictures were left out.',
  practiceElsewhere: 'What to practice is on the home program sheet only.',
  cautionsElsewhere:
    'The client’s own cautions are on the home program sheet only: hand it out together with this page.',
  factorMissing: 'The limiting factor and your judgement are not written yet.',
  careMissing: 'The plan of care is not written yet.',
  goalMissing: 'No goal is agreed yet.',
  skillMissing: 'Why a therapist’s skill is needed is not written yet.',
  planMissing: 'The plan (go on, change or end) is not written yet.',
  afterMissing: 'The plan after discharge is not written yet.',
  noFlagOpen: 'No red flag is open. Write under “You add” why you refer.',
  noVisitToday: 'There is no visit; the page carries today’s date.',
  noVisitForNote: 'There is no visit to write a note for. Start a visit first.',
  judgementMissing:
    'Nothing is written about the skilled judgement of this visit. Add why a helper could not have done it.',
  readsTheSame: (what: string, day: string, sentence: string) =>
    `${what} reads the same as on ${day} (“${sentence}”). Say what was different this time.`,
  skilledJudgement: 'The skilled judgement',
  theResponse: 'The response',
  thePlan: 'The plan',
};
