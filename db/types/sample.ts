import { z } from 'zod';
import { OccasionCode } from './occasions.ts';
import { ClockTime, factFields, Hand, Id, IsoDateTime, Line, Note, ZeroToTen } from './common.ts';

export const TaskKind = z.enum([
  'pangram',
  'sentences',
  'date-line',
  'personal',
  'signature',
  'digits',
  'free',
  'goal-output',
  'transfer-probe',
  'repeated-letter',
]);
export type TaskKind = z.infer<typeof TaskKind>;

/** A word that the client spells in a way of their own: read in either form it was read right. */
export const OwnSpelling = z.object({
  meant: z.string().trim().min(1).max(60),
  written: z.string().trim().min(1).max(60),
});
export type OwnSpelling = z.infer<typeof OwnSpelling>;

/** What was to be written. Personal lines and signatures keep their text in the picture: `text` stays ''. */
export const Task = z.object({
  kind: TaskKind,
  /** Code of a shipped text (P1, F3 …) or null. */
  textCodes: z.array(z.string().max(40)).max(20),
  /** Intended text as the client meant it, one string a written line where known. */
  text: z.string().max(4000),
  /** Words the client misspells on purpose of the record: spelling is not illegibility. */
  spellingNoted: z.boolean(),
  /** The words in question; absent = none noted. */
  spellings: z.array(OwnSpelling).max(60).optional(),
  /** The writing occasion that it is a sample of; absent = none. */
  occasion: OccasionCode.optional(),
});
export type Task = z.infer<typeof Task>;

/** Under what it was written. Six are asked, the rest carried over; gaps never block saving. */
export const Conditions = z.object({
  hand: Hand.nullable(),
  pen: Line,
  paper: Line,
  time: ClockTime.nullable(),
  doseState: z.enum(['on', 'off', 'unsure', 'none']).nullable(),
  cue: z.enum(['none', 'visual', 'verbal']).nullable(),
  minutesSinceDose: z.number().int().min(0).max(1440).nullable(),
  surfaceAngleDeg: z.number().min(0).max(45).nullable(),
  seatMm: z.number().min(200).max(900).nullable(),
  tableMm: z.number().min(300).max(1300).nullable(),
  armSupport: Line,
  grip: Line,
  glasses: z.enum(['none', 'worn', 'forgotten']).nullable(),
  instruction: z.enum(['usual', 'best', 'fast']).nullable(),
  style: z.enum(['print', 'joined', 'mixed']).nullable(),
});
export type Conditions = z.infer<typeof Conditions>;

export const Sample = z.object({
  ...factFields,
  clientId: Id,
  visitId: Id,
  takenAt: IsoDateTime,
  task: Task,
  conditions: Conditions,
  fatigueBefore: ZeroToTen.nullable(),
  fatigueAfter: ZeroToTen.nullable(),
  painBefore: ZeroToTen.nullable(),
  painAfter: ZeroToTen.nullable(),
  /** Writing time by stopwatch. */
  seconds: z.number().min(0).max(7200).nullable(),
  /** First or repeat baseline; baselines make the client's own band. */
  baseline: z.boolean(),
  /** Paper only: ruler readings typed in mm; measure code -> readings. */
  typed: z.record(z.string().max(40), z.array(z.number().min(-500).max(500)).max(200)),
  note: Note,
});
export type Sample = z.infer<typeof Sample>;

export const ScaleSource = z.enum(['corner-marks', 'bar', 'two-clicks', 'ruling', 'dpi', 'file-dpi']);
export type ScaleSource = z.infer<typeof ScaleSource>;

/** Picture of a written page. The original bytes are kept under `blob` with their checksum. */
export const SamplePage = z.object({
  ...factFields,
  clientId: Id,
  visitId: Id,
  sampleId: Id,
  order: z.number().int().min(0).max(50),
  blob: Id,
  /** What the window can show: the original itself, or a PNG made of a TIFF or PDF page. */
  view: Id,
  /** Page of a PDF, from 1. */
  pdfPage: z.number().int().min(1),
  sha256: z.string().regex(/^[0-9a-f]{64}$/),
  mime: z.enum(['image/png', 'image/jpeg', 'image/webp', 'image/tiff', 'application/pdf']),
  bytes: z.number().int().positive(),
  widthPx: z.number().int().positive(),
  heightPx: z.number().int().positive(),
  /** Null until the therapist or the file gives a scale: then nothing in mm is computed. */
  scale: z.object({ pxPerMm: z.number().positive().max(200), source: ScaleSource }).nullable(),
  fileDpi: z.number().positive().nullable(),
  /** Quarter turns clockwise that bring the writing upright. */
  quarterTurns: z.union([z.literal(0), z.literal(1), z.literal(2), z.literal(3)]).default(0),
  /** Drawn from a pen recording: never compared with paper, nor with ink of another surface or device. */
  ink: z.object({ recordingId: Id, surface: z.string().max(40), device: Line }).optional(),
});
export type SamplePage = z.infer<typeof SamplePage>;

/** Page millimetres, origin top left after the turn was taken out, y down. */
export const BoxMm = z.object({ xMm: z.number(), yMm: z.number(), widthMm: z.number(), heightMm: z.number() });
export type BoxMm = z.infer<typeof BoxMm>;

export const MeasureValue = z.looseObject({
  code: z.string(),
  value: z.number().nullable(),
  unit: z.string(),
  n: z.number().int().min(0),
  /** "This page": 95 % interval of what the ruler would read on this very page. Says nothing about change. */
  low: z.number().nullable(),
  high: z.number().nullable(),
  /**
   * "This hand": where 95 of 100 pages of this hand, unchanged and weeks apart, would lie, judged by this one. Two to
   * five times as wide. Whatever compares pages uses this one. Null where nothing is known of how hands vary in it;
   * absent in measurements stored before it was computed.
   */
  handLow: z.number().nullable().optional(),
  handHigh: z.number().nullable().optional(),
  /** Pages of the client's own repeats that it rests on; 0 = on what ordinary writers vary alone. */
  handPages: z.number().int().min(0).optional(),
  method: z.string(),
});
export type MeasureValue = z.infer<typeof MeasureValue>;

export const PageWord = z.looseObject({
  box: BoxMm,
  xHeightMm: z.number().nullable(),
  gapBeforeMm: z.number().nullable(),
  text: z.string().nullable(),
});
export type PageWord = z.infer<typeof PageWord>;
const PageLine = z.looseObject({
  box: BoxMm,
  xHeightMm: z.number().nullable(),
  baselineAngleDeg: z.number().nullable(),
  baselineRmsMm: z.number().nullable(),
  words: z.array(PageWord),
});

/** Answer of the measuring engine, the same as `fairhand measure --json`; extra fields serve the overlay. */
export const PageResult = z.looseObject({
  page: z.looseObject({
    widthMm: z.number().nullable(),
    heightMm: z.number().nullable(),
    dpi: z.number().nullable(),
    rotationDeg: z.number(),
  }),
  lines: z.array(PageLine),
  measures: z.array(MeasureValue),
  warnings: z.array(z.object({ code: z.string(), message: z.string() })),
});
export type PageResult = z.infer<typeof PageResult>;

/** A measured page: facts for the record, kept with method and version; corrections are the therapist's. */
export const PageMeasurement = z.object({
  ...factFields,
  clientId: Id,
  visitId: Id,
  sampleId: Id,
  pageId: Id,
  method: z.string().max(60),
  version: z.string().max(20),
  result: PageResult,
  /** The engine's own answer before corrections; null when nothing was corrected. */
  uncorrected: PageResult.nullable(),
  corrections: z.array(z.looseObject({ kind: z.string().max(40) })).max(500),
});
export type PageMeasurement = z.infer<typeof PageMeasurement>;

const InkTaskKind = z.enum(['writing', 'loops', 'line', 'spiral', 'hold']);

/** What the pen wrote on; ink of one surface is never compared with ink of another, nor with paper. */
export const InkSurface = z.enum(['screen', 'screen-film', 'tablet-paper', 'tablet-blind']);
export type InkSurface = z.infer<typeof InkSurface>;

/** Millimeters of the surface, told by a card, a ruler or the maker's size of a tablet, set twice. */
export const InkScale = z.object({
  pxPerMmX: z.number().positive().max(200),
  pxPerMmY: z.number().positive().max(200),
  source: z.enum(['card', 'ruler', 'tablet-area', 'file']),
  at: IsoDateTime,
});
export type InkScale = z.infer<typeof InkScale>;

export const InkScreen = z.object({
  width: z.number().positive(),
  height: z.number().positive(),
  devicePixelRatio: z.number().positive(),
});
export type InkScreen = z.infer<typeof InkScreen>;

/** The pen device of this computer, as it was set up last: a setting of the clinic, not of a client. */
export const InkDevice = z.object({ device: Line, surface: InkSurface, screen: InkScreen, scale: InkScale });
export type InkDevice = z.infer<typeof InkDevice>;

/** Help that was shown while writing; a cued line is practice, never a retest. */
const InkCues = z.object({
  bandMm: z.number().min(1).max(40).nullable(),
  stopMarks: z.boolean(),
  paceHz: z.number().min(0.3).max(2).nullable(),
  sound: z.boolean(),
  sizes: z.boolean(),
});

const InkSpan = z.object({ fromS: z.number(), toS: z.number() });

/** What the ink engine tells of a recording (renderer/ink). */
export const InkTold = z.looseObject({
  source: z.looseObject({ task: InkTaskKind, contacts: z.number(), samples: z.number() }),
  quality: z.looseObject({ verdict: z.enum(['good', 'limited', 'unusable']), rateHz: z.number().nullable() }),
  measures: z.array(
    z.looseObject({
      code: z.string(),
      value: z.number().nullable(),
      unit: z.string(),
      n: z.number(),
      low: z.number().nullable(),
      high: z.number().nullable(),
      method: z.string(),
      reliable: z.boolean(),
      why: z.string().nullable(),
    }),
  ),
  tremor: z.looseObject({
    frequencyHz: z.number().nullable(),
    amplitudeRmsMm: z.number().nullable(),
    reason: z.string().nullable(),
  }),
  stops: z.array(InkSpan),
  pauses: z.array(InkSpan),
  warnings: z.array(z.object({ code: z.string(), message: z.string() })),
});
export type InkTold = z.infer<typeof InkTold>;

/** Two printed crosses tapped before and after writing on paper that lies on a tablet: mm between them, and how far they went. */
export const InkDrift = z.object({ beforeMm: z.number(), afterMm: z.number(), movedMm: z.number().min(0) });
export type InkDrift = z.infer<typeof InkDrift>;

/** One bout of pen motion. Raw samples lie in `blob`, unchanged; `blob` is null while it is being written. */
export const InkRecording = z.object({
  ...factFields,
  clientId: Id,
  visitId: Id,
  sampleId: Id,
  order: z.number().int().min(0).max(50),
  task: InkTaskKind,
  /** Tremor tasks are done with either hand. */
  hand: Hand,
  blob: Id.nullable(),
  sha256: z
    .string()
    .regex(/^[0-9a-f]{64}$/)
    .nullable(),
  mime: z.enum(['application/x-pen-samples', 'application/inkml+xml']),
  startedAt: IsoDateTime,
  pointerType: z.enum(['pen', 'touch', 'mouse', 'unknown']),
  surface: InkSurface,
  /** The device as the therapist calls it: a part of what is compared. */
  device: Line,
  screen: InkScreen,
  scale: InkScale.nullable(),
  cues: InkCues.nullable(),
  palmTouches: z.number().int().min(0),
  cancelled: z.number().int().min(0),
  /** Started over: kept, never measured against others. */
  abandoned: z.boolean(),
  /** What the therapist noted without stopping, ms from the start. */
  notes: z
    .array(z.object({ atMs: z.number().min(0), kind: z.enum(['cue', 'slipped', 'tired', 'pain', 'line']) }))
    .max(500),
  /** Touches of a second pen, ignored. */
  otherPens: z.number().int().min(0).default(0),
  /** Null where the crosses were not tapped twice. */
  drift: InkDrift.nullable().default(null),
  /** What the engine told of the samples, with its method; derived, and made anew when the method changes. */
  measured: z
    .object({
      method: z.string().max(20),
      told: InkTold,
      /** Of each line written with a height to fill: strokes within it, of all. */
      lines: z.array(z.object({ inBand: z.number().int(), strokes: z.number().int() })).optional(),
    })
    .nullable()
    .default(null),
});
export type InkRecording = z.infer<typeof InkRecording>;
