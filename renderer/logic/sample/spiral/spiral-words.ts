/** What drawn spirals show, in words first. Never a diagnosis: how the line went, and what that rests on. */
import type { Decimals } from '../../texts/decimals.ts';
import type { Telling } from '../../texts/screens/telling.ts';
import type { SpiralSheet } from '../../../../db/types/spiral.ts';

type Drawn = NonNullable<SpiralSheet['result']['free']>;
export type WhichSpiral = 'traced' | 'free';

const times = (value: number, decimals: Decimals): string => decimals(value, value < 10 ? 1 : 0);

/** One sentence or two on a spiral; '' where nothing was told (its warnings say why). */
export function spiralSentence(drawn: Drawn, seconds: number | null, { told, decimals }: Telling): string {
  const { radialRmsMm: rms, radialRmsPercent: percent, swingsPerTurn: swings, turns } = drawn;
  if (rms === null || percent === null || turns === null) return '';
  const words = told.spiral;
  const away = words.leaves(decimals(rms, 2), decimals(percent, 1), times(turns, decimals));
  if (!swings) return `${away} ${words.noSwings}`;
  const perCm = drawn.swingsPerCm === null ? '' : decimals(drawn.swingsPerCm, 1);
  const second =
    drawn.frequencyHz === null || seconds === null
      ? words.noTime
      : words.perSecond(decimals(seconds, 1, 0), decimals(drawn.frequencyHz, 1));
  return [away, words.swings(times(swings, decimals), perCm), second].join(' ');
}

/** How far the traced line lies from the printed one; '' where none was printed. */
export const fromPrinted = ({ fromPrintedRmsMm: mm }: Drawn, { told, decimals }: Telling): string =>
  mm === null ? '' : told.spiral.fromPrinted(decimals(mm, 1));

/** The latest sheet before this one by the same hand and the same method; null where there is none. */
export function earlierSheet(sheets: readonly SpiralSheet[], now: SpiralSheet): SpiralSheet | null {
  const before = sheets.filter(
    (each) => each.takenAt < now.takenAt && each.hand === now.hand && each.result.version === now.result.version,
  );
  return before.reduce<SpiralSheet | null>((a, b) => (a === null || b.takenAt > a.takenAt ? b : a), null);
}

/** The values of the sheet before, to look at side by side; '' where there are none. */
export function beforeWords(before: Drawn | null, day: string, { told, decimals }: Telling): string {
  if (!before || before.radialRmsMm === null || before.swingsPerTurn === null) return '';
  const hz = before.frequencyHz === null ? '' : decimals(before.frequencyHz, 1);
  return told.spiral.before(day, decimals(before.radialRmsMm, 2), times(before.swingsPerTurn, decimals), hz);
}
