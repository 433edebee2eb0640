/** Who signs in to a caseload: kept inside the encrypted file; the key file knows random ids only. */
import { z } from 'zod';
import { Id, Initials, IsoDate, Line } from '../common.ts';

export const Role = z.enum(['therapist', 'assistant']);
export type Role = z.infer<typeof Role>;

export const Person = z.object({
  id: Id,
  name: Line,
  /** Sign every entry; nobody else in this caseload has or had the same. */
  initials: Initials,
  role: Role,
  /** As printed under a note. */
  credentials: Line,
  /** ISO date from which the sign-in counts no more; null while it does. */
  removedOn: IsoDate.nullable(),
});
export type Person = z.infer<typeof Person>;

export const People = z.array(Person);

/** Name of the setting that holds them. Missing = one sign-in, as every caseload begins. */
export const PEOPLE = 'people';

/** Initials as they are compared. */
export const normalInitials = (typed: string): string => typed.normalize('NFKC').trim().toUpperCase();
