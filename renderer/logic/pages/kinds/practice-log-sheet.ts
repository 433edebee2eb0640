import { LOG_DRAWING, logLayout, logValues } from '../../../measure/index.ts';
import { minutesADay } from '../../program/draft/program-line.ts';
import { daysLater } from '../../texts/days.ts';
import type { Texts } from '../../texts/en.ts';
import { breakLines } from '../practice/letter-styles.ts';
import { sheetSizes } from '../practice/sheet-sizes.ts';
import type { LogSheetModel } from '../sheet/packet.ts';
import { dayOf, longDate, type PageInput, programOf, whoOf } from '../sheet/page-facts.ts';

/** Days of no more minutes than its last circle stands for have a row of their own to mark. */
const fewMinutes = logValues('minutes', true).at(-1)!;

/** Size of the sentences, mm (14 pt). */
export const logTextMm = 4.9;

/** A log of circles, six marks a day: columns in the order in which they are typed back, a row for each day from the visit on. */
export function practiceLogSheet(input: PageInput, t: Texts): LogSheetModel {
  const { widthMm, heightMm } = sheetSizes[input.sheet];
  const program = programOf(input);
  const aDay = program ? minutesADay(program.lines) : 0;
  // A day of a few minutes cannot be marked on a row that starts at 5.
  const few = aDay > 0 && aDay <= fewMinutes;
  const { rows, left, right } = logLayout(widthMm, heightMm, few);
  const first = dayOf(input);
  const dates = Array.from({ length: rows }, (_, row) => daysLater(first, row));
  const short = (iso: string, options: Intl.DateTimeFormatOptions): string =>
    new Intl.DateTimeFormat(input.locale, { ...options, timeZone: 'UTC' }).format(new Date(`${iso}T00:00:00Z`));
  const broken = (text: string): string[] => breakLines(text, 'page', logTextMm, right - left);
  return {
    type: 'log',
    sheet: input.sheet,
    title: t.log.title,
    name: whoOf(input),
    span: `${longDate(dates[0]!, input.locale)} – ${longDate(dates.at(-1)!, input.locale)}`,
    intro: broken(t.log.intro),
    head: t.log.head,
    days: dates.map((iso) => ({
      name: short(iso, { weekday: 'short' }),
      date: short(iso, { day: 'numeric', month: 'short' }),
    })),
    few,
    done: t.log.circles.done,
    felt: t.log.circles.felt,
    stop: breakLines(`${t.log.stop} ${t.log.bring}`, 'page-bold', logTextMm, right - left),
    foot: t.common.from(input.clinic.therapist, input.clinic.name),
  };
}

/** Where the first sentence below the rows stands, mm. */
export const belowRows = (top: number, rows: number): number => top + rows * LOG_DRAWING.rowMm + 6;
