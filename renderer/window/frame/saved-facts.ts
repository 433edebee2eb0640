/** Which request saves a kind of fact, and which list of the client's record holds it. */
import type { RequestName } from '../../../electron/contract/index.ts';
import type { ClientRecord, FactKind } from '../../../db/types/record.ts';

export const saveRequest = {
  client: 'client.save',
  visit: 'visit.save',
  intakeAnswer: 'intake.answer',
  redFlag: 'intake.flag',
  setup: 'intake.setup',
  sample: 'sample.save',
  reading: 'reading.save',
  program: 'program.save',
  practiceLog: 'practice.save',
  goal: 'goal.save',
  goalRating: 'goal.rate',
  pageDraft: 'pages.draft',
} as const satisfies Partial<Record<FactKind, RequestName>>;

export type SavedKind = keyof typeof saveRequest;

export const listOf = {
  visit: 'visits',
  intakeAnswer: 'intakeAnswers',
  redFlag: 'redFlags',
  setup: 'setups',
  sample: 'samples',
  samplePage: 'samplePages',
  pageMeasurement: 'pageMeasurements',
  reading: 'readings',
  program: 'programs',
  practiceLog: 'practiceLogs',
  goal: 'goals',
  goalRating: 'goalRatings',
  pageDraft: 'pageDrafts',
  issuedPage: 'issuedPages',
} as const satisfies Record<Exclude<FactKind, 'client'>, keyof ClientRecord>;

/** A copy of the record with one fact put in: replaced by id, or added at the end. */
export function withFact(record: ClientRecord, kind: FactKind, fact: { id: string }): ClientRecord {
  if (kind === 'client') return { ...record, client: fact as ClientRecord['client'] };
  const name = listOf[kind];
  const list = record[name] as { id: string }[];
  const at = list.findIndex((f) => f.id === fact.id);
  return { ...record, [name]: at < 0 ? [...list, fact] : list.map((f, i) => (i === at ? fact : f)) };
}

export function withoutFact(record: ClientRecord, kind: Exclude<FactKind, 'client'>, id: string): ClientRecord {
  const name = listOf[kind];
  return { ...record, [name]: (record[name] as { id: string }[]).filter((f) => f.id !== id) };
}
