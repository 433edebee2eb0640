/**
 * People of a caseload: who signs in, and what adding one does to the key file. The list itself is a setting inside the
 * encrypted file (types/people.ts); a wrap in the key file that the list does not know counts for nothing.
 */
import type { Caseload, Secret } from '../caseload.ts';
import { CaseloadError } from '../codes.ts';
import type { Db } from '../connection.ts';
import { readKeyFile, writeKeyFile } from '../key-file.ts';
import { keyOfPerson, newRecovery, newRecoveryKey, wrapsOf, type Wraps } from './key-wraps.ts';
import { readSetting } from '../records/settings.ts';
import { normalInitials, People, PEOPLE, type Person } from '../types/clinic/people.ts';

/** Everybody who has or had a sign-in; null while there is one for all. */
export function peopleIn(setting: unknown): Person[] | null {
  const read = People.safeParse(setting);
  return read.success && read.data.length > 0 ? read.data : null;
}

/**
 * Whose sign-in it is: her id; null where there is one for all, or where no passphrase was typed.
 * @throws wrong-passphrase when the passphrase is right but no person of that wrap has these initials, or she was removed
 */
export function whoSignsIn(db: Db, wraps: Wraps | null, persons: readonly string[], typed: Secret): string | null {
  if (wraps === null || !('people' in wraps) || !('passphrase' in typed)) return null;
  const people = peopleIn(readSetting(db, PEOPLE));
  if (people === null) {
    // Nobody was added in the end: the one who was there before stays alone.
    if (persons.includes(wraps.people[0]!.id)) return null;
    throw new CaseloadError('wrong-passphrase');
  }
  const initials = typed.initials === undefined ? null : normalInitials(typed.initials);
  const fits = people.find(
    (one) =>
      one.removedOn === null &&
      persons.includes(one.id) &&
      (initials === null || normalInitials(one.initials) === initials),
  );
  if (!fits) throw new CaseloadError('wrong-passphrase');
  return fits.id;
}

/**
 * The wraps without those of nobody: an adding that was cut off leaves one. Of people who were removed the wrap stays
 * until the key was changed, so that it shows that this is still to be done.
 * @param before the wraps that go out of use: those of one sign-in, while a first person is being added
 */
export function knownPeople(db: Db, wraps: Wraps, before: Wraps | null): Wraps {
  if (!('people' in wraps)) return wraps;
  const known = peopleIn(readSetting(db, PEOPLE));
  // Nobody was added in the end: passphrase and sheet of before go on.
  if (known === null && before && !('people' in before) && before.recipient === wraps.recipient) return before;
  const kept = wraps.people.filter(({ id }, n) => (known ? known.some((one) => one.id === id) : n === 0));
  return kept.length === 0 ? wraps : { ...wraps, people: kept };
}

interface SignIn {
  id: string;
  initials: string;
  passphrase: string;
}

/**
 * Wraps the secret for one more person, in the key file only: who she is the caller notes afterwards, so that a kill in
 * between leaves a wrap that counts for nothing.
 * @param first who was alone until now, with her own passphrase, which was proved
 * @returns a new recovery key where the sheet in use knows of one sign-in only, else ''
 * @throws key-file-missing
 */
export async function addSignIn(
  caseload: Pick<Caseload, 'folder' | 'withKey'>,
  person: SignIn,
  first: SignIn | null,
  { now, workFactor }: { now: string; workFactor?: number | undefined },
): Promise<{ recoveryKey: string }> {
  const read = readKeyFile(caseload.folder);
  if (read.state !== 'ok') throw new CaseloadError('key-file-missing');
  const { file } = read;
  return caseload.withKey(async (copy) => {
    // The copy is zeroed when this function gives its promise back.
    const secret = Buffer.from(copy);
    try {
      const added = await keyOfPerson(secret, person, workFactor);
      if ('people' in file) {
        writeKeyFile(caseload.folder, { ...file, at: now, people: [...file.people, added] });
        return { recoveryKey: '' };
      }
      if (first === null) throw new CaseloadError('malformed-request', 'passphrase');
      const recoveryKey = newRecoveryKey();
      writeKeyFile(caseload.folder, {
        at: now,
        recipient: file.recipient,
        people: [await keyOfPerson(secret, first, workFactor), added],
        recovery: await newRecovery(secret, recoveryKey),
        // Passphrase and sheet of before count until the list of people is there.
        outgoing: wrapsOf(file),
      });
      return { recoveryKey };
    } finally {
      secret.fill(0);
    }
  });
}

/** The list of people is there: what was before goes out of use. */
export function settleSignIns(folder: string): void {
  const read = readKeyFile(folder);
  if (read.state === 'ok' && read.file.outgoing?.recipient === read.file.recipient)
    writeKeyFile(folder, { ...read.file, outgoing: null });
}

/** Ids of those whose wraps are in the key file; none where it cannot be read, which the opening tells. */
export function signInsIn(folder: string): string[] {
  try {
    const read = readKeyFile(folder);
    return read.state === 'ok' && 'people' in read.file ? read.file.people.map(({ id }) => id) : [];
  } catch {
    return [];
  }
}
