/** A client in short, for the list of clients. */
import type { ClientRecord } from '../../../db/types/record.ts';
import type { Told } from '../texts/screens/en/screens-en.ts';
import { precautionIn, type TableWords } from '../texts/table-words.ts';
import { sampleLegibility } from '../record/sample-legibility.ts';

export interface Preview {
  line: string;
  /** Words a reader could read, first and last sample read; '' = none read. */
  words: string;
  rows: { name: string; value: string }[];
}

/** @param showDate writes an ISO date as the window does @param inTable says a text of the rule table */
export function previewOf(
  record: ClientRecord,
  today: string,
  showDate: (iso: string) => string,
  words: Told['client'],
  inTable: TableWords,
): Preview {
  const { client } = record;
  const age = client.birthYear === null ? '' : String(Number(today.slice(0, 4)) - client.birthYear);
  const hand = client.handNow ? words.writesWith(client.handNow) : '';
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
    { name: words.goal, value: goal ? words.goalReached(inTable(goal.output), goal.percent) : '' },
    { name: words.lastVisit, value: last ? showDate(last.date) : words.noneYet },
    { name: words.planThen, value: last?.plan ?? '' },
    { name: words.nextVisit, value: last?.nextVisit ?? '' },
    { name: words.program, value: program?.approvedAt ? words.approvedOn(showDate(program.approvedAt)) : '' },
    {
      name: words.mind,
      value: client.precautions.map((one) => precautionIn(one, inTable)).join('\n'),
    },
  ];
  return {
    line: [[age, hand].filter(Boolean).join(', '), ...diagnoses].filter(Boolean).join('. '),
    words: first === undefined || now === undefined ? '' : words.wordsRead(first, now, read.length),
    rows: rows.filter((row) => row.value.trim() !== ''),
  };
}
