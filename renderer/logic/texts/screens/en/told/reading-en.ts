/** Read back: what waits, who knows a text, how far two readers agree, own spellings. */
export const readingEn = {
  linesWaiting: (n: number) =>
    n === 0 ? 'No lines are waiting to be read.' : n === 1 ? '1 line waiting' : `${n} lines waiting`,
  wordsRead: (right: string, words: number, percent: string) => `${right} of ${words} words read (${percent})`,
  of: (right: string, words: number) => `${right} of ${words}`,
  baseline: 'baseline',
  readersAgree: (same: number, words: number) =>
    `The two readers agree: the same answer for ${same} of ${words} words.`,
  readersDiffer: (same: number, words: number) =>
    `The two readers differ; a third reading would help: the same answer for ${same} of ${words} words.`,
  textKnown: (samples: number, times: number, day: string) =>
    `${samples === 1 ? 'The text of one waiting sample is' : `The texts of ${samples} waiting samples are`} known to this reader: met ${times === 1 ? 'once' : `up to ${times} times`}, last on ${day}.`,
  takenByReader: (n: number) =>
    n === 1 ? 'One of them was taken by this person.' : `${n} of them were taken by this person.`,
  sameTextTwice: 'Some waiting samples have the same text: the second is read with the first in mind.',
  whoKnowsReadsMore:
    'Who knows a text reads more of it than is written. Ask somebody else where you can; each reading keeps how often.',
  spelling: {
    bothWords: 'Type both words: the one meant, and how the client spells it. Nothing was noted.',
    oneWord: 'One word on each side: a gap that was lost is counted as a gap, not as spelling. Nothing was noted.',
    same: 'Both are the same word. Nothing was noted.',
    known: 'This spelling is noted already.',
    most: (n: number) => `At most ${n} spellings can be noted for one sample. Nothing was noted.`,
    notInText: 'Neither word stands in the text of this sample. Check the text under Sample. Nothing was noted.',
  },
  sizeUnknown: 'at a size not known',
  trueSize: 'at true size',
  timesAsLarge: (times: string) => `${times} times as large as written`,
};
