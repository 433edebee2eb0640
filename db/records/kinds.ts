/** Where each kind of fact lies, what hangs on it, in what order it is read. A new kind is one row here. */
import type { ClientRecord, Fact, FactKind } from '../types/record.ts';

export interface KindHome {
  table: string;
  /** Its list in a client's record. */
  list: Exclude<keyof ClientRecord, 'client'> | null;
  order: string;
  /** Columns that point at this kind: removing it takes those facts along. */
  children: readonly (readonly [kind: FactKind, column: string])[];
  /** Fields that name a picture or a PDF, with their columns. */
  pictures: readonly (readonly [field: string, column: string])[];
  /** Fields that name the question: a second answer updates the first. */
  question: readonly (readonly [field: string, column: string])[];
}

const ofVisit: KindHome['children'] = [
  ['intakeAnswer', 'visit_id'],
  ['redFlag', 'visit_id'],
  ['setup', 'visit_id'],
  ['sample', 'visit_id'],
  ['samplePage', 'visit_id'],
  ['pageMeasurement', 'visit_id'],
  ['inkRecording', 'visit_id'],
  ['spiralSheet', 'visit_id'],
  ['reading', 'visit_id'],
  ['program', 'visit_id'],
  ['goalRating', 'visit_id'],
  ['pageDraft', 'visit_id'],
  ['issuedPage', 'visit_id'],
  ['signatureCheck', 'visit_id'],
  ['trial', 'visit_id'],
  ['visitPlan', 'visit_id'],
];

/** A picture as it came, and as the window shows it. */
const shownPicture: KindHome['pictures'] = [
  ['blob', 'blob_id'],
  ['view', 'view_id'],
];

const home = (table: string, list: KindHome['list'], more: Partial<KindHome> = {}): KindHome => ({
  table,
  list,
  order: 'made',
  children: [],
  pictures: [],
  question: [],
  ...more,
});

export const homes: Readonly<Record<FactKind, KindHome>> = {
  client: home('client', null, {
    children: [
      ['visit', 'client_id'],
      ['practiceLog', 'client_id'],
      ['practicePage', 'client_id'],
      ['goal', 'client_id'],
      ['writingOccasion', 'client_id'],
    ],
  }),
  visit: home('visit', 'visits', { order: 'date, made', children: ofVisit }),
  intakeAnswer: home('intake_answer', 'intakeAnswers', {
    question: [
      ['visitId', 'visit_id'],
      ['item', 'item'],
      ['side', 'side'],
    ],
  }),
  redFlag: home('red_flag', 'redFlags', {
    question: [
      ['visitId', 'visit_id'],
      ['flag', 'flag'],
    ],
  }),
  setup: home('setup', 'setups'),
  sample: home('sample', 'samples', {
    order: 'taken_at, made',
    children: [
      ['samplePage', 'sample_id'],
      ['pageMeasurement', 'sample_id'],
      ['inkRecording', 'sample_id'],
      ['spiralSheet', 'sample_id'],
      ['reading', 'sample_id'],
    ],
  }),
  samplePage: home('sample_page', 'samplePages', {
    children: [['pageMeasurement', 'page_id']],
    pictures: shownPicture,
  }),
  pageMeasurement: home('page_measurement', 'pageMeasurements'),
  inkRecording: home('ink_recording', 'inkRecordings', { pictures: [['blob', 'blob_id']] }),
  spiralSheet: home('spiral_sheet', 'spiralSheets', { pictures: shownPicture }),
  reading: home('reading', 'readings'),
  program: home('program', 'programs'),
  practiceLog: home('practice_log', 'practiceLogs', { order: 'date, made' }),
  practicePage: home('practice_page', 'practicePages', { order: 'date, made', pictures: shownPicture }),
  goal: home('goal', 'goals', { children: [['goalRating', 'goal_id']] }),
  goalRating: home('goal_rating', 'goalRatings'),
  pageDraft: home('page_draft', 'pageDrafts', { question: [['visitId', 'visit_id']] }),
  issuedPage: home('issued_page', 'issuedPages', { pictures: [['pdf', 'pdf_id']] }),
  writingOccasion: home('writing_occasion', 'writingOccasions', {
    question: [
      ['clientId', 'client_id'],
      ['code', 'code'],
    ],
  }),
  signatureCheck: home('signature_check', 'signatureChecks'),
  trial: home('trial', 'trials'),
  visitPlan: home('visit_plan', 'visitPlans', { question: [['visitId', 'visit_id']] }),
};

export const allKinds = Object.keys(homes) as FactKind[];

export const isKind = (kind: string): kind is FactKind => Object.hasOwn(homes, kind);

/** Pictures that facts of a client name. @param whose such as `client_id = @id` */
export const pictureIds = (whose: string): string =>
  allKinds
    .flatMap((kind) => homes[kind].pictures.map(([, column]) => [homes[kind].table, column] as const))
    .map(([table, column]) => `SELECT ${column} FROM ${table} WHERE ${whose} AND ${column} IS NOT NULL`)
    .join(' UNION ');

/** Pictures that one fact names. */
export const picturesOfFact = (kind: FactKind, fact: object): string[] =>
  homes[kind].pictures.flatMap(([field]) => {
    const id = (fact as Record<string, unknown>)[field];
    return typeof id === 'string' ? [id] : [];
  });

/** The client a fact belongs to. */
export const clientOf = (kind: FactKind, fact: Fact): string =>
  kind === 'client' ? fact.id : (fact as Fact<'visit'>).clientId;
