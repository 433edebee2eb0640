import { z } from 'zod';
import { ClockTime, factFields, Hand, IsoDate, Line, Note, Side } from './common.ts';

/** A diagnosis as the therapist was given it. `kind` is a code of the rule table's vocabulary, or null for free text. */
export const Diagnosis = z.object({
  kind: z.string().max(60).nullable(),
  text: Line,
  onset: IsoDate.nullable(),
  side: Side,
});
export type Diagnosis = z.infer<typeof Diagnosis>;

/** `code` is a caution of the rule table's vocabulary, or null for free text. */
export const Precaution = z.object({ code: z.string().max(60).nullable(), text: Line });
export type Precaution = z.infer<typeof Precaution>;

export const Medicine = z.object({ name: Line, times: z.array(ClockTime).max(12), note: Line });
export type Medicine = z.infer<typeof Medicine>;

/** A test given elsewhere: what was told about it, never its items. */
const OutsideTest = z.object({ name: Line, score: Line, on: IsoDate.nullable() });

/** What payers and record laws ask about a course of therapy. Nothing in it belongs to one country. */
export const Care = z.object({
  /** Start of care; null = the first visit. */
  startOn: IsoDate.nullable(),
  payer: Line,
  codes: Line,
  authorizedVisits: z.number().int().min(0).max(999).nullable(),
  /** A progress report is due after so many visits or days; null = no such rule. */
  reportEveryVisits: z.number().int().min(1).max(200).nullable(),
  reportEveryDays: z.number().int().min(1).max(730).nullable(),
  /** Last day before certification has to be renewed. */
  certifiedUntil: IsoDate.nullable(),
  /** How the client wrote before the onset. */
  priorLevel: Line,
  potential: Line,
  outsideTests: z.array(OutsideTest).max(40),
  missedVisits: z.array(z.object({ on: IsoDate, reason: Line })).max(200),
});
export type Care = z.infer<typeof Care>;

export const Client = z.object({
  ...factFields,
  /** Short code printed instead of the name where the clinic's policy asks for it. */
  code: z.string().trim().min(1).max(20),
  name: z.string().trim().min(1).max(120),
  birthYear: z.number().int().min(1900).max(2100).nullable(),
  /** Hand for writing before the onset, and now; null = not asked yet. */
  handBefore: Hand.nullable(),
  handNow: Hand.nullable(),
  diagnoses: z.array(Diagnosis).max(20),
  precautions: z.array(Precaution).max(40),
  medicines: z.array(Medicine).max(40),
  referrer: Line,
  /** Who must be able to read the writing. */
  readers: Line,
  /** What the client wants to write, in the client's words. */
  wants: Note,
  /** Topics for practice texts. */
  interests: Line,
  /** Whom client and family call with questions. */
  callName: Line,
  callNumber: Line,
  language: z.string().min(2).max(10),
  largePrint: z.enum(['14', '16', '20']),
  /** Agreed to a summary for the family. */
  familyConsent: z.boolean(),
  familyConsentOn: IsoDate.nullable(),
  note: Note,
  /** Absent = nothing noted yet. */
  care: Care.optional(),
  archivedOn: IsoDate.nullable(),
});
export type Client = z.infer<typeof Client>;
