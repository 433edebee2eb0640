/** What a home program is composed from: FINDINGS.json of the command line, and what the caseload knows besides. */
import { z } from 'zod';
import { Grade, Hand, Side } from './common.ts';
import { Tier } from './program.ts';

const Code = z.string().min(1).max(80);

export const InputFinding = z.strictObject({
  code: Code,
  /** Null = not tested, which is never taken as safe. */
  grade: Grade.nullable(),
  side: Side.default('none'),
  source: z.string().max(200).default(''),
  /** Detail of the intake item (tremor type …). */
  detail: z.string().max(60).nullable().optional(),
  /** Why it was not tested. */
  reason: z.string().max(300).optional(),
});
export type InputFinding = z.infer<typeof InputFinding>;

export const ProgramInput = z.strictObject({
  version: z.literal(1),
  /** Hand that writes now. */
  hand: Hand.nullable().default(null),
  findings: z.array(InputFinding).max(400),
  /** Codes of flags that are present; `reviewed` = known and medically reviewed, the cautions stay active. */
  redFlags: z.array(z.union([Code, z.strictObject({ code: Code, reviewed: z.boolean().default(false) })])).default([]),
  /** No side = the hand that writes, or the whole body. */
  cautions: z
    .array(
      z.union([
        Code,
        z.strictObject({
          code: Code,
          side: Side.default('none'),
          /** Who cleared it, when, and in which words (cleared-active). */
          by: z.string().max(120).optional(),
          date: z.string().max(20).optional(),
          words: z.string().max(400).optional(),
        }),
      ]),
    )
    .default([]),
  /** What the client wants to write, in the client's own words. */
  occasions: z
    .array(
      z.strictObject({
        code: Code,
        words: z.array(z.string().max(200)).max(60).default([]),
        topics: z.array(z.string().max(80)).max(20).default([]),
      }),
    )
    .default([]),
  diagnoses: z.array(Code).default([]),
  measures: z.array(z.looseObject({ code: Code, value: z.number().nullable(), unit: z.string().max(40) })).default([]),
  confusions: z
    .array(z.looseObject({ intended: z.string().max(8), read: z.string().max(8), count: z.number().int().min(0) }))
    .default([]),
  /** Words read right of words written, line by line, of the latest bouts under like conditions: where words are lost. */
  bouts: z
    .array(
      z
        .array(
          z
            .strictObject({ right: z.number().min(0), words: z.number().positive().max(60) })
            .refine(({ right, words }) => right <= words, 'more words right than words'),
        )
        .max(60),
    )
    .max(10)
    .default([]),
  /** Minutes that a line took. */
  minutesALine: z.number().positive().max(30).optional(),
  /** Topics of the client, codes of the content table. */
  interests: z.array(Code).optional(),
  language: z.string().min(2).max(10).optional(),
  /** Name of the pen that a decided trial chose. */
  chosenPen: z.string().min(1).max(120).optional(),
  /** Where the client stands on the ladder now; a draft never moves it, only a proposal that was accepted. */
  current: z.strictObject({ tier: Tier, paper: Code.nullable(), content: Code.nullable() }).nullable().optional(),
});
/** As the logic takes it, with the gaps filled. */
export type ProgramInput = z.infer<typeof ProgramInput>;
