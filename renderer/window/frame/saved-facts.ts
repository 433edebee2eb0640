/** Which request saves a kind of fact, and which list of the client's record holds it. */
import type { RequestName } from '../../../electron/contract/index.ts';
import type { ClientRecord, Fact, FactKind } from '../../../db/types/record.ts';

export const saveRequest = {
  client: 'client.save',
  visit: 'visit.save',
  intakeAnswer: 'intake.answer',
  redFlag: 'intake.flag',
  setup: 'intake.setup',
  sample: 'sample.save',
  inkRecording: 'ink.save',
  reading: 'reading.save',
  program: 'program.save',
  practiceLog: 'practice.save',
  goal: 'goal.save',
  goalRating: 'goal.rate',
  pageDraft: 'pages.draft',
  writingOccasion: 'occasion.save',
  signatureCheck: 'occasion.signatureCheck',
  trial: 'trial.save',
  visitPlan: 'visit.plan',
} as const satisfies Partial<Record<FactKind, RequestName>>;

export type SavedKind = keyof typeof saveRequest;

const listOf = {
  visit: 'visits',
  intakeAnswer: 'intakeAnswers',
  redFlag: 'redFlags',
  setup: 'setups',
  sample: 'samples',
  samplePage: 'samplePages',
  pageMeasurement: 'pageMeasurements',
  inkRecording: 'inkRecordings',
  spiralSheet: 'spiralSheets',
  reading: 'readings',
  program: 'programs',
  practiceLog: 'practiceLogs',
  practicePage: 'practicePages',
  goal: 'goals',
  goalRating: 'goalRatings',
  pageDraft: 'pageDrafts',
  issuedPage: 'issuedPages',
  writingOccasion: 'writingOccasions',
  signatureCheck: 'signatureChecks',
  trial: 'trials',
  visitPlan: 'visitPlans',
} as const satisfies Record<Exclude<FactKind, 'client'>, keyof ClientRecord>;

/** A copy of the record with one fact put in: replaced by id, or added at the end. */
export function withFact(record: ClientRecord, kind: FactKind, fact: { id: string }): ClientRecord {
  if (kind === 'client') return { ...record, client: fact as ClientRecord['client'] };
  const name = listOf[kind];
  const list = record[name] as { id: string }[];
  const at = list.findIndex((f) => f.id === fact.id);
  return { ...record, [name]: at < 0 ? [...list, fact] : list.map((f, i) => (i === at ? fact : f)) };
}

/** Field by which other facts name the one they belong to: they go when it goes, as in the caseload itself. */
const namedBy = { visit: 'visitId', sample: 'sampleId', samplePage: 'pageId', goal: 'goalId' } as const;

type AnyFact = { id: string } & Partial<Record<(typeof namedBy)[keyof typeof namedBy], string>>;

const lists = Object.values(listOf);

/** A copy without one fact and without all that belongs to it: a page takes its measurement along. */
export function withoutFact(record: ClientRecord, kind: Exclude<FactKind, 'client'>, id: string): ClientRecord {
  const name = listOf[kind];
  const field = kind in namedBy ? namedBy[kind as keyof typeof namedBy] : null;
  const kept = lists.map((list) => {
    const facts = record[list] as AnyFact[];
    return [list, facts.filter((f) => !(list === name && f.id === id) && (field === null || f[field] !== id))];
  });
  return { ...record, ...(Object.fromEntries(kept) as Partial<ClientRecord>) };
}

/** Puts back what `withoutFact` took from `before`, at its old places; what was saved meanwhile stays. */
export function withFactsBack(
  record: ClientRecord,
  before: ClientRecord,
  kind: Exclude<FactKind, 'client'>,
  id: string,
): ClientRecord {
  const without = withoutFact(before, kind, id);
  const back = lists.map((list) => {
    const now = record[list] as AnyFact[];
    const taken = (before[list] as AnyFact[]).filter((f) => !(without[list] as AnyFact[]).includes(f));
    if (taken.length === 0) return [list, now];
    const byId = new Map(now.map((f) => [f.id, f]));
    const old = (before[list] as AnyFact[]).flatMap((f) => byId.get(f.id) ?? (taken.includes(f) ? [f] : []));
    return [list, [...old, ...now.filter((f) => !old.some((each) => each.id === f.id))]];
  });
  return { ...record, ...(Object.fromEntries(back) as Partial<ClientRecord>) };
}

/** A fact of the record by kind and id; null where it holds none. */
export function factOf<K extends FactKind>(record: ClientRecord, kind: K, id: string): Fact<K> | null {
  if (kind === 'client') return record.client as Fact<K>;
  const facts = record[listOf[kind as Exclude<FactKind, 'client'>]] as { id: string }[];
  return (facts.find((f) => f.id === id) ?? null) as Fact<K> | null;
}
