/** Goals: the sentence of a goal, its levels, the next step and why. */
export const goalsToldEn = {
  levelNames: {
    [-2]: 'much less than expected',
    [-1]: 'less than expected',
    0: 'as expected',
    1: 'more than expected',
    2: 'much more than expected',
  } as Record<number, string>,
  percentOfWords: '% of words',
  wordsOf: (words: number) => `words of ${words}`,
  wordsOfTogether: (words: number, tries: number) => `words of ${words} (${tries} tries together)`,
  fewerThan: (value: number, unit: string) => `fewer than ${value} ${unit}`,
  to: (low: number, high: number, unit: string) => `${low} to ${high} ${unit}`,
  orMore: (value: number, unit: string) => `${value} ${unit} or more`,
  mustBeNumbers: 'Baseline and expected level must be numbers.',
  expectedAbove: 'The expected level must lie above the baseline.',
  stepTooSmall: (unit: string) =>
    `The step is smaller than one ${unit}. Choose a higher expected level, or a longer task.`,
  topTooHigh: (value: number, unit: string, max: number, most: number) =>
    `Level +2 would be ${value} ${unit}, above ${max}. Set the expected level at ${most} or lower, or choose a longer task.`,
  tooNarrow: (tries: number, words: number, width: number, longer: number | null) =>
    `Judged by ${tries === 1 ? 'one try' : `${tries} tries together`} of ${words} words, a level must be at least ${width} points wide, or it is reached by chance: ` +
    `${longer === null ? 'count more tries together' : `write at least ${longer} words a try`}, or set the expected level lower.`,
  noText: (levels: string) => `Level ${levels} has no text yet.`,
  noNumber: (levels: string) =>
    `Level ${levels} has no number, so overlap cannot be checked. Begin it with a number, for example "6 to 8 words".`,
  twoVariables: 'The levels name more than one variable. Keep one, and put the rest into the goal itself.',
  doNotRise: (a: string, b: string) => `Levels ${a} and ${b} do not rise.`,
  overlap: (a: string, b: string) => `Levels ${a} and ${b} overlap.`,
  hole: (a: string, b: string) => `Between levels ${a} and ${b} there is a hole.`,
  notEqual: 'The levels are not equally spaced.',
  firstRung: 'No sample has been read yet: this is the first rung. A sample that was read fits it to this hand.',
  seen: (samples: number, low: number, high: number) =>
    `The last ${samples === 1 ? 'sample shows' : `${samples} samples show`} ${low === high ? `${low} %` : `${low} to ${high} %`} of words read`,
  readyForNext: (seen: string, output: string) => `${seen} with ${output}: ready for the next rung.`,
  passes100: (seen: string, points: number) =>
    `${seen}. A step that measurement could tell (${points} points) would pass 100 %: climb by more writing or less help instead.`,
  lessThanWord: (seen: string, output: string) => `${seen} with ${output}, less than one word below this rung’s mark.`,
  nextStepIs: (seen: string, target: number, mdc: number | null) =>
    `${seen}; the next step is ${target} %${mdc === null ? '' : `, more than the ${mdc} points that two samples of an unchanged hand differ`}.`,
  stepAgreed: 'This step is agreed and worked on.',
  firstStep: 'The first step of what the client wants to write.',
  wasMet: (output: string) => `“${output}” was met.`,
  success: (right: number, of: number, percent: number) => `${right} of about ${of} words read (${percent} % or more).`,
  successBy: {
    exact: 'every word and digit is exact',
    accepted: 'it is accepted in use; where and when are noted',
  },
  tellsApart: (right: number, of: number) =>
    `a second person tells at least ${right} of ${of} pairs of signatures right`,
  somethingUnnamed: 'something not named yet',
  cue: { none: 'without cues', visual: 'with a visual cue', verbal: 'with one spoken cue' },
  reader: { unfamiliar: 'an unfamiliar reader', family: 'a family reader' },
  by: (day: string) => `By ${day} `,
  willWrite: (who: string, output: string, words: number | null, paper: string, aid: string, cue: string) =>
    `${who} will write ${output}${words === null ? '' : ` (about ${words} words)`}${paper ? ` on ${paper}` : ''}${aid ? ` with ${aid}` : ''}, ${cue}`,
  soThat: (success: string) => `, so that ${success}`,
  onTries: (need: number, of: number) => `, on ${need} of ${of} tries`,
  reads: (reader: string, percent: number, counted: string) =>
    `, so that ${reader} reads ${percent} % of the words${counted}`,
  /** The count first: a share of few words is no whole number of them, so the level stands as the least. */
  readsWords: (reader: string, counted: string, percent: number, tries: string) =>
    `, so that ${reader} reads ${counted} words (${percent} % or more${tries})`,
  triesTogether: (of: number) => `${of} tries together`,
  atStart: (day: string, baseline: string) => `; at the start (${day}): ${baseline}`,
  because: (reason: string) => `; because: ${reason}`,
  missing: {
    output: 'what is written',
    paper: 'paper',
    percent: 'how many words are to be read',
    date: 'a date',
    start: 'the start level',
    why: 'why it matters to the client',
    tries: 'tries that are possible (more are needed than there are)',
  },
  status: { active: '', met: 'met', revised: 'revised', dropped: 'dropped' },
  acceptedIn: (where: string) => ` Accepted in use: ${where}.`,
  placeNotNoted: 'place not noted',
  pairsJudged: (said: number, of: number) => `${said} of ${of} pairs are judged; what is there is kept.`,
  toldApart: (right: number, of: number) => `${right} of ${of} pairs told right: the signature can be told apart.`,
  notToldApart: (right: number, of: number, needed: number) =>
    `${right} of ${of} pairs told right, ${needed} are needed: practice goes on.`,
};
