/** What the screen found, and what may start. */
const reasons: Record<string, string> = {
  'No time today': 'No time today',
  'Too tired': 'Too tired',
  Pain: 'Pain',
  'Client preferred not to': 'Client preferred not to',
  'Could not follow the task': 'Could not follow the task',
  'Nothing to test with': 'Nothing to test with',
};

export const findingsToldEn = {
  side: { right: ', right', left: ', left', both: ', both sides', none: '' },
  notIndicated: (name: string) => `${name}: not indicated.`,
  notTested: (name: string, reason: string) => `${name}: not tested${reason === '' ? '' : ` (${reason})`}.`,
  graded: (name: string, grade: number, anchor: string) => `${name}: ${grade} of 3. ${anchor}`,
  notAskedYet: 'not asked yet',
  notAsked: (name: string) => `${name}: not asked yet.`,
  /** Usual reasons, by how they are stored. */
  reasons,
  untested: (title: string) => `“${title}” is not tested.`,
  low: (title: string, grade: number) => `“${title}” is ${grade} of 3.`,
  nothingAgainst: 'Nothing found against it.',
  seatingFirst: 'Seating comes before writing.',
  setUp: 'Set up seat and table',
  everyone: 'Everyone is asked this.',
  openedByYou: 'Opened by you.',
  answeredBefore: 'Answered before.',
  state: { asked: 'asked', running: 'running', rated: 'rated', fiveMinutes: '5 minutes', measured: 'measured' },
  hand: { right: 'right', left: 'left', both: 'both', none: '' },
  turned: { clockwise: 'clockwise', 'counter-clockwise': 'counter-clockwise' },
  keys: {
    score: (grade: number) => `Score ${grade}`,
    notTestedBecause: (reason: string) => `Not tested: ${reason}`,
    backToItem: 'Back to the item',
    notTestedWithReason: 'Not tested, with a reason',
    notIndicated: 'Not indicated',
    next: 'Next item',
    before: 'Item before',
    side: (hand: string) => `Side: ${hand}`,
  },
};
