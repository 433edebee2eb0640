/**
 * The kinds of stored facts and one client's whole record.
 * A new kind is one row here, one table in a migration.
 */
import { z } from 'zod';
import { Client } from './client.ts';
import { Goal, GoalRating } from './goal.ts';
import { SignatureCheck, Trial, WritingOccasion } from './occasions.ts';
import { IntakeAnswer, RedFlagAnswer, SetupMeasures } from './intake.ts';
import { IssuedPage, PageDraft } from './page.ts';
import { PracticeLog, PracticePage, Program } from './program.ts';
import { Reading } from './reading.ts';
import { InkRecording, PageMeasurement, Sample, SamplePage } from './sample.ts';
import { SpiralSheet } from './spiral.ts';
import { Visit, VisitPlan } from './visit.ts';

export const factKinds = {
  client: Client,
  visit: Visit,
  intakeAnswer: IntakeAnswer,
  redFlag: RedFlagAnswer,
  setup: SetupMeasures,
  sample: Sample,
  samplePage: SamplePage,
  pageMeasurement: PageMeasurement,
  inkRecording: InkRecording,
  spiralSheet: SpiralSheet,
  reading: Reading,
  program: Program,
  practiceLog: PracticeLog,
  practicePage: PracticePage,
  goal: Goal,
  goalRating: GoalRating,
  pageDraft: PageDraft,
  issuedPage: IssuedPage,
  writingOccasion: WritingOccasion,
  signatureCheck: SignatureCheck,
  trial: Trial,
  visitPlan: VisitPlan,
} as const;
export type FactKind = keyof typeof factKinds;
export type Fact<K extends FactKind = FactKind> = z.infer<(typeof factKinds)[K]>;

/** Everything kept of one client except the pictures' bytes; every screen derives from it. */
export const ClientRecord = z.object({
  client: Client,
  visits: z.array(Visit),
  intakeAnswers: z.array(IntakeAnswer),
  redFlags: z.array(RedFlagAnswer),
  setups: z.array(SetupMeasures),
  samples: z.array(Sample),
  samplePages: z.array(SamplePage),
  pageMeasurements: z.array(PageMeasurement),
  /** A record exported before pens were recorded has none. */
  inkRecordings: z.array(InkRecording).default([]),
  /** A record exported before spirals were measured has none. */
  spiralSheets: z.array(SpiralSheet).default([]),
  readings: z.array(Reading),
  programs: z.array(Program),
  practiceLogs: z.array(PracticeLog),
  /** A record exported before pages were read back has none. */
  practicePages: z.array(PracticePage).default([]),
  goals: z.array(Goal),
  goalRatings: z.array(GoalRating),
  /** A record exported before drafts were kept has none. */
  pageDrafts: z.array(PageDraft).default([]),
  issuedPages: z.array(IssuedPage),
  /** A record exported before occasions, trials and plans were kept has none. */
  writingOccasions: z.array(WritingOccasion).default([]),
  signatureChecks: z.array(SignatureCheck).default([]),
  trials: z.array(Trial).default([]),
  visitPlans: z.array(VisitPlan).default([]),
});
export type ClientRecord = z.infer<typeof ClientRecord>;
