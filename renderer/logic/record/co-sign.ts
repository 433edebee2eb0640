/**
 * Co-signature: what an assistant or student records, on a visit or on a home program, waits until a therapist signs it;
 * nobody signs an entry of her own, and what is changed after the signature waits again. Common practice, no source.
 */
import type { Texts } from '../texts/en.ts';
import type { CoSign } from '../../../db/types/common.ts';

/** A visit or a home program. */
export interface CoSigned {
  coSign?: CoSign | undefined;
}

export interface Signer {
  by: string;
  at: string;
  /** Works as an assistant or student. */
  assistant: boolean;
}

const same = (a: string, b: string): boolean => a.trim().toLowerCase() === b.trim().toLowerCase();

/** The co-signature as it is to be stored (undefined = none is needed), or why it is refused. */
export function coSignOf(
  stored: CoSigned | null,
  sent: CoSigned,
  who: Signer,
): { coSign: CoSign | undefined } | { refused: 'co-sign-self' | 'co-sign-assistant' } {
  const before = stored?.coSign;
  const signs = before !== undefined && before.signedBy === null && (sent.coSign?.signedBy ?? null) !== null;
  if (signs && same(before.recordedBy, who.by)) return { refused: 'co-sign-self' };
  if (signs && who.assistant) return { refused: 'co-sign-assistant' };
  if (signs) return { coSign: { ...before, signedBy: who.by, signedAt: who.at } };
  if (!who.assistant) return { coSign: before };
  return { coSign: { recordedBy: who.by, signedBy: null, signedAt: null } };
}

/** The same when a therapist approves: her approval signs what an assistant drafted. */
export const approvalSigns = (stored: CoSigned, who: Signer): ReturnType<typeof coSignOf> =>
  coSignOf(stored, { coSign: stored.coSign && { ...stored.coSign, signedBy: who.by, signedAt: who.at } }, who);

/** Waits for somebody else's signature. */
export const waitsForCoSign = ({ coSign }: CoSigned): boolean => coSign?.signedBy === null;

/** @param showDate writes an ISO day as the page does; '' = recorded by a therapist */
export function coSignWords({ coSign }: CoSigned, showDate: (iso: string) => string): string {
  if (!coSign) return '';
  const signed =
    coSign.signedBy === null
      ? 'Not co-signed.'
      : `Co-signed by ${coSign.signedBy}${coSign.signedAt === null ? '' : `, ${showDate(coSign.signedAt)}`}.`;
  return `Recorded by ${coSign.recordedBy} (assistant or student). ${signed}`;
}

/** Of a home program, in the words of the page; '' = drafted by therapists only. */
export const preparedWords = ({ coSign }: CoSigned, { preparedBy }: Texts['program']): string =>
  coSign ? preparedBy(coSign.recordedBy, coSign.signedBy) : '';
