import { z } from 'zod';
import { factKinds, type Fact, type FactKind } from '../../db/types/record.ts';

/** One request the window may make. `write` requests change the caseload, or what stands beside it. */
export interface Request<In extends z.ZodType = z.ZodType, Out extends z.ZodType = z.ZodType> {
  readonly effect: 'read' | 'write';
  readonly input: In;
  readonly output: Out;
}

export const read = <In extends z.ZodType, Out extends z.ZodType>(input: In, output: Out): Request<In, Out> => ({
  effect: 'read',
  input,
  output,
});
export const write = <In extends z.ZodType, Out extends z.ZodType>(input: In, output: Out): Request<In, Out> => ({
  effect: 'write',
  input,
  output,
});

/** A fact as the window sends it: time and initials are stamped by the handler. */
export type Unstamped<K extends FactKind> = Omit<Fact<K>, 'at' | 'by'>;

type SaveInput<K extends FactKind> = z.ZodType<Unstamped<K>>;

/** Save one fact of a kind: the window sends it whole with its own id (so a retry never doubles it), the saved fact returns. */
export function save<K extends FactKind>(kind: K): Request<SaveInput<K>, z.ZodType<Fact<K>>> {
  const schema = factKinds[kind] as unknown as z.ZodObject;
  return write(
    schema.omit({ at: true, by: true }).strict() as unknown as SaveInput<K>,
    schema as unknown as z.ZodType<Fact<K>>,
  );
}

export const nothing = z.object({}).strict();
