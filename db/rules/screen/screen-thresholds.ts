/**
 * Numbers of the intake screen, the red flags and the set-up calculator as rows of the threshold table: shown with
 * their source, changed by the clinic within sense, restorable. What protects a client can only be made stricter.
 */
import type { ItemTable, RedFlagTable, SetupTable } from '../../types/items.ts';
import type { Threshold } from '../../types/rules.ts';
import { filledFlags, filledItems } from './screen-texts.ts';
import { slot, constant, band } from './threshold-slots.ts';
import type { Slot } from './threshold-slots.ts';

/** The tables of the screen, as one. */
export interface ScreenTables {
  intake: ItemTable;
  redFlagTable: RedFlagTable;
  setup: SetupTable;
}

const setupSlots = (setup: SetupTable): Slot[] => [
  constant('sole', 'Sole, where it was not measured', setup.shoeDefault, [0, 80]),
  ...band('seat-below-knee', 'Seat below the height of the knee', setup.seatBelowKnee, [0, 60]),
  ...band('table-writing', 'Table above the elbow for writing', setup.tableAboveElbow.writing, [0, 120]),
  ...band('table-support', 'Table above the elbow for support', setup.tableAboveElbow.support, [0, 150]),
  ...band(
    'table-shoulder-pain',
    'Table above the elbow with a painful shoulder',
    setup.tableAboveElbow['shoulder-pain'],
    [-30, 60],
  ),
  constant('thigh-room', 'Room above the thigh', setup.thighRoom, [0, 80]),
  constant('table-thickness', 'Table top, where it was not measured', setup.tableThicknessDefault, [5, 150]),
  constant('least-change', 'Smallest change of height worth making', setup.leastChange, [0, 30]),
  constant('footrest-highest', 'Footrest that is hard to step down from, above', setup.footrestHighest, [50, 300]),
  constant('cushion-highest', 'Cushion on a chair that cannot be set, at most', setup.cushionHighest, [20, 150]),
  constant(
    'seat-above-knee-hip',
    'Hip precautions: seat above the height of the knee, at most',
    setup.seatAboveKneeHip,
    [0, 120],
  ),
  constant('footrest-width', 'Footrest, width at least', setup.footrestSize.width, [200, 600]),
  constant('footrest-depth', 'Footrest, depth at least', setup.footrestSize.depth, [150, 600]),
  ...band('tilt-right', 'Paper turned for the right hand', setup.paperTilt.right, [0, 90]),
  ...band('tilt-left', 'Paper turned for the left hand', setup.paperTilt.left, [0, 90]),
  ...band('slant', 'Slant worth a trial', setup.slant.suggested, [0, 40]),
  constant('slant-writing', 'Slant for writing, at most', setup.slant.writingHighest, [5, 30]),
  constant('slant-reading', 'Stand for reading, at most', setup.slant.readingHighest, [10, 60]),
  ...band('eye-to-paper', 'Eye to paper', setup.eyeToPaper, [200, 700]),
  ...band('seat-depth', 'Seat edge behind the knee', setup.seatDepthGap, [10, 120]),
  ...band('body-to-table', 'Body to table edge', setup.bodyToTable, [20, 300]),
  ...band('elbow-forward', 'Elbow in front of the trunk', setup.elbowForward, [0, 200]),
];

const unitOf: Readonly<Record<string, string>> = {
  'baseline-rms': 'mm',
  'baseline-angle': 'deg',
  'page-decrement': '% per line',
};

function itemSlots({ items, mayStart }: ItemTable): Slot[] {
  const title = (code: string): string => items.find((each) => each.code === code)?.title ?? code;
  const opens = items.flatMap((item) =>
    item.opensWhen.flatMap((way): Slot[] => {
      if (way.when === 'grade-at-most') {
        const name = `“${item.title}” is asked from a score of “${title(way.item)}” of`;
        return [
          slot(`opens-${item.code}-${way.item}`, name, way.grade, 'of 3', [0, 3], item, (value) => (way.grade = value)),
        ];
      }
      if (way.when !== 'measure-at-most' && way.when !== 'measure-at-least') return [];
      const end = way.when === 'measure-at-most' ? 'below' : 'above';
      const reach = 5 * Math.abs(way.value);
      const range: [number, number] = way.value < 0 ? [-reach, 0] : [0, reach];
      const name = `“${item.title}” is asked for ${way.measure.replace('-', ' ')} ${end}`;
      return [
        slot(
          `opens-${item.code}-${way.measure}-${end}`,
          name,
          way.value,
          unitOf[way.measure] ?? '1',
          range,
          item,
          (value) => (way.value = value),
        ),
      ];
    }),
  );
  const ratings = items.flatMap(({ code, title: name, ratings: asked, source, sourceNote }) =>
    asked === null
      ? []
      : ([3, 2, 1] as const).map((grade, i) =>
          slot(
            `rating-${code}-${grade}`,
            `${name}: highest ${asked.grades === 'rise' ? 'rise' : 'rating'} that still scores ${grade}`,
            asked.atMost[i] ?? 0,
            'of 10',
            // Pain and strain may be taken more seriously than shipped, never less.
            [0, (asked.atMost[i] ?? 0) + (code === 'fatigue' ? 2 : 0)],
            { source, sourceNote },
            (value) => (asked.atMost[i] = value),
          ),
        ),
  );
  const start = mayStart.flatMap(({ area, title: name, needs, source }) =>
    needs.map((need) =>
      slot(
        `start-${area}-${need.item}`,
        `${name}: may start from a score of “${title(need.item)}” of`,
        need.grade,
        'of 3',
        [need.grade, 3],
        { source },
        (value) => (need.grade = value),
      ),
    ),
  );
  return [...opens, ...ratings, ...start];
}

function flagSlots({ flags, fromAnswers }: RedFlagTable, { items }: ItemTable): Slot[] {
  const named = (code: string): string => flags.find((each) => each.code === code)?.title ?? code;
  const title = (code: string): string => items.find((each) => each.code === code)?.title ?? code;
  const rows = fromAnswers.flatMap((row): Slot[] => {
    const code = `flag-${row.flag}-${row.item}`;
    const says = `Red flag “${named(row.flag)}” from “${title(row.item)}”:`;
    const { gradeAtMost, ratingAtLeast, riseAtLeast } = row;
    const out: Slot[] = [];
    if (gradeAtMost !== null)
      out.push(
        slot(`${code}-score`, `${says} a score of at most`, gradeAtMost, 'of 3', [gradeAtMost, 2], row, (value) => {
          row.gradeAtMost = value;
        }),
      );
    if (ratingAtLeast !== null)
      out.push(
        slot(
          `${code}-rating`,
          `${says} a rating of at least`,
          ratingAtLeast,
          'of 10',
          [1, ratingAtLeast],
          row,
          (value) => {
            row.ratingAtLeast = value;
          },
        ),
      );
    if (riseAtLeast !== null)
      out.push(
        slot(`${code}-rise`, `${says} a rise of at least`, riseAtLeast, 'points', [1, riseAtLeast], row, (value) => {
          row.riseAtLeast = value;
        }),
      );
    return out;
  });
  return rows;
}

const slotsOf = (tables: ScreenTables): Slot[] => [
  ...setupSlots(tables.setup),
  ...itemSlots(tables.intake),
  ...flagSlots(tables.redFlagTable, tables.intake),
];

/** Every number of the screen as a row of the threshold table. */
export const screenThresholds = (shipped: ScreenTables): Threshold[] =>
  slotsOf(structuredClone(shipped)).map(({ row }) => row);

/** The screen's tables with the values of the threshold table, and sentences that name them. */
export function screenWith(shipped: ScreenTables, thresholds: readonly Threshold[]): ScreenTables {
  const tables = structuredClone(shipped);
  const values = new Map(thresholds.map((each) => [each.code, each.value]));
  for (const { row, put } of slotsOf(tables)) {
    const value = values.get(row.code);
    if (value !== undefined && value !== row.value) put(value);
  }
  return { ...tables, intake: filledItems(tables.intake), redFlagTable: filledFlags(tables.redFlagTable) };
}
