import { SPIRAL_SHEET, spiralPlaces } from '../../../measure/index.ts';
import type { Texts } from '../../texts/en.ts';
import { sheetSizes } from '../practice/sheet-sizes.ts';
import type { SpiralSheetModel } from '../sheet/packet.ts';
import { dayOf, longDate, type PageInput } from '../sheet/page-facts.ts';

/** Points a turn of the printed spiral: the chords leave the curve by less than 0.01 mm. */
const POINTS = 180;

/** An Archimedes spiral from the middle outwards, clockwise on paper, as points of a drawing. */
function printedSpiral(centerX: number, centerY: number): string {
  const { turns, pitchMm } = SPIRAL_SHEET;
  return Array.from({ length: turns * POINTS + 1 }, (_, i) => {
    const turn = i / POINTS;
    const angle = 2 * Math.PI * turn;
    const [x, y] = [centerX + pitchMm * turn * Math.cos(angle), centerY + pitchMm * turn * Math.sin(angle)];
    return `${x.toFixed(3)},${y.toFixed(3)}`;
  }).join(' ');
}

export function spiralSheet(input: PageInput, t: Texts): SpiralSheetModel {
  const size = sheetSizes[input.sheet];
  const { traced, free } = spiralPlaces(size.widthMm, size.heightMm);
  const words = t.spiral;
  return {
    type: 'spiral',
    sheet: input.sheet,
    title: words.title,
    hand: words.hand,
    handNames: t.common.hand,
    seconds: words.seconds,
    places: [
      {
        title: words.traced,
        words: words.tracedHow,
        x: 18,
        y: traced.y,
        spiral: printedSpiral(traced.centerX, traced.centerY),
      },
      { title: words.free, words: words.freeHow, x: 18, y: free.y, spiral: null },
    ],
    date: longDate(dayOf(input), input.locale),
    clientCode: input.record.client.code,
  };
}
