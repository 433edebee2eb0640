/**
 * The set-up calculator: from tape measures to seat, table, footrest, thigh room, slant and paper.
 * Lengths in mm, heights above the floor unless said otherwise. The constants and their sources are in db/rules/screen/setup.json.
 */
import type { Hand } from '../../../db/types/common.ts';
import type { SetupTable } from '../../../db/types/items.ts';
import { checkSetup } from './setup-check.ts';
import { formatLength } from './length.ts';
import { slantOf } from './slanted-surface.ts';
import { setupNotes } from './setup-notes.ts';
import type { SetupInput, Band, SetupResult, SetupOutcome } from './setup-types.ts';

const clamp = (value: number, band: Band): number => Math.min(Math.max(value, band.min), band.max);

/**
 * Seat = knee height + shoe - (0 to 20); table = seat + elbow rest height + distance for the purpose.
 * A fixed table that is too high is met by raising the seat and a footrest, one that is too low by raising the table,
 * each by the smallest amount that brings the forearm into the band (common practice, no source).
 * Impossible or missing measures are refused with a sentence.
 */
export function setUp(input: SetupInput, constants: SetupTable): SetupOutcome {
  const refused = checkSetup(input);
  if (refused) return { ok: false, ...refused };

  const popliteal = input.popliteal ?? 0;
  const elbow = input.elbow ?? 0;
  const knee = popliteal + (input.shoe ?? constants.shoeDefault.value);
  const seat = { min: knee - constants.seatBelowKnee.max, max: knee - constants.seatBelowKnee.min };
  const above = constants.tableAboveElbow[input.purpose];
  const tableBand = { min: seat.min + elbow + above.min, max: seat.max + elbow + above.max };
  const middle = (tableBand.min + tableBand.max) / 2;
  const measured = input.table;
  const fixed = measured !== null && !input.tableAdjustable;
  const table = measured === null ? middle : clamp(measured, tableBand);

  const footrest = fixed ? Math.max(0, measured - tableBand.max) : 0;
  const raiseTable = fixed ? Math.max(0, tableBand.min - measured) : 0;
  const tableSet = fixed ? measured + raiseTable : table;
  // The highest seat that still suits the table leaves the least room for the thigh: the gate is tested there.
  const seatSet = footrest > 0 ? seat.max + footrest : clamp(tableSet - elbow - above.min, seat);

  const thickness = input.tableThickness ?? constants.tableThicknessDefault.value;
  const room = tableSet - thickness - seatSet;
  const needed = (input.thigh ?? 0) + constants.thighRoom.value;
  const thighGate = input.thigh === null ? null : { passes: room >= needed, room, needed };
  const slant = slantOf(input.slantRise, input.slantLength, constants);

  const show = (value: number): string => formatLength(value, input.units ?? 'mm');
  const findings: SetupResult['findings'] = [];
  const least = constants.leastChange.value;
  if (footrest >= least) {
    const code = 'table-too-high';
    findings.push({ code, sentence: `Raise the seat to ${show(seatSet)} and put ${show(footrest)} under both feet.` });
    findings.push({ code: 'feet-unsupported', sentence: `On the raised seat the feet hang ${show(footrest)} free.` });
  }
  if (raiseTable >= least)
    findings.push({ code: 'table-too-low', sentence: `Raise the table by ${show(raiseTable)}.` });
  if (measured !== null && input.tableAdjustable && Math.abs(measured - table) >= least) {
    const code = measured > table ? 'table-too-high' : 'table-too-low';
    findings.push({ code, sentence: `Set it from ${show(measured)} to ${show(table)}.` });
  }
  if (thighGate && !thighGate.passes) {
    const sentence = `There are ${show(room)}, and ${show(needed)} are needed: use a thinner top, or one without an apron.`;
    findings.push({ code: 'thigh-room', sentence });
  }
  if (slant?.advice === 'too-steep') {
    findings.push({ code: 'slant-too-steep', sentence: `It rises by ${slant.angle.toFixed(1)} degrees.` });
  }

  const result: SetupResult = {
    seat,
    tableBand,
    table,
    footrest,
    raiseTable,
    set: { seat: seatSet, table: tableSet },
    thighGate,
    paperTilt: paperTilt(input.hand, input.cautions ?? [], constants),
    slant,
    notes: [],
    findings,
  };
  result.notes = setupNotes(input, result, constants);
  return { ok: true, result };
}

/** How far to turn the page for the hand that writes now. Common practice; the direction is a convention. */
function paperTilt(hand: Hand | null, cautions: readonly string[], constants: SetupTable): SetupResult['paperTilt'] {
  if (hand === null) return null;
  if (cautions.includes('neglect-or-field')) return { min: 0, max: 0, direction: 'straight' };
  const { min, max } = constants.paperTilt[hand];
  return { min, max, direction: hand === 'right' ? 'counter-clockwise' : 'clockwise' };
}
