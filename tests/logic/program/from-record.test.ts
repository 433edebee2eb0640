import { beforeEach, expect, test } from 'vitest';
import { rulesInUse } from '../../../db/rules/in-use.ts';
import type { ClientRecord } from '../../../db/types/record.ts';
import { newClient } from '../../../renderer/logic/caseload/new-client.ts';
import { noConditions } from '../../../renderer/logic/sample/carried-conditions.ts';
import { factsOf } from '../../../renderer/logic/program/facts/program-facts.ts';
import { draftProgram, programInput } from '../../../renderer/logic/program/facts/from-record.ts';
import { itemCodes } from './support.ts';

const rules = rulesInUse(null);
const id = (n: number): string => `018f7c1e-0000-4000-8000-${String(n).padStart(12, '0')}`;
const stamp = { at: '2026-03-04T09:00:00.000Z', by: 'AB' };
const visit = { clientId: id(1), visitId: id(2) };
let record: ClientRecord;

function answer(item: string, grade: 0 | 1 | 2 | 3, n: number): void {
  record.intakeAnswers.push({
    ...stamp,
    ...visit,
    id: id(n),
    item,
    side: 'right',
    state: 'graded',
    grade,
    reason: '',
    detail: null,
    before: null,
    after: null,
    note: '',
  });
}

/** A sample of `lines` lines of 8 words, read line by line. */
function sampleRead(n: number, wordsRight: number[], more: object = {}): void {
  const text = 'one two three four five six seven eight';
  record.samples.push({
    ...stamp,
    ...visit,
    id: id(n),
    takenAt: `2026-03-04T09:${String(n % 60).padStart(2, '0')}:00.000Z`,
    task: { kind: 'sentences', textCodes: [], text, spellingNoted: false },
    conditions: { ...noConditions, hand: 'right' },
    fatigueBefore: 2,
    fatigueAfter: 3,
    painBefore: 0,
    painAfter: 0,
    seconds: 240,
    baseline: true,
    typed: {},
    note: '',
    ...more,
  });
  record.readings.push({
    ...stamp,
    ...visit,
    id: id(n + 500),
    sampleId: id(n),
    readAt: stamp.at,
    reader: 'unfamiliar',
    readerInitials: 'QR',
    blind: true,
    lines: wordsRight.map((right) => ({
      intended: text,
      read: text
        .split(' ')
        .map((word, i) => (i < right ? word : 'zzz'))
        .join(' '),
      seconds: null,
    })),
    counted: null,
  });
}

beforeEach(() => {
  record = {
    client: { ...stamp, ...newClient(id(1), 'Invented Client', 'C-1'), handNow: 'right' },
    visits: [
      {
        ...stamp,
        id: id(2),
        clientId: id(1),
        date: '2026-03-04',
        kind: 'first',
        minutes: 45,
        nextVisit: '',
        told: '',
        skilled: '',
        response: '',
        taughtBack: '',
        plan: '',
      },
    ],
    intakeAnswers: [],
    redFlags: [],
    setups: [],
    samples: [],
    samplePages: [],
    pageMeasurements: [],
    inkRecordings: [],
    readings: [],
    programs: [],
    practiceLogs: [],
    goals: [],
    goalRatings: [],
    pageDrafts: [],
    issuedPages: [],
    writingOccasions: [],
    signatureChecks: [],
    spiralSheets: [],
    practicePages: [],
    trials: [],
    visitPlans: [],
  };
});

const screened = (): void => itemCodes.forEach((code, i) => answer(code, 3, 100 + i));

test('a client of whom nothing is known gets no exercise and no writing', () => {
  const draft = draftProgram(record, id(2), rules, () => id(9));
  expect(draft.lines.filter((line) => ['exercise', 'warm-up', 'writing'].includes(line.kind))).toEqual([]);
});

test('a diagnosis in free words counts as one: small writing is then no unexplained sign', () => {
  screened();
  answer('small-writing', 1, 300);
  expect(draftProgram(record, id(2), rules, () => id(9)).lines.map((line) => line.item)).toEqual([
    'other-ways',
    'refer-page',
  ]);
  record.client.diagnoses.push({ kind: null, text: 'rare syndrome, known', onset: null, side: 'none' });
  expect(programInput(record, rules).diagnoses).toEqual(['other']);
  expect(draftProgram(record, id(2), rules, () => id(9)).lines.map((line) => line.item)).toContain('fill-the-space');
});

test('what the therapist saw drives rules; a later look replaces it', () => {
  screened();
  answer('shrugging', 1, 300);
  const items = (): (string | null)[] => draftProgram(record, id(2), rules, () => id(9)).lines.map((line) => line.item);
  expect(items()).toContain('seat-and-table-line');
  record.intakeAnswers.at(-1)!.grade = 3;
  expect(items()).not.toContain('seat-and-table-line');
});

test('a row of one letter tells its shrinking (over 10 %: Zham 2019, Front Neurol 10:403) and nothing else', () => {
  const row = (loss: number) =>
    ['x-height', 'first-last-five'].map((code, i) => ({
      code,
      value: i === 0 ? 9 : loss,
      unit: i === 0 ? 'mm' : '%',
      n: 15,
      low: null,
      high: null,
      spread: null,
      method: 'test',
    }));
  sampleRead(10, [8], { task: { kind: 'repeated-letter', textCodes: [], text: '', spellingNoted: false } });
  record.readings = [];
  const page = { ...stamp, id: id(20), clientId: id(1), sampleId: id(10), order: 0 };
  record.samplePages = [page as ClientRecord['samplePages'][number]];
  const measured = (loss: number): void => {
    const result = { lines: [], measures: row(loss) } as unknown as ClientRecord['pageMeasurements'][number]['result'];
    record.pageMeasurements = [
      { ...stamp, id: id(21), pageId: id(20), sampleId: id(10), result } as ClientRecord['pageMeasurements'][number],
    ];
  };
  const shrinking = (): number | undefined => {
    const found = factsOf(programInput(record, rules), rules).findings.get('shrinking');
    return found?.state === 'graded' ? found.grade : undefined;
  };
  measured(11);
  expect(programInput(record, rules).measures.map((m) => m.code)).not.toContain('x-height');
  expect(shrinking()).toBe(2);
  measured(9);
  expect(shrinking()).toBe(3);
});

test('legibility, speed and rises come from the last sample that was read', () => {
  sampleRead(10, [8, 8, 8, 8]);
  sampleRead(11, [4, 4, 4, 4]);
  const codes = Object.fromEntries(programInput(record, rules).measures.map((each) => [each.code, each.value]));
  expect(codes).toMatchObject({
    legibility: 50,
    'legibility-copy': 50,
    'words-per-minute': 4,
    'fatigue-rise': 1,
    'pain-rise': 0,
  });
});

test('one lost word a line is no fall, two are', () => {
  screened();
  sampleRead(10, [8, 8, 7, 7, 7, 7]);
  const bouts = (): boolean =>
    draftProgram(record, id(2), rules, () => id(9)).lines.some((line) => line.item === 'bouts-with-rest');
  expect(bouts()).toBe(false);
  sampleRead(11, [8, 8, 8, 6, 5, 5]);
  expect(bouts()).toBe(true);
});

test('ruler readings count: own size before the onset, gaps, spread', () => {
  screened();
  sampleRead(10, [8, 8, 8, 8], {
    typed: {
      'x-height': [1.5, 1.5, 1.6],
      'x-height-before': [2.6],
      'word-gap-mm': [3, 3, 3, 3, 3],
      'letter-gap-mm': [1.5, 1.5],
    },
  });
  const codes = Object.fromEntries(programInput(record, rules).measures.map((each) => [each.code, each.value]));
  expect(codes).toMatchObject({
    'x-height': 1.5,
    'x-height-before': 2.6,
    'gap-ratio': 2,
    'letter-gap': 1,
    'word-gap-cv': 0,
  });
  record.client.diagnoses.push({ kind: 'parkinson', text: '', onset: null, side: 'none' });
  const items = draftProgram(record, id(2), rules, () => id(9)).lines.map((line) => line.item);
  expect(items).toEqual(expect.arrayContaining(['fill-the-space', 'lift-between-letters']));
});

test('cautions that nobody knows are left out; joined writing and a grip show in the sample', () => {
  record.client.precautions.push(
    { code: 'fragile-skin', text: '' },
    { code: 'ghost', text: '' },
    { code: null, text: 'x' },
  );
  sampleRead(10, [8], { conditions: { ...noConditions, style: 'joined', grip: 'soft sleeve' } });
  expect(programInput(record, rules).cautions).toEqual(['fragile-skin', 'writes-joined', 'grip-aid']);
});

test('interests in the client’s own words choose the text', () => {
  screened();
  record.client.interests = 'Gardening, and long walks';
  sampleRead(10, [5, 5, 5, 5]);
  expect(programInput(record, rules).interests).toContain('garden');
  expect(draftProgram(record, id(2), rules, () => id(9)).lines.map((line) => line.item)).toContain('text-garden-words');
});

test('after an approved program the client stays on its rung until a step is accepted', () => {
  screened();
  sampleRead(10, [8, 8, 8, 8]);
  const first = draftProgram(record, id(2), rules, () => id(9));
  expect(first.tier).toBe(4);
  const lines = first.lines.map((line) =>
    line.item?.startsWith('paper-') ? { ...line, item: 'paper-dashed-10' } : line,
  );
  record.programs.push({
    ...stamp,
    ...first,
    tier: 3,
    lines,
    status: 'approved',
    approvedAt: stamp.at,
    approvedBy: 'AB',
  });
  const next = draftProgram(record, id(2), rules, () => id(10));
  expect(next.tier).toBe(3);
  expect(next.lines.map((line) => line.item)).toContain('paper-dashed-10');
});
