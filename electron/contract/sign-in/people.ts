/** Who signs in to this caseload: adding, changing and removing people. A therapist's; refused to assistants. */
import { z } from 'zod';
import { Id, Initials, Line } from '../../../db/types/common.ts';
import { Person, Role } from '../../../db/types/clinic/people.ts';
import { AppStatus, Passphrase } from '../app.ts';
import { nothing, read, write } from '../request.ts';

const PersonRow = Person.extend({
  /** '' where one sign-in was never given any. */
  initials: z.string(),
  /** Signed in now. */
  me: z.boolean(),
  /** Removed, but the change of the key was cut off: to be done again. */
  unfinished: z.boolean(),
});
export type PersonRow = z.infer<typeof PersonRow>;
const PeopleNow = z.object({ people: z.array(PersonRow) });

export const peopleRequests = {
  /** Without a list yet: the one sign-in there is. */
  'people.list': read(nothing, PeopleNow),
  /**
   * One more sign-in. `passphrase` is that of whoever adds, `first` is typed by the new person herself. Answers a new
   * recovery key where the sheet in use knew of one sign-in only, else ''.
   */
  'people.add': write(
    z
      .object({
        passphrase: Passphrase,
        name: Line.trim().min(1),
        initials: Initials,
        role: Role,
        first: Passphrase,
      })
      .strict(),
    PeopleNow.extend({ status: AppStatus, recoveryKey: z.string() }),
  ),
  'people.change': write(z.object({ id: Id, name: Line.trim().min(1), role: Role }).strict(), PeopleNow),
  /** Ends a sign-in: the whole file is encrypted under a new key, which whoever stays has already. */
  'people.remove': write(z.object({ id: Id, passphrase: Passphrase }).strict(), AppStatus),
} as const;
