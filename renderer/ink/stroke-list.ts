import type { InkDocument } from './ink-types.ts';
import { strokesOf } from './measures/ink-strokes.ts';
import { contactsOf } from './prepare/contacts.ts';
import { motionOf } from './prepare/motion.ts';

/** One up or down stroke, for charts and for counting what lay in a target band. */
export interface InkStroke {
  /** Middle of the stroke, s from the first sample. */
  atS: number;
  heightMm: number;
  /** mm/s */
  meanSpeed: number;
}

/** Strokes of a recording in the order of writing; none without a scale or times. */
export function inkStrokes(document: InkDocument): InkStroke[] {
  const { contacts, intervalMs } = contactsOf(document);
  if (!document.calibrated || intervalMs === null || contacts.length === 0) return [];
  const startS = contacts[0]!.t[0]! / 1000;
  const motions = contacts.map((contact) => motionOf(contact, intervalMs)).filter((motion) => motion !== null);
  return strokesOf(motions).map(({ atS, height, meanSpeed }) => ({ atS: atS - startS, heightMm: height, meanSpeed }));
}
