/** A series and what each of its points says. */
const titled = (title: string, point: (value: number) => string): [string, (value: number) => string] => [title, point];

/** Words read and fatigue over time: series, marks, rows, notes and the numbers behind a verdict. */
export const courseEn = {
  readers: { unfamiliar: 'unfamiliar reader', family: 'family reader', therapist: 'therapist, not blind' },
  manyReaders: {
    unfamiliar: (n: number) => `${n} unfamiliar readers`,
    family: (n: number) => `${n} family readers`,
    therapist: (n: number) => `${n} therapists, not blind`,
  },
  notBlind: (readers: string) => `${readers}, not blind`,
  wordsAndReaders: (right: string, words: number, readers: string) => `${right} of ${words} words, ${readers}`,
  wordsReadBy: {
    unfamiliar: 'Words read, unfamiliar reader',
    family: 'Words read, family reader',
    therapist: 'Words read, therapist, not blind',
    probe: 'Words read, plain paper without cues',
  },
  fatigue: {
    before: titled('Fatigue before writing, visit', (value) => `fatigue before ${value} of 10`),
    after: titled('Fatigue after writing, visit', (value) => `fatigue after ${value} of 10`),
    homeBefore: titled('Fatigue before practice, home log', (value) => `at home, fatigue before ${value} of 10`),
    homeAfter: titled('Fatigue after practice, home log', (value) => `at home, fatigue after ${value} of 10`),
  },
  goal: (percent: number, output: string) => `Goal: ${percent} % of words, ${output}`,
  programStarts: (tier: number) => `Program starts, tier ${tier}`,
  programChanged: (tier: number) => `Program changed, tier ${tier}`,
  otherConditions: (names: string) => `Other ${names}`,
  /** Dates below the chart, as date-fns writes them. */
  axis: { day: 'MMM d', month: 'MMM yyyy' },
  changes: (n: number) => `${n} changes`,
  noSample: 'There is no writing sample yet. Take one at a visit, then it shows here.',
  noneInSpan: 'There is no sample in this span. Choose a longer one.',
  unread: (n: number) =>
    n === 1
      ? 'One sample has not been read yet: its legibility is not known.'
      : `${n} samples have not been read yet: their legibility is not known.`,
  orphans: (n: number) =>
    `${n === 1 ? 'One reading belongs' : `${n} readings belong`} to a sample that was removed and is not counted.`,
  kindsOfReaders: 'Different kinds of readers have read; only the least familiar kind is compared.',
  probe: 'Probe without cues',
  baseline: 'Baseline sample',
  sample: 'Sample',
  notRead: 'not read yet',
  homePractice: 'Home practice',
  columns: [
    'Date',
    'What',
    'Words read',
    'Words written',
    'Percent',
    'Low (95 %)',
    'High (95 %)',
    'Reader',
    'Fatigue before (0-10)',
    'Fatigue after (0-10)',
    'Pain after (0-10)',
    'Minutes',
    'Note',
  ],
  spans: {
    all: 'since the beginning',
    '30': 'the last month',
    '91': 'the last 3 months',
    '365': 'the last year',
  },
  wordsRead: 'Words read',
  aboutThenNow: (before: number, now: number, of: number) => `about ${before} of ${of} words, now ${now}`,
  ofWords: (right: string, words: number) => `${right} of ${words} words`,
  fatigueAfter: 'Fatigue after writing',
  ofTen: 'of 10; 10 is as tired as can be',
  change: (mid: string, low: string, high: string, held: string, more: string) =>
    `Change most likely ${mid} points; with a chance of ${held} % between ${low} and ${high}. Chance of more than before: ${more} %.`,
  numbers: {
    range: (mid: string, low: string, high: string) => `${mid} points (${low} points to ${high} points)`,
    moreThan: (percent: string) => `more than ${percent} %`,
    lessThan: (percent: string) => `less than ${percent} %`,
    level: 'Before, and now',
    levelHow: (before: number, now: number, decay: string) =>
      `level behind ${before} and ${now} visits, percent of words; a later visit counts for more (${decay} for each visit after it)`,
    change: 'Change',
    changeHow: (held: string) => `the interval holds the true change with a chance of ${held} %`,
    chance: 'Chance of more, of less',
    chanceHow: (sure: string, leaning: string) => `“yes” is said from ${sure} %, “probably” from ${leaning} %`,
    steady: (points: number) => `Chance of a change under ${points} points`,
    steadyHow: (chance: string) => `“about the same” is said from ${chance} %`,
    spread: 'From day to day',
    spreadHow:
      'standard deviation between visits, logit of the share of words; from this client and the clinic’s repeat pairs',
    smallest: 'Smallest change that counts',
    smallestValue: (mdc: string, callable: string) => `${mdc} points; ${callable} points are called in 8 of 10 clients`,
    smallestHow: (words: number) => `so many visits of ${words} words; longer texts and more visits make it smaller`,
    method: 'Method',
    methodHow: 'its error rates were simulated: see the guide',
  },
};
