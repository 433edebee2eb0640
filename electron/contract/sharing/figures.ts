/** The caseload asked as a whole. What is answered names nobody. */
import { z } from 'zod';
import { read, nothing, write } from '../request.ts';

const Interval = z.object({ low: z.number(), high: z.number() });
const Share = z.object({ has: z.number(), of: z.number(), share: Interval.extend({ mid: z.number() }).nullable() });
const Middle = z.object({ of: z.number(), median: z.number().nullable(), interval: Interval.nullable() });

export const FigureRow = z.object({
  group: z.string(),
  /** The group in words. */
  name: z.string(),
  clients: z.number().int(),
  goals: Share,
  better: Share,
  worse: Share,
  cannotTell: z.number().int(),
  notCompared: z.number().int(),
  change: Middle,
  practised: Share,
  visits: Middle,
  authorizedUsed: Middle,
});
export type FigureRow = z.infer<typeof FigureRow>;

export const Figures = z.object({
  diagnoses: z.array(FigureRow),
  occasions: z.array(FigureRow),
  rules: z.array(
    z.object({ rule: z.string(), lines: z.number(), overridden: z.number(), edited: z.number(), because: z.string() }),
  ),
  /** Records that cannot be read: counted, not among the figures. */
  unread: z.number().int(),
});
export type Figures = z.infer<typeof Figures>;

export const figureRequests = {
  'figures.all': read(nothing, Figures),
  'figures.csv': write(z.object({ by: z.enum(['diagnoses', 'occasions']) }).strict(), z.object({ saved: z.boolean() })),
} as const;
