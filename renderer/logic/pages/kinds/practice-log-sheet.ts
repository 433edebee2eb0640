import { type PageInput, programOf, whoOf } from '../sheet/page-facts.ts';
import { minutesADay } from '../../program/draft/program-line.ts';
import { paginate } from '../sheet/break-sheets.ts';
import type { Doc, DocSheet } from '../sheet/packet.ts';
import { sheetSizes } from '../practice/sheet-sizes.ts';
import type { Texts } from '../../texts/en.ts';

/** Column widths in percent: the scales need the most room to circle in. */
const widths = [10, 8, 17, 17, 17, 17, 14];

/** Days of so few minutes have a row of their own to circle. */
const fewMinutes = 10;

/** A log of circles, six marks a day: columns in the order in which they are typed back, rows as tall as the sheet allows. */
export function practiceLogSheet(input: PageInput, t: Texts): DocSheet[] {
  const rowMm = 14;
  // Head, sentences and foot take about 108 mm.
  const rows = Math.floor((sheetSizes[input.sheet].heightMm - 108) / rowMm);
  const { done, minutes, fewMinutes: few, scale, felt } = t.log.circles;
  const program = programOf(input);
  const aDay = program ? minutesADay(program.lines) : 0;
  // A day of a few minutes cannot be marked on a row that starts at 5.
  const row = ['', done, aDay > 0 && aDay <= fewMinutes ? few : minutes, scale, scale, scale, felt];
  const doc: Doc = {
    sheet: input.sheet,
    pt: 14,
    title: t.log.title,
    lead: [
      { label: t.common.name, value: whoOf(input) },
      { label: t.log.from, value: '____________' },
      { label: t.log.to, value: '____________' },
    ],
    sections: [
      {
        key: 'log',
        title: '',
        blocks: [
          { kind: 'text', text: t.log.intro },
          {
            kind: 'table',
            head: t.log.head,
            widths,
            rows: Array.from({ length: rows }, () => row),
            rowMm,
          },
          { kind: 'text', text: `${t.log.stop} ${t.log.bring}`, strong: true },
        ],
      },
    ],
    foot: t.common.from(input.clinic.therapist, input.clinic.name),
  };
  return paginate(doc);
}
