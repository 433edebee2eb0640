import { z } from 'zod';
import { SourceTag } from '../common.ts';

/** A shipped text for writing samples, with the counts that make two texts comparable. */
export const SampleText = z.object({
  code: z.string().max(40),
  kind: z.enum(['pangram', 'sentences']),
  language: z.string(),
  text: z.string(),
  letters: z.number().int(),
  words: z.number().int(),
  ascenders: z.number().int(),
  descenders: z.number().int(),
  closed: z.number().int(),
});
export type SampleText = z.infer<typeof SampleText>;

export const SampleTexts = z.object({
  about: z.string(),
  source: SourceTag,
  sourceNote: z.string(),
  texts: z.array(SampleText),
});
export type SampleTexts = z.infer<typeof SampleTexts>;
