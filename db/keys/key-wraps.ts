/**
 * How the caseload's secret is wrapped in the key file. One sign-in: the passphrase and the recovery key each seal the
 * secret itself. Several: each person has a key pair, whose private half her passphrase seals and to whose public half
 * the secret is sealed; so a changed secret reaches everybody who stays without anybody's passphrase. The recovery key
 * has such a pair too, so that its sheet outlives a removed person.
 */
import { createHash, randomBytes } from 'node:crypto';
import { z } from 'zod';
import { openBytes, sealBytes } from '../age.ts';
import { newKeyPair, openWith, sealTo } from './age-keys.ts';
import { normalInitials } from '../types/clinic/people.ts';

const Sealed = z.string().max(4000);
const Holder = z.object({
  recipient: z.string().max(100),
  /** The private half, sealed by the passphrase or the recovery key. */
  own: Sealed,
  /** The caseload's secret, sealed to `recipient`. */
  secret: Sealed,
});
type Holder = z.infer<typeof Holder>;

const KeyOfPerson = Holder.extend({ id: z.uuid(), mark: z.number().int().min(0).max(15) });
export type KeyOfPerson = z.infer<typeof KeyOfPerson>;

/** More people than this share no laptop. */
export const MOST_PEOPLE = 24;

export const WrapsOfOne = z.object({ recipient: z.string(), passphrase: Sealed, recovery: Sealed });
export const WrapsOfPeople = z.object({
  recipient: z.string(),
  people: z.array(KeyOfPerson).min(1).max(MOST_PEOPLE),
  recovery: Holder,
});
export type WrapsOfOne = z.infer<typeof WrapsOfOne>;
export type WrapsOfPeople = z.infer<typeof WrapsOfPeople>;
export type Wraps = WrapsOfOne | WrapsOfPeople;

/** The wraps alone, without what else stands in the key file. */
export const wrapsOf = (file: Wraps): Wraps =>
  'people' in file
    ? { recipient: file.recipient, people: file.people, recovery: file.recovery }
    : { recipient: file.recipient, passphrase: file.passphrase, recovery: file.recovery };

/** What the key file's checksum covers. */
export const wrapList = (wraps: Wraps | null): unknown[] | null => {
  if (wraps === null) return null;
  if (!('people' in wraps)) return [wraps.recipient, wraps.passphrase, wraps.recovery];
  const parts = ({ recipient, own, secret }: Holder) => [recipient, own, secret];
  return [wraps.recipient, wraps.people.map((one) => [one.id, one.mark, ...parts(one)]), parts(wraps.recovery)];
};

/**
 * One of sixteen, from initials and the person's random id: at the sign-in it chooses whose wrap is tried, since each
 * try costs most of a second. One pair of letters in sixteen has the same, so that it names nobody.
 */
export const markOf = (id: string, initials: string): number =>
  createHash('sha256')
    .update(`${id}\n${normalInitials(initials)}`)
    .digest()[0]! & 15;

/** The recovery key is random: stretching it would only cost time. */
const RECOVERY_WORK_FACTOR = 10;

/** No I, L, O, U: nothing on the printed sheet can be misread. */
const RECOVERY_LETTERS = '0123456789ABCDEFGHJKMNPQRSTVWXYZ';

/** 160 random bits in eight groups of four. */
export function newRecoveryKey(): string {
  const letters = [...randomBytes(32)].map((byte) => RECOVERY_LETTERS[byte % 32]);
  return (letters.join('').match(/.{4}/g) ?? []).join('-');
}

/** What was typed from the sheet: case, hyphens, spaces and the letters left out do not matter. */
export const normalRecoveryKey = (typed: string): string =>
  typed
    .toUpperCase()
    .replace(/O/g, '0')
    .replace(/[IL]/g, '1')
    .replace(/[^0-9A-Z]/g, '');

/** The wraps of one sign-in, with a new recovery key: passphrase and recovery key each seal the secret. */
export async function wrapsForOne(
  identity: Uint8Array,
  recipient: string,
  passphrase: string,
  workFactor?: number,
): Promise<{ wraps: WrapsOfOne; recoveryKey: string }> {
  const recoveryKey = newRecoveryKey();
  const wraps = {
    recipient,
    passphrase: await sealBytes(identity, passphrase, workFactor),
    recovery: await sealBytes(identity, normalRecoveryKey(recoveryKey), RECOVERY_WORK_FACTOR),
  };
  return { wraps, recoveryKey };
}

/** A new secret with both wraps. `identity` is secret: zero it after use. */
export async function newSecret(
  passphrase: string,
  workFactor?: number,
): Promise<{ identity: Buffer; wraps: WrapsOfOne; recoveryKey: string }> {
  const { identity, recipient } = newKeyPair();
  return { identity, ...(await wrapsForOne(identity, recipient, passphrase, workFactor)) };
}

/** A new key pair whose private half the passphrase seals, with the secret sealed to it. */
export async function newHolder(secret: Uint8Array, passphrase: string, workFactor?: number): Promise<Holder> {
  const { identity, recipient } = newKeyPair();
  try {
    return {
      recipient,
      own: await sealBytes(identity, passphrase, workFactor),
      secret: await sealTo(secret, recipient),
    };
  } finally {
    identity.fill(0);
  }
}

export const newRecovery = (secret: Uint8Array, recoveryKey: string): Promise<Holder> =>
  newHolder(secret, normalRecoveryKey(recoveryKey), RECOVERY_WORK_FACTOR);

/** A person's wrap of the secret. */
export async function keyOfPerson(
  secret: Uint8Array,
  who: { id: string; initials: string; passphrase: string },
  workFactor?: number,
): Promise<KeyOfPerson> {
  return {
    id: who.id,
    mark: markOf(who.id, who.initials),
    ...(await newHolder(secret, who.passphrase, workFactor)),
  };
}

/** The same holder with another secret of the caseload. */
export const resealed = async <H extends Holder>(holder: H, secret: Uint8Array): Promise<H> => ({
  ...holder,
  secret: await sealTo(secret, holder.recipient),
});

async function openHolder(holder: Holder, passphrase: string): Promise<Buffer | null> {
  const own = await openBytes(holder.own, passphrase);
  if (own === null) return null;
  try {
    return await openWith(holder.secret, own);
  } finally {
    own.fill(0);
  }
}

/** What opens wraps: `initials` or `person` choose whose are tried; without either all are, one after the other. */
export type Typed =
  { passphrase: string; initials?: string | undefined; person?: string | undefined } | { recoveryKey: string };

/** Whose wraps are tried. Initials that nobody has cost one try as well: how long it takes tells nothing of them. */
function tried(
  people: readonly KeyOfPerson[],
  { initials, person }: { initials?: string | undefined; person?: string | undefined },
) {
  if (person !== undefined) return people.filter(({ id }) => id === person);
  if (initials === undefined) return people;
  const marked = people.filter(({ id, mark }) => mark === markOf(id, initials));
  return marked.length > 0 ? marked : people.slice(0, 1);
}

export interface OpenedWrap {
  /** The caseload's secret: zero it after use. */
  identity: Buffer;
  /** Whose wrap gave it: several where two people chose the same passphrase; none with one sign-in or the recovery key. */
  persons: string[];
}

/** The secret, or null when nothing that was typed opens it. */
export async function unwrap(wraps: Wraps, typed: Typed): Promise<OpenedWrap | null> {
  if ('recoveryKey' in typed) {
    const key = normalRecoveryKey(typed.recoveryKey);
    const { recovery } = wraps;
    const identity = await (typeof recovery === 'string' ? openBytes(recovery, key) : openHolder(recovery, key));
    return identity && { identity, persons: [] };
  }
  if (!('people' in wraps)) {
    const identity = await openBytes(wraps.passphrase, typed.passphrase);
    return identity && { identity, persons: [] };
  }
  const found: OpenedWrap[] = [];
  for (const one of tried(wraps.people, typed)) {
    const identity = await openHolder(one, typed.passphrase);
    if (identity) found.push({ identity, persons: [one.id] });
  }
  const [first, ...others] = found;
  for (const { identity } of others) identity.fill(0);
  return first ? { ...first, persons: found.flatMap(({ persons }) => persons) } : null;
}
