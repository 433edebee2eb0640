/** Writing occasions: what the client wants to write, asked once; checks of a signature; trials of pens and papers. */
import { z } from 'zod';
import { factFields, Id, IsoDate, Line, Note, ZeroToTen } from './common.ts';

export const OccasionCode = z.enum([
  'signature',
  'check',
  'list',
  'message',
  'form',
  'card',
  'diary',
  'work',
  'recipe',
  'name-address',
  'numbers',
  'board',
  'other',
]);
export type OccasionCode = z.infer<typeof OccasionCode>;

/** The client's own words by what they are, so that a name never stands where a thing belongs. */
export const OwnWordKind = z.enum(['person', 'place', 'thing', 'phrase']);
export type OwnWordKind = z.infer<typeof OwnWordKind>;

export const OwnWord = z.strictObject({ kind: OwnWordKind, text: z.string().trim().min(1).max(120) });
export type OwnWord = z.infer<typeof OwnWord>;

const HowOften = z.enum(['daily', 'weekly', 'monthly', 'seldom']);
type HowOften = z.infer<typeof HowOften>;

/** One thing that the client wants to write. Taken off it stays, so that earlier drafts keep their reason. */
export const WritingOccasion = z.object({
  ...factFields,
  clientId: Id,
  code: OccasionCode,
  on: z.boolean(),
  words: z.array(OwnWord).max(80),
  /** Codes of the topic lists. */
  topics: z.array(z.string().max(60)).max(20),
  often: HowOften.nullable(),
  /** What the real one looks like: its paper, its size, who reads it. */
  example: Line,
});
export type WritingOccasion = z.infer<typeof WritingOccasion>;

/**
 * Whether a second person tells the client's signatures from drawn look-alikes, and where one was accepted in use.
 * A signature is never read.
 */
export const SignatureCheck = z.object({
  ...factFields,
  clientId: Id,
  visitId: Id,
  /** Who looked, in a word: "colleague", initials. */
  person: Line,
  /** Pairs shown: two of the client's from two days, or one with a look-alike; and what the person said. */
  pairs: z.array(z.object({ shown: z.enum(['same', 'drawn']), said: z.enum(['same', 'drawn']).nullable() })).max(12),
  accepted: z.object({ where: Line, on: IsoDate }).nullable(),
});
export type SignatureCheck = z.infer<typeof SignatureCheck>;

/** A trial of pens, aids, surfaces or papers: two or three options, one thing varied, in alternating blocks. */
export const TrialKind = z.enum(['pen', 'aid', 'surface', 'paper']);
export type TrialKind = z.infer<typeof TrialKind>;

export const TrialOption = z.object({ name: z.string().trim().min(1).max(120) });
export type TrialOption = z.infer<typeof TrialOption>;

/** One line of the trial, in the order in which it is written. */
export const TrialLine = z.object({
  /** Counted from 0; null = the extra line before a visit's blocks, which does not count. */
  block: z.number().int().min(0).max(20).nullable(),
  /** Which option, by its place in the list. */
  option: z.number().int().min(0).max(2),
  /** 1 or 2: the first or second visit of the trial. */
  part: z.union([z.literal(1), z.literal(2)]),
  visitId: Id.nullable(),
  text: Line,
  frame: z.string().max(60),
  /** Words of the text that a reader read who did not know the option; null = not read yet. */
  right: z.number().min(0).max(40).nullable(),
  seconds: z.number().min(0).max(3600).nullable(),
  comfort: ZeroToTen.nullable(),
});
export type TrialLine = z.infer<typeof TrialLine>;

export const Trial = z.object({
  ...factFields,
  clientId: Id,
  /** Visit at which it was begun. */
  visitId: Id,
  kind: TrialKind,
  options: z.array(TrialOption).min(2).max(3),
  /** The order was drawn from this seed, so that it can be drawn again. */
  seed: z.number().int().min(0),
  lines: z.array(TrialLine).max(60),
  /** The client's wish; null = none said. */
  wish: z.number().int().min(0).max(2).nullable(),
  decision: z.object({ option: z.number().int().min(0).max(2).nullable(), on: IsoDate, why: Note }).nullable(),
  retrialOn: IsoDate.nullable(),
  status: z.enum(['open', 'decided', 'stopped']),
});
export type Trial = z.infer<typeof Trial>;
