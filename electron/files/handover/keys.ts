/** The pair of keys for hand-overs: the public half is given to colleagues, the secret half stays in the caseload. */
import { Encrypter, generateX25519Identity, identityToRecipient } from 'age-encryption';
import { z } from 'zod';
import type { Caseload, Doing } from '../../../db/index.ts';
import { Refusal } from '../../contract/envelope.ts';

const Pair = z.object({ identity: z.string(), recipient: z.string() });
type Pair = z.infer<typeof Pair>;

export const Colleague = z.object({ name: z.string().trim().min(1).max(80), recipient: z.string().max(100) });
export type Colleague = z.infer<typeof Colleague>;

function knownKeys(caseload: Caseload): Pair | null {
  const known = Pair.safeParse(caseload.setting('handoverKey'));
  return known.success ? known.data : null;
}

/** The public half, or null before the first use. */
export const knownRecipient = (caseload: Caseload): string | null => knownKeys(caseload)?.recipient ?? null;

/** The secret half to read a file with; before the first use one that fits nothing, so that looking writes nothing. */
export const identityToRead = async (caseload: Caseload): Promise<string> =>
  knownKeys(caseload)?.identity ?? (await generateX25519Identity());

/** This caseload's own pair, made at the first use. It outlives a changed passphrase, so that colleagues need no new key. */
export async function ownKeys(caseload: Caseload, doing: Doing): Promise<Pair> {
  const known = knownKeys(caseload);
  if (known) return known;
  const identity = await generateX25519Identity();
  const pair = { identity, recipient: await identityToRecipient(identity) };
  caseload.putSetting('handoverKey', pair, doing);
  return pair;
}

export function colleagues(caseload: Caseload): Colleague[] {
  const known = z.array(Colleague).safeParse(caseload.setting('colleagues'));
  return known.success ? known.data : [];
}

/** What was pasted, as a public key. @throws Refusal key-is-secret, key-not-one, key-is-own */
export function colleagueKey(pasted: string, own: string | null): string {
  const key = pasted.trim().replace(/\s+/g, '').toLowerCase();
  if (key.startsWith('age-secret-key-')) throw new Refusal('key-is-secret');
  if (key === own) throw new Refusal('key-is-own');
  try {
    if (!/^age1[02-9ac-hj-np-z]{58}$/.test(key)) throw new Error('not a key');
    new Encrypter().addRecipient(key);
  } catch {
    throw new Refusal('key-not-one');
  }
  return key;
}

/** The few letters by which two people compare a key on the telephone. */
export const shortKey = (recipient: string): string => `${recipient.slice(4, 8)} … ${recipient.slice(-4)}`;
