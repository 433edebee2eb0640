import { z } from 'zod';
import { SamplePage } from './sample.ts';
import { CoSign, factFields, Id, Initials, IsoDate, IsoDateTime, Line, Note, SourceTag, ZeroToTen } from './common.ts';

export const Tier = z.union([z.literal(0), z.literal(1), z.literal(2), z.literal(3), z.literal(4)]);
export type Tier = z.infer<typeof Tier>;

export const LineKind = z.enum([
  'setup',
  'warm-up',
  'exercise',
  'writing',
  'paper',
  'tool',
  'content',
  'advice',
  'refer',
]);
export type LineKind = z.infer<typeof LineKind>;

/** Minutes of rest; `most` null = until as fresh as at the start. */
const Rest = z
  .object({ least: z.number().positive().max(60), most: z.number().positive().max(60).nullable() })
  .refine(({ least, most }) => most === null || most >= least, 'The longest rest is at least the shortest.');
export type Rest = z.infer<typeof Rest>;

/** Programs stored before rest was a range said 0 for "does not apply" and one number of minutes for a rest. */
function doseOfNow(stored: unknown): unknown {
  if (typeof stored !== 'object' || stored === null) return stored;
  return Object.fromEntries(
    Object.entries(stored).map(([field, value]) => [
      field,
      value === 0 ? null : field === 'restMinutes' && typeof value === 'number' ? { least: value, most: value } : value,
    ]),
  );
}

const DoseFields = z.object({
  minutes: z.number().positive().max(120).nullable(),
  sets: z.number().int().min(1).max(20).nullable(),
  reps: z.number().int().min(1).max(200).nullable(),
  lines: z.number().int().min(1).max(60).nullable(),
  restMinutes: Rest.nullable(),
  timesPerDay: z.number().int().min(1).max(6).nullable(),
  daysPerWeek: z.number().int().min(1).max(7).nullable(),
  /** bouts: `sets` turns of `minutes` / `sets`, with `restMinutes` between them. condition: no amount of its own. */
  form: z.enum(['timed', 'bouts', 'repeats', 'condition']).default('timed'),
  /** Key of the way to do it (texts/dose-hows.ts); '' = none. */
  how: z.string().max(60).default(''),
  /** Own wording of the therapist, or the whole wording of a program stored before words were made last; '' = none. */
  text: Line.default(''),
});
/**
 * How much, how long, how often; null = does not apply. Without minutes it counts not against the day's minutes
 * (equipment, advice).
 */
export const Dose = z.preprocess(doseOfNow, DoseFields);
export type Dose = z.infer<typeof Dose>;

/** Where a line's words come from: keys of shipped texts (logic/texts/text-keys.ts) and what was filled in. */
const LineKeys = z.object({
  text: z.array(z.string().max(200)).max(20),
  letters: z.array(z.string().max(8)).max(40),
  words: z.array(z.string().max(400)).max(200),
  /** Codes of `cautions`, in their order. */
  cautions: z.array(z.string().max(60)).max(60),
});

export const ProgramLine = z.object({
  id: Id,
  /** Item code of the rule table; null for the therapist's own line. */
  item: z.string().max(60).nullable(),
  kind: LineKind,
  tier: Tier,
  title: Line,
  /** What client and family read. */
  text: Note,
  /** Which of the item's versions the words are; null = the item has one wording, or the therapist's own. */
  version: z.string().max(60).nullable().default(null),
  /** null = own words, or a program stored before its words had keys. */
  keys: LineKeys.nullable().default(null),
  dose: Dose,
  rule: z.string().max(20).nullable(),
  /** Finding, measure or fact codes that brought it in. */
  findings: z.array(z.string().max(80)),
  source: SourceTag,
  sourceNote: z.string().max(400),
  cautions: z.array(z.string().max(400)),
  because: z.string().max(600),
  /** What would remove or advance it. */
  until: z.string().max(400),
  edited: z.boolean(),
  /** Set when the therapist keeps a line that a caution forbids. */
  override: z.object({ veto: z.string().max(400), reason: Note, by: Initials }).nullable(),
});
export type ProgramLine = z.infer<typeof ProgramLine>;

export const Vetoed = z.object({ item: z.string(), rule: z.string(), because: z.string() });
export type Vetoed = z.infer<typeof Vetoed>;

export const Program = z.object({
  ...factFields,
  clientId: Id,
  visitId: Id,
  status: z.enum(['draft', 'approved']),
  ruleVersion: z.string().max(40),
  tier: Tier,
  lines: z.array(ProgramLine).max(60),
  vetoed: z.array(Vetoed).max(200),
  note: Note,
  approvedAt: IsoDateTime.nullable(),
  approvedBy: Initials.nullable(),
  /** Absent = drafted and changed by therapists only. */
  coSign: CoSign.optional(),
});
export type Program = z.infer<typeof Program>;

/** One practice day, as it came back on paper. */
export const PracticeLog = z.object({
  ...factFields,
  clientId: Id,
  date: IsoDate,
  minutes: z.number().min(0).max(600).nullable(),
  lines: z.number().int().min(0).max(500).nullable(),
  fatigueBefore: ZeroToTen.nullable(),
  fatigueAfter: ZeroToTen.nullable(),
  pain: ZeroToTen.nullable(),
  breaks: z.number().int().min(0).max(50).nullable(),
  /** How it was; absent or null = not said. */
  felt: z.enum(['easy', 'fair', 'hard']).nullable().optional(),
  paper: Line,
  grip: Line,
  note: Note,
});
export type PracticeLog = z.infer<typeof PracticeLog>;

/** What an engine measured on one page, as it is kept of it. */
const Measured = z.object({
  code: z.string().max(60),
  value: z.number().nullable(),
  unit: z.string().max(60),
  n: z.number(),
  low: z.number().nullable(),
  high: z.number().nullable(),
});

/**
 * A practice page of ours that came back written on: its picture and what was measured of its lines. It is practice: no
 * series, verdict, chart or export of samples reads it.
 */
export const PracticePage = z.object({
  ...factFields,
  clientId: Id,
  /** The day of practice, as the therapist confirmed it. */
  date: IsoDate,
  /** What the code on the page holds (renderer/measure/printed/page-code.ts). */
  code: z.string().regex(/^[0-9a-f]{24}$/),
  title: z.string().max(300),
  ...SamplePage.pick({
    blob: true,
    view: true,
    pdfPage: true,
    sha256: true,
    mime: true,
    bytes: true,
    widthPx: true,
    heightPx: true,
    fileDpi: true,
  }).shape,
  /** Version of the measuring method. */
  version: z.string().max(20),
  lines: z.number().int().min(0),
  words: z.number().int().min(0),
  measures: z.array(Measured).max(60),
  warnings: z.array(z.object({ code: z.string(), message: z.string() })),
});
export type PracticePage = z.infer<typeof PracticePage>;
