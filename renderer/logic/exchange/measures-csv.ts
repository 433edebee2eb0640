/** All measures as CSV, one value a row. No names: the client's code says whose a row is. */
import type { RulesInUse } from '../../../db/types/rules-in-use.ts';
import type { ClientRecord } from '../../../db/types/record.ts';
import { toCsv } from '../texts/csv-cells.ts';
import { exchangeValues } from './values.ts';
import { type ExchangeValue } from './exchange-value.ts';

type Cell = string | number | null;

interface Column {
  name: string;
  meaning: string;
  cell: (value: ExchangeValue, client: string) => Cell;
}

/** Six digits that count: more is noise. */
const rounded = (value: number | null): number | null => (value === null ? null : Number(value.toPrecision(6)));

const condition = (
  name: string,
  meaning: string,
  pick: (conditions: NonNullable<ExchangeValue['sample']>['conditions']) => Cell,
): Column => ({ name, meaning, cell: ({ sample }) => (sample ? pick(sample.conditions) : null) });

export const CSV_COLUMNS: readonly Column[] = [
  { name: 'client', meaning: 'code of the client; no name', cell: (_, client) => client },
  { name: 'date', meaning: 'day of the visit or of the home log, ISO 8601', cell: (v) => v.day },
  { name: 'taken_at', meaning: 'instant of the writing sample, ISO 8601', cell: (v) => v.at },
  {
    name: 'sample',
    meaning: 'id of the writing sample; empty for what is no sample',
    cell: (v) => v.sample?.id ?? null,
  },
  { name: 'task', meaning: 'kind of writing', cell: (v) => v.sample?.task.kind ?? null },
  {
    name: 'baseline',
    meaning: '1 = first or repeat baseline',
    cell: (v) => (v.sample ? Number(v.sample.baseline) : null),
  },
  { name: 'measure', meaning: 'code, explained under measure below', cell: (v) => v.code },
  {
    name: 'about',
    meaning:
      'screening item with side, or goal, that a grade or level belongs to; of pen recordings task, hand and surface; the sentences of the verdict about change',
    cell: (v) => v.about,
  },
  { name: 'value', meaning: 'the value in its unit', cell: (v) => rounded(v.value) },
  {
    name: 'unit',
    meaning: '1 = ratio, xh = heights of small letters, deg = degrees, count = number',
    cell: (v) => v.unit,
  },
  { name: 'n', meaning: 'readings, words or letters that the value rests on', cell: (v) => v.n },
  {
    name: 'low',
    meaning: 'lower end of the 95 % interval (of a change: of the interval told in method)',
    cell: (v) => rounded(v.low),
  },
  { name: 'high', meaning: 'upper end of the 95 % interval', cell: (v) => rounded(v.high) },
  { name: 'by', meaning: 'who read, rated or logged; page, ruler or pen for measures of writing', cell: (v) => v.who },
  { name: 'device', meaning: 'pen and surface of a pen recording', cell: (v) => v.device },
  { name: 'method', meaning: 'how it was read', cell: (v) => v.method },
  { name: 'version', meaning: 'version of the measuring method', cell: (v) => v.version },
  {
    name: 'corrected',
    meaning: '1 = the therapist corrected lines, words or letters by hand',
    cell: (v) => Number(v.corrected),
  },
  condition('hand', 'hand that wrote', (c) => c.hand),
  condition('pen', 'pen used', (c) => c.pen),
  condition('paper', 'paper used', (c) => c.paper),
  condition('time', 'clock time', (c) => c.time),
  condition('dose_state', 'medicine on, off, unsure or none', (c) => c.doseState),
  condition('minutes_since_dose', 'minutes since the last dose', (c) => c.minutesSinceDose),
  condition('cue', 'help while writing', (c) => c.cue),
  condition('grip', 'grip or aid', (c) => c.grip),
  condition('arm_support', 'how the arm was supported', (c) => c.armSupport),
  condition('glasses', 'glasses worn', (c) => c.glasses),
  condition('instruction', 'usual, best or fast writing asked for', (c) => c.instruction),
  condition('style', 'print, joined or mixed', (c) => c.style),
  condition('slope_deg', 'slope of the writing surface, degrees', (c) => c.surfaceAngleDeg),
  condition('seat_mm', 'seat height, mm', (c) => c.seatMm),
  condition('table_mm', 'table height, mm', (c) => c.tableMm),
];

/** Rows of one or several clients. Cells that a spreadsheet would run as a formula are made harmless (`toCsv`). */
export const measuresCsv = (
  records: readonly ClientRecord[],
  rules: Pick<RulesInUse, 'intake' | 'thresholds'>,
): string =>
  toCsv(
    CSV_COLUMNS.map((column) => column.name),
    records.flatMap((record) =>
      exchangeValues(record, rules).map((value) => CSV_COLUMNS.map((column) => column.cell(value, record.client.code))),
    ),
  );
