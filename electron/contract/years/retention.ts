/** How long records are kept, by the clinic's own rule; which are due; archive and erase from that list alone. */
import { z } from 'zod';
import { Id, IsoDate, Line } from '../../../db/types/common.ts';
import { nothing, read, write } from '../request.ts';

/** Records of one erasing: each is overwritten, so that a whole caseload takes long. */
const MOST = 500;

export const RetentionRule = z.object({
  /** Years after the last visit; null = no rule is set. */
  years: z.number().int().min(1).max(120).nullable(),
  source: z.enum(['law', 'clinic']),
  /** Which law, or which rule of the clinic. */
  words: Line,
});
export type RetentionRule = z.infer<typeof RetentionRule>;

export const RetentionState = z.object({
  rule: RetentionRule,
  due: z.array(
    z.object({
      id: Id,
      code: z.string(),
      name: z.string(),
      visits: z.number().int(),
      since: IsoDate,
      why: z.enum(['last-visit', 'no-visit']),
      until: IsoDate,
      archivedOn: IsoDate.nullable(),
    }),
  ),
});
export type RetentionState = z.infer<typeof RetentionState>;

const Some = z.array(Id).min(1).max(MOST);

export const retentionRequests = {
  'retention.state': read(nothing, RetentionState),
  'retention.set': write(RetentionRule.strict(), RetentionState),
  /** Archived clients are out of the lists and the worklist, are found by typing, and come back by `on: false`. */
  'retention.archive': write(z.object({ clientIds: Some, on: z.boolean() }).strict(), RetentionState),
  /** Only clients of the list, and only with their number typed. Answers which older files still hold one of them. */
  'retention.erase': write(
    z.object({ clientIds: Some, typed: z.string().max(20) }).strict(),
    z.object({ erased: z.number().int(), stillIn: z.array(z.string()), unknown: z.array(z.string()) }),
  ),
} as const;
