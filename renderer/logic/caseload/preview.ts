/** A client in short, for the list of clients. */
import type { ClientRecord } from '../../../db/types/record.ts';
import { sampleLegibility } from '../record/sample-legibility.ts';

export interface Preview {
  line: string;
  /** Words a reader could read, first and last sample read; '' = none read. */
  words: string;
  rows: { name: string; value: string }[];
}

/** @param showDate writes an ISO date as the window does */
export function previewOf(record: ClientRecord, today: string, showDate: (iso: string) => string): Preview {
  const { client } = record;
  const age = client.birthYear === null ? '' : String(Number(today.slice(0, 4)) - client.birthYear);
  const hand = client.handNow ? `writes with the ${client.handNow} hand` : '';
  const diagnoses = client.diagnoses.map((one) => one.text).filter(Boolean);
  const read = [...record.samples]
    .sort((a, b) => a.takenAt.localeCompare(b.takenAt))
    .flatMap((sample) => {
      const readings = record.readings.filter((one) => one.sampleId === sample.id);
      const share = sampleLegibility(readings, sample.task.spellings ?? [])?.accuracy ?? null;
      return share === null ? [] : [Math.round(share * 100)];
    });
  const visits = [...record.visits].sort((a, b) => a.date.localeCompare(b.date));
  const last = visits.at(-1);
  const goal = record.goals.filter((one) => one.status === 'active').at(-1);
  const program = record.programs.filter((one) => one.status === 'approved').at(-1);
  const [first, now] = [read[0], read.at(-1)];
  const rows = [
    { name: 'Goal', value: goal ? `${goal.output}${goal.percent === null ? '' : `, ${goal.percent} % of words`}` : '' },
    { name: 'Last visit', value: last ? showDate(last.date) : 'none yet' },
    { name: 'Plan then', value: last?.plan ?? '' },
    { name: 'Next visit', value: last?.nextVisit ?? '' },
    { name: 'Program', value: program?.approvedAt ? `approved ${showDate(program.approvedAt)}` : '' },
    { name: 'Mind', value: client.precautions.map((one) => one.text).join('; ') },
  ];
  return {
    line: [[age, hand].filter(Boolean).join(', '), ...diagnoses].filter(Boolean).join('. '),
    words:
      first === undefined
        ? ''
        : `Words a reader could read: ${first} %${read.length > 1 ? ` → ${now} %` : ''} (${read.length} ${read.length === 1 ? 'sample' : 'samples'})`,
    rows: rows.filter((row) => row.value.trim() !== ''),
  };
}
