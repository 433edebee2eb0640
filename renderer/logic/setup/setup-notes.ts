/** What to say beside the numbers of a set-up, in the order in which it is done. */
import type { SetupTable } from '../../../db/types/items.ts';
import { formatLength } from './length.ts';
import type { Decimals } from '../texts/decimals.ts';
import type { Told } from '../texts/screens/en/screens-en.ts';
import type { SetupInput, SetupResult } from './setup-types.ts';

/** Plain sentences for therapist and client. */
export function setupNotes(
  input: SetupInput,
  result: SetupResult,
  constants: SetupTable,
  words: Told['seat'],
  decimals: Decimals,
): string[] {
  const show = (value: number): string => formatLength(value, input.units ?? 'mm');
  const notes: string[] = [];
  const cautions = input.cautions ?? [];
  const say = (sentence: string): number => notes.push(sentence);

  say(seatSentence(input, result, constants, words));
  if (input.shoe === null) say(words.soleAssumed(show(constants.shoeDefault.value)));
  if (result.footrest > constants.footrestHighest.value) say(words.highStep);
  if (cautions.includes('wheelchair') && result.set.seat > (result.chair?.now ?? result.seat.max))
    say(words.wheelchair);
  if (result.chair && result.chair.short >= constants.leastChange.value)
    say(words.stillTooLow(show(result.chair.short)));
  if (result.lowerTable > 0) say(words.tableStillHigh(show(result.lowerTable)));
  const thighs = result.thighGate !== null && !result.thighGate.passes;
  const forThighs = thighs && result.set.table > result.tableBand.min && thighsFit(input, result, constants);
  if (result.raiseTable > 0 && !forThighs) say(words.tableTooLow(show(result.raiseTable)));
  if (cautions.includes('hip')) say(words.hip);
  if (result.thighGate === null) say(words.thighNotMeasured);
  else if (forThighs) {
    const how = input.table !== null && !input.tableAdjustable && result.raiseTable > 0;
    say(how ? words.thighsTightRaise(show(result.raiseTable)) : words.thighsTightKeep(show(result.set.table)));
  } else if (thighs) {
    const { room, needed } = result.thighGate;
    say(words.thighsDoNotFit(show(room), show(needed)));
  }
  if (input.thigh !== null && input.tableThickness === null) {
    say(words.topAssumed(show(constants.tableThicknessDefault.value)));
  }
  if (input.purpose === 'support') say(words.forSupport);
  if (input.purpose === 'shoulder-pain') say(words.forShoulder);
  say(paperNote(input, result, words));
  say(words.seatEdge(show(constants.seatDepthGap.min), show(constants.seatDepthGap.max)));
  if (result.slant) say(slantNote(result.slant.angle, result.slant.advice, constants, words, decimals));
  return notes;
}

/** Whether the thighs have their room at the heights to set. */
function thighsFit(input: SetupInput, result: SetupResult, constants: SetupTable): boolean {
  const thickness = input.tableThickness ?? constants.tableThicknessDefault.value;
  return result.set.table - thickness - result.set.seat >= (result.thighGate?.needed ?? 0) - 1e-9;
}

/** The one sentence on the seat: its number, what to do with the chair, and the footrest where one is used. */
function seatSentence(input: SetupInput, result: SetupResult, constants: SetupTable, words: Told['seat']): string {
  const show = (value: number): string => formatLength(value, input.units ?? 'mm');
  const { chair, footrest, set } = result;
  const { width, depth } = constants.footrestSize;
  const feet = footrest > 0 ? words.footrest(show(footrest), show(width.value), show(depth.value)) : '';
  const seat = words.seat(show(set.seat));
  if (!chair) return feet ? words.atThisHeight(seat, feet) : seat;
  const way = chair.change > 0 ? 'raise' : chair.change < 0 ? 'lower' : 'leave';
  return words.chair(seat, show(chair.now), way, show(Math.abs(chair.change)), chair.cushion, feet);
}

function paperNote(input: SetupInput, result: SetupResult, words: Told['seat']): string {
  const tilt = result.paperTilt;
  if (tilt === null) return words.paperNoHand;
  if (tilt.direction === 'straight') return words.paperStraight;
  return words.paperTurn(tilt.min, tilt.max, tilt.direction, input.hand === 'left');
}

function slantNote(
  angle: number,
  advice: string,
  constants: SetupTable,
  words: Told['seat'],
  decimals: Decimals,
): string {
  const { suggested, writingHighest, readingHighest } = constants.slant;
  const rise = decimals(angle, 1);
  if (advice === 'too-steep') return words.slantTooSteep(rise, writingHighest.value, angle <= readingHighest.value);
  const say = advice === 'suggested' ? words.slantSuggested : words.slantOther;
  return say(rise, suggested.min, suggested.max);
}
