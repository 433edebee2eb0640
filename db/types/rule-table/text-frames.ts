/**
 * Texts are made from sentence frames and word lists, as data: `Your {trade} will be here shortly after {hour}.`
 * Two streams that share no frame: measured texts (samples) and practice texts.
 */
import { z } from 'zod';
import { SourceTag } from '../common.ts';
import { RuleCode } from '../conditions.ts';
import { OccasionCode } from '../occasions.ts';

const TextStream = z.enum(['measured', 'practice']);

const Language = z.string().min(2).max(10);

export const TextFrame = z.strictObject({
  code: RuleCode,
  language: Language,
  stream: TextStream,
  /** Of practice frames: the occasion they belong to; null = measured. */
  occasion: OccasionCode.nullable(),
  /** Words with slots in braces. */
  text: z.string().trim().min(1).max(160),
  source: SourceTag,
  sourceNote: z.string().max(400),
});
export type TextFrame = z.infer<typeof TextFrame>;

/** Words for one slot of one stream. */
export const WordList = z.strictObject({
  code: RuleCode,
  language: Language,
  stream: TextStream,
  words: z.array(z.string().trim().min(1).max(40)).max(200),
});

/** Things that clients write about. Spanish words carry their article; English ones stand in the plural or without. */
export const TextTopic = z.strictObject({
  code: RuleCode,
  language: Language,
  name: z.string().trim().min(1).max(60),
  words: z.array(z.string().trim().min(1).max(40)).max(200),
  /** Words of it that nobody buys, carries or gives (ferries, owls): left out where a sentence asks for a thing. */
  onlyNamed: z.array(z.string().trim().min(1).max(40)).max(200).default([]),
  /** Occasions that it is taken for where the client named no topic. */
  usualFor: z.array(OccasionCode).max(13).optional(),
});

export const TextLibrary = z.strictObject({
  frames: z.array(TextFrame),
  lists: z.array(WordList),
  topics: z.array(TextTopic),
});
export type TextLibrary = z.infer<typeof TextLibrary>;
