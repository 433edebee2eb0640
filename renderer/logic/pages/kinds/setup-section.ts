import { lengthWords } from '../../texts/dose-words.ts';
import type { SetupFigure } from '../sheet/packet.ts';
import type { Texts } from '../../texts/en.ts';

/** What has to be done about chair and table, beside the drawing that shows the heights. */
export function setupTasks(figure: SetupFigure, locale: string, t: Texts): string[] {
  const { setup } = t.family;
  const tasks: string[] = [];
  const chair = figure.chair ?? null;
  if (chair && chair.changeMm !== 0) {
    const words = { now: lengthWords(chair.nowMm, locale), by: lengthWords(Math.abs(chair.changeMm), locale) };
    tasks.push(chair.changeMm < 0 ? setup.lowerChair(words) : setup.raiseChair({ ...words, cushion: chair.cushion }));
  }
  if (figure.footrestMm > 0) tasks.push(setup.footrest(lengthWords(figure.footrestMm, locale)));
  if (figure.raiseTableMm > 0) tasks.push(setup.raise(lengthWords(figure.raiseTableMm, locale)));
  return tasks;
}

/** The same with the heights in words. */
export function setupInWords(figure: SetupFigure, locale: string, t: Texts): string[] {
  const { setup } = t.family;
  const heights = [setup.seat(lengthWords(figure.seatMm, locale)), setup.table(lengthWords(figure.tableMm, locale))];
  return [heights.join(' '), ...setupTasks(figure, locale, t)];
}
