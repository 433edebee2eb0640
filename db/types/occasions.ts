/** Writing occasions: what the client wants to write. Asked once; everything else follows from them. */
import { z } from 'zod';

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
const OwnWordKind = z.enum(['person', 'place', 'thing', 'phrase']);

export const OwnWord = z.strictObject({ kind: OwnWordKind, text: z.string().trim().min(1).max(120) });
export type OwnWord = z.infer<typeof OwnWord>;
