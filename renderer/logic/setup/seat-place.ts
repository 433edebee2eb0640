/**
 * Where seat, table and footrest go. P knee height, E elbow rest height, T table, dmin to dmax the table above the
 * elbow:
 * Smax = P + sole; footrest = T - (Smax + E + dmax), under 10 mm none; seat = Smax + footrest, or with none
 * T - E - dmin kept within Smax - 20 to Smax. Hip precautions: within Smax to Smax + 50.
 */
import type { SetupTable } from '../../../db/types/items.ts';
import type { Band, ChairChange, SetupInput } from './setup-types.ts';

export interface SeatPlace {
  /** Above what the feet stand on. */
  seatBand: Band;
  tableBand: Band;
  suits: number;
  seat: number;
  table: number;
  footrest: number;
  raiseTable: number;
  lowerTable: number;
  chair: ChairChange | null;
  thighGate: { passes: boolean; room: number; needed: number } | null;
}

const clamp = (value: number, band: Band): number => Math.min(Math.max(value, band.min), band.max);

/** @param input checked: knee and elbow height are there */
export function placeSeat(input: SetupInput, constants: SetupTable): SeatPlace {
  const elbow = input.elbow ?? 0;
  const above = constants.tableAboveElbow[input.purpose];
  const most = (input.popliteal ?? 0) + (input.shoe ?? constants.shoeDefault.value);
  const hip = input.cautions?.includes('hip') ?? false;
  const seatBand = hip
    ? { min: most, max: most + constants.seatAboveKneeHip.value }
    : { min: most - constants.seatBelowKnee.max, max: most - constants.seatBelowKnee.min };
  const told = (mm: number): number => (mm >= constants.leastChange.value ? mm : 0);
  const tables = (seats: Band): Band => ({ min: seats.min + elbow + above.min, max: seats.max + elbow + above.max });
  const measured = input.table;
  const fixedTable = measured !== null && !input.tableAdjustable;

  // As if any chair could be had.
  const wantedFootrest = fixedTable ? told(measured - tables(seatBand).max) : 0;
  const firstTable = measured === null ? middle(tables(seatBand)) : clamp(measured, tables(seatBand));
  const wanted =
    wantedFootrest > 0
      ? seatBand.max + wantedFootrest
      : clamp((fixedTable ? measured : firstTable) - elbow - above.min, seatBand);

  const { seat, chair } = reached(wanted, input, constants);
  const footrest = told(seat - seatBand.max);
  // A chair that cannot follow decides where the table has to be.
  const stuck = Math.abs(seat - wanted) >= constants.leastChange.value;
  const tableBand = stuck ? tables({ min: seat, max: seat }) : tables(seatBand);
  const suits = measured === null ? middle(tableBand) : clamp(measured, tableBand);
  const raiseLow = fixedTable ? told(tableBand.min - measured) : 0;
  const lowerTable = fixedTable && stuck ? told(measured - tableBand.max) : 0;
  const table = fixedTable ? measured + raiseLow : suits;

  const room = table - (input.tableThickness ?? constants.tableThicknessDefault.value) - seat;
  const needed = (input.thigh ?? 0) + constants.thighRoom.value;
  const thighGate = input.thigh === null ? null : { passes: room >= needed, room, needed };
  // Tight thighs: the table rises as far as the forearm allows, never the seat.
  const short = thighGate ? Math.max(0, needed - room) : 0;
  const spare = footrest > 0 || lowerTable > 0 ? 0 : seat + elbow + above.max - table;
  const lift = short > 0 ? Math.max(short, fixedTable ? constants.leastChange.value : 0) : 0;
  const up = lift <= spare ? lift : 0;
  return {
    seatBand,
    tableBand,
    suits: measured === null || input.tableAdjustable ? suits + up : suits,
    seat,
    table: table + up,
    footrest,
    raiseTable: fixedTable ? told(raiseLow + up) : 0,
    lowerTable,
    chair,
    thighGate,
  };
}

const middle = (band: Band): number => (band.min + band.max) / 2;

/** The seat that the chair there is can give: set, or raised by a cushion; a fixed one is never lowered. */
function reached(wanted: number, input: SetupInput, constants: SetupTable): Pick<SeatPlace, 'seat' | 'chair'> {
  const now = input.chair ?? null;
  if (now === null) return { seat: wanted, chair: null };
  const change = wanted - now;
  if (Math.abs(change) < constants.leastChange.value)
    return { seat: wanted, chair: { now, change: 0, cushion: false, short: 0 } };
  if (input.chairAdjustable !== false) return { seat: wanted, chair: { now, change, cushion: false, short: 0 } };
  if (change < 0) return { seat: now, chair: { now, change: 0, cushion: false, short: 0 } };
  const raise = Math.min(change, constants.cushionHighest.value);
  return { seat: now + raise, chair: { now, change: raise, cushion: true, short: change - raise } };
}
