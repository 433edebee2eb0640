/**
 * Co-signature: what an assistant or student records waits until a therapist signs it; nobody signs an entry of her
 * own, and a note that is changed after the signature waits again. Common practice, no source.
 */
import type { CoSign, Visit } from '../../../db/types/visit.ts';

export interface Signer {
  by: string;
  at: string;
  /** Works as an assistant or student. */
  assistant: boolean;
}

const same = (a: string, b: string): boolean => a.trim().toLowerCase() === b.trim().toLowerCase();

/** The co-signature of a visit as it is to be stored (undefined = none is needed), or why it is refused. */
export function coSignOf(
  stored: Visit | null,
  sent: Pick<Visit, 'coSign'>,
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

/** Waits for somebody else's signature. */
export const waitsForCoSign = (visit: Pick<Visit, 'coSign'>): boolean => visit.coSign?.signedBy === null;

/** @param showDate writes an ISO day as the page does; '' = recorded by a therapist */
export function coSignWords({ coSign }: Pick<Visit, 'coSign'>, showDate: (iso: string) => string): string {
  if (!coSign) return '';
  const signed =
    coSign.signedBy === null
      ? 'Not co-signed.'
      : `Co-signed by ${coSign.signedBy}${coSign.signedAt === null ? '' : `, ${showDate(coSign.signedAt)}`}.`;
  return `Recorded by ${coSign.recordedBy} (assistant or student). ${signed}`;
}
