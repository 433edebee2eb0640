import { expect, test } from 'vitest';
import { rulesInUse } from '../../../db/rules/in-use.ts';
import { shippedItems } from '../../../db/rules/screen/items-schema.ts';
import type { Care } from '../../../db/types/client.ts';
import { counters, noCare, sinceLastReport } from '../../../renderer/logic/pages/kinds/care.ts';
import { initialEvaluation } from '../../../renderer/logic/pages/kinds/initial-evaluation.ts';
import type { PageInput } from '../../../renderer/logic/pages/sheet/page-facts.ts';
import { familyPage } from '../../../renderer/logic/pages/kinds/family.ts';
import { textsOf } from '../../../renderer/logic/pages/sheet/fit-sheets.ts';
import type { DocSheet } from '../../../renderer/logic/pages/sheet/packet.ts';
import { emptyWords } from '../../../renderer/logic/pages/sheet/page-choices.ts';
import { comeBackWhen, dischargeSummary, progressReport } from '../../../renderer/logic/pages/kinds/progress-report.ts';
import { repeatedSentence } from '../../../renderer/logic/pages/practice/repeated-sentence.ts';
import { texts } from '../../../renderer/logic/texts/en.ts';
import { packetText, visitNote } from '../../../renderer/logic/pages/kinds/visit-note.ts';
import { line, loops, recordingOf } from '../sample/ink-facts.ts';
import { input, record, visitIds } from './record.ts';
import { toldEnglish } from '../../../renderer/logic/texts/screens/told-english.ts';

const withCare = (care: Partial<Care>, more: Parameters<typeof record>[0] = () => undefined) =>
  input({
    record: record((r) => {
      r.client.care = { ...noCare, ...care };
      more(r);
    }),
  });
const said = (care: Partial<Care>) => counters(withCare(care), 'en-US', toldEnglish.paper);

test('without an interval nothing is due; the counter still counts', () => {
  const [first, ...rest] = counters(input(), 'en-US', toldEnglish.paper);
  expect(first!.text).toMatch(/^3 visits and \d+ days since the start of care\.$/);
  expect(first!.due).toBe(false);
  expect(rest).toEqual([]);
});

test('intervals are the clinic’s own: by visits, by days, or both, and due when the first is reached', () => {
  expect(said({ reportEveryVisits: 10, reportEveryDays: 90 })[0]).toMatchObject({ due: false });
  expect(said({ reportEveryVisits: 10, reportEveryDays: 90 })[0]!.text).toContain('due after 10 visits or 90 days');
  expect(said({ reportEveryVisits: 3, reportEveryDays: 90 })[0]).toMatchObject({ due: true });
  expect(said({ reportEveryDays: 1 })[0]!.text).toContain('a report is due now');
});

test('authorized visits and certification run out with a plain sentence', () => {
  expect(said({ authorizedVisits: 12 })[1]).toEqual({ text: '3 of 12 authorized visits used, 9 left.', due: false });
  expect(said({ authorizedVisits: 3 })[1]).toMatchObject({ due: true });
  expect(said({ authorizedVisits: 2 })[1]!.text).toBe('3 visits used, 1 more than the 2 authorized.');
  expect(said({ certifiedUntil: '2026-05-01' })[1]).toMatchObject({ due: false });
  expect(said({ certifiedUntil: '2026-04-01' })[1]!.text).toMatch(
    /^Certification ended on April 1, 2026, \d+ days ago\.$/,
  );
});

test('an issued report starts the count anew; the visit it was issued at is not counted twice', () => {
  const issued = withCare({}, (r) =>
    r.issuedPages.push({
      id: visitIds[0],
      at: '2026-03-25T12:00:00.000Z',
      by: 'JM',
      clientId: r.client.id,
      visitId: visitIds[1],
      kind: 'progress-report',
      issuedAt: '2026-03-25T12:00:00.000Z',
      model: {},
      pdf: null,
    }),
  );
  const since = sinceLastReport(issued);
  expect(since.visits.map((visit) => visit.id)).toEqual([visitIds[2]]);
  expect(since.from).toBe(issued.record.visits.find((visit) => visit.id === visitIds[1])!.date);
});

test('report and discharge print what payers ask for, and only what was noted', () => {
  const full = withCare(
    {
      startOn: '2026-03-01',
      payer: 'Harbor Fund',
      codes: 'H-7',
      authorizedVisits: 12,
      certifiedUntil: '2026-04-02',
      priorLevel: 'wrote all her own letters',
      potential: 'good with daily practice',
      outsideTests: [{ name: 'Grip strength', score: '18 kg', on: '2026-03-10' }],
      missedVisits: [{ on: '2026-04-01', reason: 'ill' }],
    },
    (r) => r.visits.forEach((visit) => (visit.units = 3)),
  );
  const words = emptyWords().report;
  const report = progressReport(full, words, shippedItems);
  const text = packetText(report);
  for (const part of ['March 1, 2026', 'Harbor Fund', 'H-7', 'wrote all her own letters', 'good with daily practice'])
    expect(text).toContain(part);
  expect(text).toContain('9 timed units');
  expect(text).toContain('Visits missed: 1 (April 1, 2026: ill).');
  expect(text).toContain('Grip strength, March 10, 2026: 18 kg');
  expect(report.warnings.join(' ')).toContain('Certification ended');
  const discharge = packetText(dischargeSummary(full, words, comeBackWhen, shippedItems));
  expect(discharge).toContain('Visits missed: 1');
  expect(discharge.toUpperCase()).toContain('COME BACK WHEN');
  const bare = packetText(progressReport(input(), words, shippedItems));
  for (const part of ['Payer', 'Codes', 'timed unit', 'missed', 'elsewhere', 'Certified until'])
    expect(bare).not.toContain(part);
});

test('a late addendum prints after the note with date and initials', () => {
  const late = withCare({}, (r) => {
    r.visits[2]!.addenda = [{ at: '2026-04-16T08:00:00.000Z', by: 'JM', text: 'The client called: pen too thick.' }];
  });
  expect(packetText(visitNote(late, shippedItems))).toContain('April 16, 2026, JM: The client called: pen too thick.');
});

test('pen motion is said in a sentence in note and report: what was seen, no diagnosis', () => {
  const written = record((r) => {
    const visit = r.visits.at(-1)!;
    const taken = r.samples.find(({ visitId }) => visitId === visit.id) ?? r.samples.at(-1)!;
    const of = { clientId: r.client.id, visitId: visit.id, sampleId: taken.id, startedAt: '2026-03-18T09:20:00.000Z' };
    r.inkRecordings = [
      recordingOf(loops(0.02, 1), of),
      recordingOf(line({ hz: 4.8, amplitudeMm: 0.5 }), { ...of, hand: 'left' }),
      recordingOf(line({ hz: 4.8, amplitudeMm: 0.5 }), { ...of, hand: 'left' }),
    ];
  });
  const whole = input({ record: written });
  const note = packetText(visitNote(whole, shippedItems));
  expect(note).toMatch(/joined loops, right hand \(pen, on the glass of a screen\): \d+ % smaller over the line/);
  expect(note).toContain('1 long stop');
  expect(note).toContain('left hand (pen, on the glass of a screen): A steady rhythm at 4.8 Hz');
  expect(note.match(/A steady rhythm/g)).toHaveLength(1);
  expect(note).toContain('So in each of 2 bouts.');
  expect(packetText(progressReport(whole, emptyWords().report, shippedItems))).toContain('A steady rhythm at 4.8 Hz');
  expect(note).not.toMatch(/Parkinson|tremor|freezing/i);
});

test('a sentence of judgement that stands in an earlier note is found, in other order and case too', () => {
  const before = 'Graded the cue to one word. Chose a wider pen because the grip tired early!';
  expect(repeatedSentence('Chose a wider pen because the grip tired early.', before, 80)).toBe(
    'Chose a wider pen because the grip tired early.',
  );
  expect(repeatedSentence('New pen today. Because the grip tired early, chose a wider pen.', before, 80)).toContain(
    'Because the grip',
  );
  expect(repeatedSentence('Chose a thinner pen because the ring finger hurt.', before, 80)).toBeNull();
  expect(repeatedSentence('Good day.', 'Good day.', 80)).toBeNull();
  expect(repeatedSentence('', before, 80)).toBeNull();
});

test('two therapists at one client: the note names both, the family reads nothing of it', () => {
  const shared = record((r) => {
    for (const sample of r.samples) if (sample.visitId === input().visitId) sample.by = 'KT';
  });
  expect(packetText(visitNote(input({ record: shared }), shippedItems))).toContain('therapist (JM, then KT)');
  const options = { pt: 14 as const, pictures: [], when: '', bring: '', ownWords: '' };
  const saw = (from: PageInput) => textsOf(familyPage(from, options, texts).sheets[0] as DocSheet).join(' ');
  expect(saw(input({ record: shared }))).toBe(saw(input()));
});

test('the first note says what the screen found and how the seat is set, and speaks of no practice before it', () => {
  const first = input({
    visitId: visitIds[0],
    record: record((r) => {
      for (const answer of r.intakeAnswers) {
        if (answer.item === 'seating') answer.grade = 1;
        if (answer.item === 'touch') Object.assign(answer, { state: 'not-tested', grade: null, reason: 'tired' });
      }
    }),
  });
  const note = packetText(visitNote(first, shippedItems));
  const titleOf = (code: string) => shippedItems.items.find((item) => item.code === code)!.title;
  expect(note).toContain('FOUND AT THE SCREEN');
  expect(note).toContain(`${titleOf('seating')}: 1 of 3.`);
  expect(note).toContain(`${titleOf('touch')}, right: not tested (tired)`);
  expect(note).toMatch(/No difficulty: .+\./);
  expect(note).toMatch(/Seat \d+( \d\/\d)? in \(\d+ cm\), table/);
  expect(note).not.toMatch(/home practice/i);
  // A later visit that asked nothing says nothing of it.
  expect(packetText(visitNote(input(), shippedItems))).not.toContain('FOUND AT THE SCREEN');
});

test('the report names what came into the home program and what went', () => {
  const changed = withCare({}, (r) => {
    const [now] = r.programs;
    const before = { ...now!, id: visitIds[1], visitId: visitIds[0], tier: 2 as const, lines: now!.lines.slice(0, 3) };
    r.programs = [before, { ...now!, lines: now!.lines.slice(1) }];
  });
  const words = { ...emptyWords().report, skilled: 'Own judgement.' };
  const report = packetText(progressReport(changed, words, shippedItems));
  expect(report).toContain('April 15, 2026: tier 2 to 3; new: Shopping list, A note to a neighbor.');
  expect(packetText(progressReport(input(), words, shippedItems))).not.toMatch(/changes of the home program/i);
});

test('the evaluation starts the judgement from items scored 0 or 1 and gives the minutes of the program', () => {
  const weak = withCare({}, (r) => {
    for (const answer of r.intakeAnswers) if (answer.item === 'seating') answer.grade = 1;
  });
  const options = { ...emptyWords().report, pictures: [], trueSize: true };
  const evaluation = packetText(initialEvaluation(weak, options, rulesInUse(null), texts));
  expect(evaluation).toContain(
    `Scored 0 or 1 at the screen: ${shippedItems.items.find((i) => i.code === 'seating')!.title.toLowerCase()}`,
  );
  expect(evaluation).toMatch(/About \d+ minutes on a practice day, tier 3, approved\./);
});
