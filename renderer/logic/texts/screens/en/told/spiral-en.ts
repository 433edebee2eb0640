/** Spirals on paper: what the drawn line shows. */
export const spiralEn = {
  names: { traced: 'On the line', free: 'Free' },
  leaves: (mm: string, percent: string, turns: string) =>
    `The line leaves an even spiral by ${mm} mm (rms), ${percent} % of the distance between turns, over ${turns} turns.`,
  noSwings: 'No swings stand out.',
  swings: (turn: string, cm: string) =>
    `It swings out and back ${turn} times a turn${cm === '' ? '' : `, most regularly ${cm} a cm of line`}.`,
  noTime: 'Without the time of drawing no swings a second are told.',
  perSecond: (seconds: string, hz: string) => `Drawn in ${seconds} s: ${hz} swings a second on average.`,
  fromPrinted: (mm: string) => `It lies ${mm} mm (rms) from the printed line, slow wandering included.`,
  before: (day: string, mm: string, swings: string, hz: string) =>
    `On ${day}: ${mm} mm, ${swings} swings a turn${hz === '' ? '' : `, ${hz} a second`}.`,
  caution:
    'Measured is the line, not what it comes from: rough paper, a stiff pen, corners and a slow hand swing too. Slow wandering (under 2.5 swings a turn) is taken for the shape of the spiral. Without other sheets of the same day it is not known how much this hand varies, so two sheets that differ show no change yet.',
};
