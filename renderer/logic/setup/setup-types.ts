/** Shapes of the set-up calculator: what goes in, what comes out. Lengths in mm, heights above the floor. */
import type { SetupMeasures } from '../../../db/types/intake.ts';
import type { LengthUnit } from './length.ts';
import type { Slant } from './slanted-surface.ts';

export type SetupInput = Pick<
  SetupMeasures,
  | 'popliteal'
  | 'elbow'
  | 'shoe'
  | 'table'
  | 'tableAdjustable'
  | 'tableThickness'
  | 'thigh'
  | 'slantRise'
  | 'slantLength'
  | 'hand'
  | 'purpose'
> & {
  /** Unit of the sentences; every number stays in mm. */
  units?: LengthUnit;
  /** What else changes the advice. */
  cautions?: readonly ('hip' | 'wheelchair' | 'neglect-or-field')[];
};

export interface Band {
  min: number;
  max: number;
}

export interface SetupResult {
  /** Height of the seat, client sitting on it, above what the feet stand on. */
  seat: Band;
  /** Table heights that suit this client with feet on the floor. */
  tableBand: Band;
  /** The suitable height nearest to the table there is; the middle of the band where none was measured or it adjusts. */
  table: number;
  /** Height of the footrest under both feet; the seat rises by as much. 0 = none needed. */
  footrest: number;
  /** By how much a table that is too low must be raised. */
  raiseTable: number;
  /** What to set: seat and table above the floor. */
  set: { seat: number; table: number };
  /** Room between seat and underside of the table; null = thigh not measured. */
  thighGate: { passes: boolean; room: number; needed: number } | null;
  paperTilt: (Band & { direction: 'clockwise' | 'counter-clockwise' | 'straight' }) | null;
  slant: Slant | null;
  notes: string[];
  findings: { code: string; sentence: string }[];
}

export type SetupOutcome = { ok: true; result: SetupResult } | { ok: false; field: string; sentence: string };
