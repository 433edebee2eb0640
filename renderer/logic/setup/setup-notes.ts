/** What to say beside the numbers of a set-up, in the order in which it is done. */
import type { SetupTable } from '../../../db/types/items.ts';
import { formatLength } from './length.ts';
import type { SetupInput, SetupResult } from './setup-types.ts';

/** Plain sentences for therapist and client. */
export function setupNotes(input: SetupInput, result: SetupResult, constants: SetupTable): string[] {
  const show = (value: number): string => formatLength(value, input.units ?? 'mm');
  const notes: string[] = [];
  const cautions = input.cautions ?? [];
  const say = (sentence: string): number => notes.push(sentence);

  say(seatSentence(input, result, constants));
  if (input.shoe === null) say(`The sole was not measured: ${show(constants.shoeDefault.value)} were assumed.`);
  if (result.footrest > constants.footrestHighest.value)
    say('So high a step is hard to get down from: look for a lower table or seat.');
  if (cautions.includes('wheelchair') && result.set.seat > (result.chair?.now ?? result.seat.max))
    say('Wheelchair: brakes on, and no higher seat before the transfer has been looked at.');
  if (result.chair && result.chair.short >= constants.leastChange.value)
    say(
      `That is still ${show(result.chair.short)} too low, and a higher cushion is unsteady: look for a higher chair.`,
    );
  if (result.lowerTable > 0)
    say(`The table is still ${show(result.lowerTable)} too high for this seat: look for a lower table.`);
  const thighs = result.thighGate !== null && !result.thighGate.passes;
  const forThighs = thighs && result.set.table > result.tableBand.min && thighsFit(input, result, constants);
  if (result.raiseTable > 0 && !forThighs)
    say(`The table is too low: raise it by ${show(result.raiseTable)} on firm blocks, all legs alike.`);
  if (cautions.includes('hip')) say('Hip precautions: keep the hips above the knees.');
  if (result.thighGate === null) say('The thigh was not measured: check that a hand fits between thigh and table.');
  else if (forThighs) {
    const how = input.table !== null && !input.tableAdjustable && result.raiseTable > 0;
    say(
      how
        ? `The thighs are tight: raise the table by ${show(result.raiseTable)} on firm blocks, all legs alike. The seat stays.`
        : `The thighs are tight at a lower table: keep it at ${show(result.set.table)}. The seat stays.`,
    );
  } else if (thighs) {
    const { room, needed } = result.thighGate;
    say(
      `The thighs do not fit: ${show(room)} of room, ${show(needed)} needed. Use a thinner top, or one without an apron.`,
    );
  }
  if (input.thigh !== null && input.tableThickness === null) {
    say(`The table top was not measured: ${show(constants.tableThicknessDefault.value)} were assumed.`);
  }
  if (input.purpose === 'support') say('Higher for support: stop where the shoulders begin to rise.');
  if (input.purpose === 'shoulder-pain') say('Level with the elbow, to keep the shoulder down.');
  say(paperNote(input, result));
  say(
    `Seat edge ${show(constants.seatDepthGap.min)} to ${show(constants.seatDepthGap.max)} behind the knee, body one fist from the table, two thirds of the forearm carried.`,
  );
  if (result.slant) say(slantNote(result.slant.angle, result.slant.advice, constants));
  return notes;
}

/** Whether the thighs have their room at the heights to set. */
function thighsFit(input: SetupInput, result: SetupResult, constants: SetupTable): boolean {
  const thickness = input.tableThickness ?? constants.tableThicknessDefault.value;
  return result.set.table - thickness - result.set.seat >= (result.thighGate?.needed ?? 0) - 1e-9;
}

/** The one sentence on the seat: its number, what to do with the chair, and the footrest where one is used. */
function seatSentence(input: SetupInput, result: SetupResult, constants: SetupTable): string {
  const show = (value: number): string => formatLength(value, input.units ?? 'mm');
  const { chair, footrest, set } = result;
  const { width, depth } = constants.footrestSize;
  const feet =
    footrest > 0
      ? `put a footrest of ${show(footrest)} under both feet (at least ${show(width.value)} wide and ${show(depth.value)} deep, one that does not slide), and push it away before standing up`
      : '';
  const seat = `Seat: ${show(set.seat)}, measured while the client sits on it.`;
  if (!chair) return feet ? `${seat} At this height ${feet}.` : seat;
  const now = `The chair is ${show(chair.now)}`;
  const by = show(Math.abs(chair.change));
  const change =
    chair.change > 0
      ? `raise it by ${by}${chair.cushion ? ' with a firm cushion' : ''}`
      : chair.change < 0
        ? `lower it by ${by}`
        : '';
  if (change === '' && feet === '') return `${seat} ${now}: leave it.`;
  return `${seat} ${now}: ${[change, feet].filter(Boolean).join(', ')}.`;
}

function paperNote(input: SetupInput, result: SetupResult): string {
  const tilt = result.paperTilt;
  if (tilt === null)
    return 'The paper turns toward the side of the hand that rests: say which hand writes to get the angle.';
  if (tilt.direction === 'straight')
    return 'Paper straight, at the midline, with a bright line on the side that is missed.';
  const place = input.hand === 'left' ? ', left of the midline, hand below the line' : '';
  return `Turn the paper ${tilt.min} to ${tilt.max} degrees ${tilt.direction}${place}. Do not force a change of a hand that writes readably.`;
}

function slantNote(angle: number, advice: string, constants: SetupTable): string {
  const { suggested, writingHighest, readingHighest } = constants.slant;
  const found = `The surface rises by ${angle.toFixed(1)} degrees`;
  if (advice === 'too-steep') {
    const reading = angle <= readingHighest.value ? ', fit for reading and copying from' : '';
    return `${found}: too steep to write on (${writingHighest.value} at most)${reading}.`;
  }
  const range = `${suggested.min} to ${suggested.max}`;
  if (advice === 'suggested')
    return `${found}: within the range worth a trial for neck strain (${range}). Flat again if the arm slides.`;
  return `${found}; ${range} are worth a trial for neck strain. Non-slip under it and on it, with an edge stop.`;
}
