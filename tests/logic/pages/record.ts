/** An invented client with three visits, for page tests. */
import { shippedItems, shippedSetup } from '../../../db/rules/screen/items-schema.ts';
import type { Dose, Program, ProgramLine } from '../../../db/types/program.ts';
import { ClientRecord } from '../../../db/types/record.ts';
import { limits } from '../../limits.ts';
import type { PageInput } from '../../../renderer/logic/pages/sheet/page-facts.ts';

let count = 0;
export const id = (n: number = ++count): string => `00000000-0000-4000-8000-${n.toString(16).padStart(12, '0')}`;

export const clientId = id(0xc0);
export const visitIds = [id(0xa1), id(0xa2), id(0xa3)] as const;
const stamp = { at: '2026-03-04T09:00:00.000Z', by: 'JM' };

const dose = (minutes: number, more: Partial<Dose> = {}): Dose => ({
  minutes,
  sets: null,
  reps: null,
  lines: null,
  restMinutes: null,
  timesPerDay: 1,
  daysPerWeek: 5,
  form: 'timed',
  how: '',
  text: '',
  ...more,
});

export const programLine = (more: Partial<ProgramLine>): ProgramLine => ({
  id: id(),
  item: null,
  kind: 'writing',
  tier: 2,
  version: null,
  keys: null,
  title: 'Lists',
  text: 'Write a list.',
  dose: dose(5),
  rule: 'R01',
  findings: [],
  source: 'common-practice',
  sourceNote: '',
  cautions: [],
  because: '',
  until: '',
  edited: false,
  override: null,
  ...more,
});

const lines: ProgramLine[] = [
  programLine({
    kind: 'setup',
    title: 'Chair and table',
    text: 'Sit so that both feet are flat and the arm lies on the table.',
    dose: dose(0),
  }),
  programLine({
    kind: 'warm-up',
    item: 'slow-opening',
    title: 'Open the hand slowly',
    text: 'Lay the hand flat on the table. Count to 30. Do not push.',
    dose: dose(3, { sets: 1, reps: 3 }),
    cautions: ['Never force the fingers. If the hand clenches, open it slowly.'],
  }),
  programLine({
    item: 'close-then-lift',
    title: 'The letters a, d, g and q',
    text: 'Write one line of each. Close every round part, then lift the pen.',
    dose: dose(5, { lines: 4, restMinutes: { least: 2, most: 2 } }),
  }),
  programLine({
    title: 'Shopping list',
    text: 'Write five things to buy. Leave a wide gap between words.',
    dose: dose(6, { lines: 5 }),
  }),
  programLine({
    title: 'A note to a neighbor',
    text: 'Write two lines in your own words.',
    dose: dose(6, { lines: 2 }),
  }),
  programLine({
    kind: 'paper',
    title: 'dashed paper, 10 mm',
    text: 'Small letters fill the lower half.',
    dose: dose(0),
  }),
  programLine({
    kind: 'tool',
    title: 'felt pen with a soft sleeve',
    text: 'Look at the skin of the fingers after each use.',
    dose: dose(0),
  }),
  programLine({
    kind: 'advice',
    title: 'Rest before you tire',
    text: 'Two short times are better than one long one.',
    dose: dose(0),
  }),
];

const program: Program = {
  ...stamp,
  id: id(0xb1),
  clientId,
  visitId: visitIds[2],
  status: 'approved',
  ruleVersion: '2026.1',
  tier: 3,
  lines,
  vetoed: [],
  note: '',
  approvedAt: '2026-04-15T10:00:00.000Z',
  approvedBy: 'JM',
};

const conditions = {
  hand: 'right',
  pen: 'felt pen',
  paper: 'ruled 8.7 mm',
  time: '10:30',
  doseState: 'on',
  cue: 'none',
  minutesSinceDose: 60,
  surfaceAngleDeg: 0,
  seatMm: 450,
  tableMm: 720,
  armSupport: 'forearm on table',
  grip: '',
  glasses: 'worn',
  instruction: 'usual',
  style: 'print',
} as const;

const dates = ['2026-03-04', '2026-03-25', '2026-04-15'] as const;
const right = [12, 15, 18] as const;

/** The whole record, checked against the stored shapes. */
export function record(change: (r: ClientRecord) => void = () => undefined): ClientRecord {
  const made = ClientRecord.parse({
    client: {
      ...stamp,
      id: clientId,
      code: 'C-014',
      name: 'Mara Lindqvist',
      birthYear: 1951,
      handBefore: 'right',
      handNow: 'right',
      diagnoses: [{ kind: 'parkinson', text: 'Parkinson’s disease', onset: '2021-05-01', side: 'right' }],
      precautions: [],
      medicines: [{ name: 'levodopa', times: ['08:00', '12:00', '17:00'], note: '' }],
      referrer: 'Dr. A. Example, neurology',
      readers: 'her sister',
      wants: 'shopping lists, cards',
      interests: 'garden, cooking',
      callName: 'Jo at the clinic',
      callNumber: '555 0100',
      language: 'en',
      largePrint: '14',
      familyConsent: true,
      familyConsentOn: '2026-03-04',
      note: '',
      archivedOn: null,
    },
    visits: dates.map((date, i) => ({
      ...stamp,
      id: visitIds[i],
      clientId,
      date,
      kind: i === 0 ? 'first' : 'retest',
      minutes: 45,
      nextVisit: 'April 22, 10:30',
      told: i === 2 ? 'She says her sister now reads her lists.' : '',
      skilled: i === 2 ? 'Graded line length and taught her to reset her hand.' : '',
      response: i === 2 ? 'Size held to the fourth line with one cue.' : '',
      taughtBack: i === 2 ? 'Showed the warm-up and both lists without help.' : '',
      plan: i === 2 ? 'Go on, two more weeks.' : '',
    })),
    // Well-made letters would be no goal: that item is asked only where words are hard.
    intakeAnswers: shippedItems.items
      .filter(({ code }) => code !== 'motor-letters')
      .map((item) => ({
        ...stamp,
        id: id(),
        clientId,
        visitId: visitIds[0],
        item: item.code,
        side: item.asksSide ? 'right' : 'none',
        state: 'graded',
        grade: 3,
        reason: '',
        detail: null,
        before: null,
        after: null,
        note: '',
      })),
    redFlags: [],
    setups: [
      {
        ...stamp,
        id: id(0xd1),
        clientId,
        visitId: visitIds[0],
        popliteal: 390,
        elbow: 235,
        shoe: 25,
        table: 735,
        tableAdjustable: false,
        tableThickness: 25,
        thigh: 150,
        slantRise: null,
        slantLength: null,
        hand: 'right',
        purpose: 'writing',
        units: 'mm',
        note: '',
      },
    ],
    samples: dates.map((date, i) => ({
      ...stamp,
      id: id(0xe0 + i),
      clientId,
      visitId: visitIds[i],
      takenAt: `${date}T10:30:00.000Z`,
      task: { kind: 'sentences', textCodes: ['F1', 'F3', 'F5'], text: '', spellingNoted: false },
      conditions,
      fatigueBefore: 2,
      fatigueAfter: 4 - i,
      painBefore: 0,
      painAfter: 0,
      seconds: 240 - 20 * i,
      baseline: i === 0,
      typed: {},
      note: '',
    })),
    samplePages: [],
    pageMeasurements: [],
    readings: dates.map((date, i) => ({
      ...stamp,
      id: id(0xf0 + i),
      clientId,
      visitId: visitIds[i],
      sampleId: id(0xe0 + i),
      readAt: `${date}T12:00:00.000Z`,
      reader: 'unfamiliar',
      readerInitials: 'KB',
      blind: true,
      lines: [],
      counted: { right: right[i], of: 24 },
    })),
    programs: [program],
    practiceLogs: ['2026-04-08', '2026-04-09', '2026-04-11'].map((date) => ({
      ...stamp,
      id: id(),
      clientId,
      date,
      minutes: 20,
      lines: 10,
      fatigueBefore: 2,
      fatigueAfter: 4,
      pain: 0,
      breaks: 2,
      paper: 'dashed 10',
      grip: '',
      note: '',
    })),
    goals: [
      {
        ...stamp,
        id: id(0x91),
        clientId,
        output: 'A shopping list of five things',
        paper: 'ruled 8.7 mm',
        aid: 'felt pen',
        cue: 'none',
        reader: 'unfamiliar',
        wordsOf: 10,
        percent: 90,
        tries: { of: 3, need: 2 },
        dueOn: '2026-05-27',
        setOn: '2026-03-04',
        baseline: '50 % (5 of 10) on March 4',
        because: 'I want my sister to shop from my list.',
        levels: ['', '', '', '', ''],
        weight: 1,
        nextStep: 'a list of three things',
        replaces: null,
        status: 'active',
      },
    ],
    goalRatings: [],
    issuedPages: [],
    writingOccasions: [],
    signatureChecks: [],
    spiralSheets: [],
    practicePages: [],
    trials: [],
    visitPlans: [],
  });
  change(made);
  return made;
}

export function input(more: Partial<PageInput> = {}): PageInput {
  return {
    record: record(),
    visitId: visitIds[2],
    today: '2026-04-15',
    locale: 'en-US',
    sheet: 'A4',
    clinic: { name: 'Harbor Street Clinic', therapist: 'J. Moreno', credentials: 'OTR/L' },
    useCode: false,
    setupTable: shippedSetup,
    limits,
    ...more,
  };
}
