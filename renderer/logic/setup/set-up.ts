/**
 * The set-up calculator: from tape measures to seat, table, footrest, thigh room, slant and paper.
 * Lengths in mm, heights above the floor unless said otherwise. The constants and their sources are in db/rules/screen/setup.json.
 */
import type { Hand } from '../../../db/types/common.ts';
import type { SetupTable } from '../../../db/types/items.ts';
import { checkSetup } from './setup-check.ts';
import { placeSeat } from './seat-place.ts';
import { formatLength } from './length.ts';
import { slantOf } from './slanted-surface.ts';
import { setupNotes } from './setup-notes.ts';
import type { SetupInput, SetupResult, SetupOutcome } from './setup-types.ts';
import type { Decimals } from '../texts/decimals.ts';
import type { Told } from '../texts/screens/en/screens-en.ts';

/**
 * Seat and table from the tape (common practice, no source). A fixed table that is too high is met by a higher seat and
 * a footrest, one that is too low by raising the table. Less than a tape can tell counts as nothing.
 * Impossible or missing measures are refused with a sentence.
 */
export function setUp(input: SetupInput, constants: SetupTable, words: Told['seat'], decimals: Decimals): SetupOutcome {
  const refused = checkSetup(input, words, decimals);
  if (refused) return { ok: false, ...refused };
  const place = placeSeat(input, constants);
  const result: SetupResult = {
    seat: place.seatBand,
    tableBand: place.tableBand,
    table: place.suits,
    footrest: place.footrest,
    raiseTable: place.raiseTable,
    set: { seat: place.seat, table: place.table },
    chair: place.chair,
    lowerTable: place.lowerTable,
    thighGate: place.thighGate,
    paperTilt: paperTilt(input.hand, input.cautions ?? [], constants),
    slant: slantOf(input.slantRise, input.slantLength, constants),
    notes: [],
    findings: [],
  };
  result.findings = findingsOf(input, result, constants, words, decimals);
  result.notes = setupNotes(input, result, constants, words, decimals);
  return { ok: true, result };
}

/** What is wrong now, each with the one thing to do about it. */
function findingsOf(
  input: SetupInput,
  result: SetupResult,
  constants: SetupTable,
  words: Told['seat'],
  decimals: Decimals,
): SetupResult['findings'] {
  const show = (value: number): string => formatLength(value, input.units ?? 'mm');
  const findings: SetupResult['findings'] = [];
  const { footrest, raiseTable, lowerTable, set, chair, thighGate, slant } = result;
  const least = constants.leastChange.value;
  const tableHigh = input.table !== null && !input.tableAdjustable && input.table > result.tableBand.max;
  if (footrest > 0 && (tableHigh || !chair || chair.change >= 0))
    findings.push({ code: 'table-too-high', sentence: words.seatForTable(show(set.seat)) });
  if (footrest > 0)
    findings.push({
      code: 'feet-unsupported',
      sentence: words.feetHang(show(set.seat), show(footrest)),
    });
  else if (lowerTable > 0) findings.push({ code: 'table-too-high', sentence: words.tableTooHighBy(show(lowerTable)) });
  if (raiseTable > 0) findings.push({ code: 'table-too-low', sentence: words.raiseTableBy(show(raiseTable)) });
  if (input.table !== null && input.tableAdjustable && Math.abs(input.table - set.table) >= least) {
    const code = input.table > set.table ? 'table-too-high' : 'table-too-low';
    findings.push({ code, sentence: words.setTable(show(input.table), show(set.table)) });
  }
  if (thighGate && !thighGate.passes) {
    const sentence = words.thighRoom(show(thighGate.room), show(thighGate.needed));
    findings.push({ code: 'thigh-room', sentence });
  }
  if (slant?.advice === 'too-steep') {
    findings.push({ code: 'slant-too-steep', sentence: words.rises(decimals(slant.angle, 1)) });
  }
  return findings;
}

/** How far to turn the page for the hand that writes now. Common practice; the direction is a convention. */
function paperTilt(hand: Hand | null, cautions: readonly string[], constants: SetupTable): SetupResult['paperTilt'] {
  if (hand === null) return null;
  if (cautions.includes('neglect-or-field')) return { min: 0, max: 0, direction: 'straight' };
  const { min, max } = constants.paperTilt[hand];
  return { min, max, direction: hand === 'right' ? 'counter-clockwise' : 'clockwise' };
}
