/** What drawn spirals show, in words first. Never a diagnosis: how the line went, and what that rests on. */
import type { SpiralSheet } from '../../../../db/types/spiral.ts';

type Drawn = NonNullable<SpiralSheet['result']['free']>;
export type WhichSpiral = 'traced' | 'free';

export const spiralNames: Readonly<Record<WhichSpiral, string>> = { traced: 'On the line', free: 'Free' };

const times = (value: number): string => value.toFixed(value < 10 ? 1 : 0);

/** One sentence or two on a spiral; '' where nothing was told (its warnings say why). */
export function spiralSentence(drawn: Drawn, seconds: number | null): string {
  const { radialRmsMm: rms, radialRmsPercent: percent, swingsPerTurn: swings, turns } = drawn;
  if (rms === null || percent === null || turns === null) return '';
  const away = `The line leaves an even spiral by ${rms.toFixed(2)} mm (rms), ${percent.toFixed(1)} % of the distance between turns, over ${times(turns)} turns.`;
  if (!swings) return `${away} No swings stand out.`;
  const perCm = drawn.swingsPerCm === null ? '' : `, most regularly ${drawn.swingsPerCm.toFixed(1)} a cm of line`;
  const second =
    drawn.frequencyHz === null || seconds === null
      ? ' Without the time of drawing no swings a second are told.'
      : ` Drawn in ${seconds} s: ${drawn.frequencyHz.toFixed(1)} swings a second on average.`;
  return `${away} It swings out and back ${times(swings)} times a turn${perCm}.${second}`;
}

/** How far the traced line lies from the printed one; '' where none was printed. */
export const fromPrinted = ({ fromPrintedRmsMm: mm }: Drawn): string =>
  mm === null ? '' : `It lies ${mm.toFixed(1)} mm (rms) from the printed line, slow wandering included.`;

/** What the numbers may be taken for, on the screen beside them. */
export const SPIRAL_CAUTION =
  'Measured is the line, not what it comes from: rough paper, a stiff pen, corners and a slow hand swing too. Slow wandering (under 2.5 swings a turn) is taken for the shape of the spiral. Without other sheets of the same day it is not known how much this hand varies, so two sheets that differ show no change yet.';

/** The latest sheet before this one by the same hand and the same method; null where there is none. */
export function earlierSheet(sheets: readonly SpiralSheet[], now: SpiralSheet): SpiralSheet | null {
  const before = sheets.filter(
    (each) => each.takenAt < now.takenAt && each.hand === now.hand && each.result.version === now.result.version,
  );
  return before.reduce<SpiralSheet | null>((a, b) => (a === null || b.takenAt > a.takenAt ? b : a), null);
}

/** The values of the sheet before, to look at side by side; '' where there are none. */
export function beforeWords(before: Drawn | null, day: string): string {
  if (!before || before.radialRmsMm === null || before.swingsPerTurn === null) return '';
  const hz = before.frequencyHz === null ? '' : `, ${before.frequencyHz.toFixed(1)} a second`;
  return `On ${day}: ${before.radialRmsMm.toFixed(2)} mm, ${times(before.swingsPerTurn)} swings a turn${hz}.`;
}
