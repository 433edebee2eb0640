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

  say('Measure the seat while the client sits on it.');
  if (input.shoe === null) say(`The sole was not measured: ${show(constants.shoeDefault.value)} were assumed.`);
  const least = constants.leastChange.value;
  const off = Math.max(result.footrest, result.raiseTable);
  if (off > 0 && off < least) {
    say(`The table is ${show(off)} off, less than a tape can tell: leave it as it is.`);
  }
  if (result.footrest >= least) {
    say(
      `The table is too high: raise the seat to ${show(result.set.seat)} and put a footrest of ${show(result.footrest)} under both feet.`,
    );
    const { width, depth } = constants.footrestSize;
    say(
      `The footrest is at least ${show(width.value)} wide and ${show(depth.value)} deep, and does not slide. Push it away before standing up.`,
    );
    if (result.footrest > constants.footrestHighest.value) {
      say(
        `A footrest above ${show(constants.footrestHighest.value)} is hard to step down from: look for a lower table.`,
      );
    }
    if (cautions.includes('wheelchair'))
      say('Wheelchair: brakes on, and no higher seat before the transfer has been looked at.');
  }
  if (result.raiseTable >= least)
    say(`The table is too low: raise it by ${show(result.raiseTable)} on firm blocks, all legs alike.`);
  if (cautions.includes('hip'))
    say('Hip precautions: keep the hips above the knees; use the upper end of the seat range or a wedge.');
  if (result.thighGate === null) say('The thigh was not measured: check that a hand fits between thigh and table.');
  else if (!result.thighGate.passes) {
    say(
      `The thighs do not fit: ${show(result.thighGate.room)} of room, ${show(result.thighGate.needed)} needed. Use a thinner top, or one without an apron.`,
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
