/** Reads one line of the `change` command: what is asked, or the reason why it cannot be read. */
import { z } from 'zod';
import type { Count, ReadSample, RepeatPair, SmallestQuestion } from '../../renderer/change/index.ts';

/** A question of the command. */
export type ChangeLine =
  | { ask: 'verdict'; samples: ReadSample[]; pairs: RepeatPair[]; explained: boolean }
  | { ask: 'onset'; bouts: Count[][] }
  | { ask: 'slopes'; slopes: number[] }
  | { ask: 'smallest'; smallest: SmallestQuestion };

const Word = z.string().nullish();
const Sample = z.looseObject({
  day: z.iso.date('is not a date as YYYY-MM-DD'),
  words: z.number(),
  right: z.number(),
  task: z
    .string()
    .nullish()
    .transform((task) => task ?? ''),
  reader: Word,
  kind: Word,
  cue: Word,
  dose: Word,
  hand: Word,
  surface: Word,
  view: Word,
  baseline: z.boolean().nullish(),
});
const CountPair = z.tuple([z.number(), z.number()]).transform(([right, words]) => ({ right, words }));
const Pair = z.looseObject({ first: CountPair, second: CountPair, task: Word, kind: Word });
const BoutLine = z
  .looseObject({ right: z.number(), words: z.number().positive('must be more than 0') })
  .refine(({ right, words }) => right >= 0 && right <= words, 'has more words right than words, or fewer than none');

const Verdict = z.looseObject({
  samples: z.array(Sample),
  pairs: z.array(Pair).nullish(),
  explained: z.boolean().nullish(),
});
const Onset = z.looseObject({
  bouts: z.array(z.array(BoutLine).min(1, 'is empty')).min(1, 'is empty'),
});
const Slopes = z.looseObject({ slopes: z.array(z.number()).min(1, 'is empty') });
const Smallest = z.looseObject({
  smallest: z.looseObject({
    p: z.number().min(0).max(1),
    words: z.number().positive(),
    n1: z.number().min(1),
    n2: z.number().min(1),
    sd: z.number().min(0),
  }),
});

/** "samples.0.words" as a person counts: "samples 1, words". */
const placeOf = (path: readonly PropertyKey[]): string =>
  path.map((step) => (typeof step === 'number' ? String(step + 1) : String(step))).join(' ');

function checked<T>(schema: z.ZodType<T>, data: unknown): { value: T } | { problem: string } {
  const parsed = schema.safeParse(data);
  if (parsed.success) return { value: parsed.data };
  const issue = parsed.error.issues[0]!;
  const says = /^(is|must|has) /.test(issue.message) ? issue.message : 'is missing or is not of the kind expected';
  return { problem: `“${placeOf(issue.path)}” ${says}` };
}

const mapped = <T, U>(read: { value: T } | { problem: string }, make: (value: T) => U) =>
  'problem' in read ? read : { value: make(read.value) };

/** @returns the question, or a clause that says what is wrong */
export function readChangeLine(line: string): { value: ChangeLine } | { problem: string } {
  let data: unknown;
  try {
    data = JSON.parse(line);
  } catch {
    return { problem: 'it is not JSON' };
  }
  if (typeof data !== 'object' || data === null || Array.isArray(data)) return { problem: 'it is not a JSON object' };
  if ('bouts' in data) return mapped(checked(Onset, data), ({ bouts }) => ({ ask: 'onset', bouts }));
  if ('slopes' in data) return mapped(checked(Slopes, data), ({ slopes }) => ({ ask: 'slopes', slopes }));
  if ('smallest' in data) return mapped(checked(Smallest, data), ({ smallest }) => ({ ask: 'smallest', smallest }));
  if ('samples' in data) {
    return mapped(checked(Verdict, data), ({ samples, pairs, explained }) => ({
      ask: 'verdict',
      samples,
      pairs: pairs ?? [],
      explained: explained ?? false,
    }));
  }
  return { problem: 'it holds none of “samples”, “bouts”, “slopes” and “smallest”' };
}
