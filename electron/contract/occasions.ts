/** What the client wants to write, and what follows from it: new texts, trials, the plan for the next visit. */
import { z } from 'zod';
import { Id } from '../../db/types/common.ts';
import { Trial, TrialKind, TrialOption } from '../../db/types/occasions.ts';
import { read, save, write } from './request.ts';

const MadeText = z.object({
  /** Null where no new text is left in this language. */
  sentences: z.array(z.object({ text: z.string(), frame: z.string() })).nullable(),
  /** Letters of the goal that do not stand often enough in it. */
  goalLettersShort: z.array(z.string()),
});
type MadeText = z.infer<typeof MadeText>;

export const occasionRequests = {
  'occasion.save': save('writingOccasion'),
  'occasion.signatureCheck': save('signatureCheck'),
  'visit.plan': save('visitPlan'),
  'trial.save': save('trial'),
  /** Draws the order and the texts of a new trial and keeps them. */
  'trial.begin': write(
    z
      .object({
        id: Id,
        clientId: Id,
        visitId: Id,
        kind: TrialKind,
        options: z.array(TrialOption).min(2).max(3),
      })
      .strict(),
    Trial,
  ),
  /** Three sentences for a sample that nobody here has met within the year. */
  'sample.newText': read(
    z.object({ clientId: Id, language: z.string().max(10), goalLetters: z.array(z.string().max(4)).max(8) }).strict(),
    MadeText,
  ),
} as const;
