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
  /** Height of the seat there is, client sitting on it; null or absent = not measured. */
  chair?: SetupMeasures['chair'];
  /** Whether that seat can be set; absent = it can. */
  chairAdjustable?: boolean | undefined;
  /** Unit of the sentences; every number stays in mm. */
  units?: LengthUnit;
  /** What else changes the advice. */
  cautions?: readonly ('hip' | 'wheelchair' | 'neglect-or-field')[];
};

export interface Band {
  min: number;
  max: number;
}

/** The chair there is, all in mm. */
export interface ChairChange {
  now: number;
  /** Raise (+) or lower (-) by so much; 0 = leave it. */
  change: number;
  /** Raised by a firm cushion, because it cannot be set. */
  cushion: boolean;
  /** So much is still missing then. */
  short: number;
}

export interface SetupResult {
  /** Height of the seat, client sitting on it, above what the feet stand on. */
  seat: Band;
  /** Table heights that suit this client on the seat there is, or on any seat that suits. */
  tableBand: Band;
  /** The suitable height nearest to the table there is; the middle of the band where none was measured or it adjusts. */
  table: number;
  /** Height of the footrest under both feet. 0 = none needed; never less than a tape can tell. */
  footrest: number;
  /** By how much a table that is too low must be raised. */
  raiseTable: number;
  /** What to set, above the floor. The one seat number that every page, drawing and program shows. */
  set: { seat: number; table: number };
  /** What to do with the chair there is; null = not measured. */
  chair: ChairChange | null;
  /** The table is too high and neither the seat nor a cushion can make up for it: by so much. */
  lowerTable: number;
  /** Room between seat and underside of the table before anything is done about it; null = thigh not measured. */
  thighGate: { passes: boolean; room: number; needed: number } | null;
  paperTilt: (Band & { direction: 'clockwise' | 'counter-clockwise' | 'straight' }) | null;
  slant: Slant | null;
  notes: string[];
  findings: { code: string; sentence: string }[];
}

export type SetupOutcome = { ok: true; result: SetupResult } | { ok: false; field: string; sentence: string };
