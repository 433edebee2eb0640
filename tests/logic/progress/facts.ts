/** Invented facts of one client, as small as the progress page needs them. */
import type { ClientRecord } from '../../../db/types/record.ts';
import type { Reading } from '../../../db/types/reading.ts';
import type { Sample } from '../../../db/types/sample.ts';

export const stamp = { at: '2026-01-01T10:00:00.000Z', by: 'KT', clientId: 'c' };
export const conditions: Sample['conditions'] = {
  hand: 'right',
  pen: 'gel',
  paper: 'ruled',
  time: '09:00',
  doseState: 'on',
  cue: 'none',
  minutesSinceDose: null,
  surfaceAngleDeg: null,
  seatMm: null,
  tableMm: null,
  armSupport: '',
  grip: '',
  glasses: null,
  instruction: null,
  style: null,
};
export const sample = (id: string, day: string, over: Partial<Sample> = {}): Sample => ({
  ...stamp,
  id,
  visitId: `v-${day}`,
  takenAt: `${day}T09:00:00.000Z`,
  task: { kind: 'sentences', textCodes: ['F1'], text: 'buy milk and bread', spellingNoted: false },
  conditions,
  fatigueBefore: 2,
  fatigueAfter: 4,
  painBefore: 0,
  painAfter: 1,
  seconds: 90,
  baseline: false,
  typed: {},
  note: '',
  ...over,
});
export const reading = (sampleId: string, right: number, over: Partial<Reading> = {}): Reading => ({
  ...stamp,
  id: `r-${sampleId}-${right}`,
  visitId: 'v',
  sampleId,
  readAt: '2026-01-02T10:00:00.000Z',
  reader: 'unfamiliar',
  readerInitials: 'AB',
  blind: true,
  lines: [],
  counted: { right, of: 20 },
  ...over,
});
export const record = (over: Partial<ClientRecord>): ClientRecord =>
  ({
    visits: [],
    samples: [],
    readings: [],
    programs: [],
    practiceLogs: [],
    goals: [],
    goalRatings: [],
    intakeAnswers: [],
    pageMeasurements: [],
    ...over,
  }) as ClientRecord;
