/** Who may sign what an assistant recorded: CLINICAL-2 f3; common practice, no source. */
import { expect, test } from 'vitest';
import { approvalSigns, coSignOf, coSignWords } from '../../../renderer/logic/record/co-sign.ts';
import type { Visit } from '../../../db/types/visit.ts';

const at = '2026-03-04T09:12:00.000Z';
const who = (by: string, assistant = false) => ({ by, at, assistant });
const waits = { recordedBy: 'AS', signedBy: null, signedAt: null };
const asks = { coSign: { ...waits, signedBy: 'x', signedAt: at } };
const visit = (coSign?: Visit['coSign']) => ({ coSign }) as Visit;

test('what a therapist records needs no co-signature, whatever the window sends', () => {
  expect(coSignOf(null, {}, who('QM'))).toEqual({ coSign: undefined });
  expect(coSignOf(null, { coSign: waits }, who('QM'))).toEqual({ coSign: undefined });
});

test('what an assistant records waits, and waits again when she changes a signed note', () => {
  expect(coSignOf(null, {}, who('AS', true))).toEqual({ coSign: waits });
  const signed = { recordedBy: 'AS', signedBy: 'QM', signedAt: at };
  expect(coSignOf(visit(signed), { coSign: signed }, who('AS', true))).toEqual({ coSign: waits });
  expect(coSignOf(visit(signed), { coSign: signed }, who('QM'))).toEqual({ coSign: signed });
});

test('somebody else signs under her own initials and the clock of the program', () => {
  expect(coSignOf(visit(waits), asks, who('QM'))).toEqual({
    coSign: { recordedBy: 'AS', signedBy: 'QM', signedAt: at },
  });
});

test('nobody signs her own entry, in whatever capitals, and no assistant signs at all', () => {
  expect(coSignOf(visit(waits), asks, who('as '))).toEqual({ refused: 'co-sign-self' });
  expect(coSignOf(visit(waits), asks, who('BT', true))).toEqual({ refused: 'co-sign-assistant' });
});

test('both names are said, and that nobody has signed', () => {
  const day = (iso: string) => iso.slice(0, 10);
  expect(coSignWords(visit(), day)).toBe('');
  expect(coSignWords(visit(waits), day)).toBe('Recorded by AS (assistant or student). Not co-signed.');
  expect(coSignWords(visit({ recordedBy: 'AS', signedBy: 'QM', signedAt: at }), day)).toBe(
    'Recorded by AS (assistant or student). Co-signed by QM, 2026-03-04.',
  );
});

test('approving signs what an assistant drafted, never by the one who drafted it', () => {
  expect(approvalSigns({}, who('QM'))).toEqual({ coSign: undefined });
  expect(approvalSigns({ coSign: waits }, who('QM'))).toEqual({
    coSign: { recordedBy: 'AS', signedBy: 'QM', signedAt: at },
  });
  expect(approvalSigns({ coSign: waits }, who('AS'))).toEqual({ refused: 'co-sign-self' });
  const signed = { recordedBy: 'AS', signedBy: 'BT', signedAt: at };
  expect(approvalSigns({ coSign: signed }, who('QM'))).toEqual({ coSign: signed });
});
