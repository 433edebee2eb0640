/** What every exported code means: the data dictionary of the CSV, and the names of the FHIR codes. */
import { MEASURES } from '../../measure/index.ts';
import { INK_METHOD } from '../../ink/index.ts';
import { inkDictionary } from '../sample/ink-names.ts';
import { measureName } from '../sample/measured/show-measure.ts';
import { toldEnglish } from '../texts/screens/told-english.ts';
import { ruled } from '../sample/typed.ts';
import { toCsv } from '../texts/csv-cells.ts';
import { CSV_COLUMNS } from './measures-csv.ts';

export interface DictionaryRow {
  code: string;
  name: string;
  unit: string;
  better: 'more' | 'less' | 'none';
  how: string;
  source: string;
}

const common = 'common practice, no source';

/** Values that are not read from a page: readers, ratings, home logs, grades and levels. */
const others: readonly DictionaryRow[] = [
  {
    code: 'legibility',
    name: 'Words read',
    unit: '%',
    better: 'more',
    how: 'words that a reader typed right of the words intended; n is the words intended; unfamiliar readers first, never mixed with family',
    source: 'Interval: Wilson (Newcombe 1998); words of one page are alike, so it is a little too narrow.',
  },
  {
    code: 'change',
    name: 'Change of words read since the start',
    unit: 'points',
    better: 'more',
    how: 'from before to now in percentage points, with its interval; the verdict in words stands in the column about, comparable or not first; n is the visits compared; no number where nothing is compared',
    source: 'Overdispersed binomial model of this program; its error rates are simulated (npm run verdicts).',
  },
  {
    code: 'words-read',
    name: 'Words read, count',
    unit: 'count',
    better: 'more',
    how: 'mean over readers, rounded; n is the words intended',
    source: common,
  },
  {
    code: 'words-per-minute',
    name: 'Readable words a minute',
    unit: '1/min',
    better: 'none',
    how: 'words read over writing time; never judged without legibility',
    source: common,
  },
  { code: 'writing-time', name: 'Writing time', unit: 's', better: 'none', how: 'stopwatch', source: common },
  ...(['before', 'after'] as const).flatMap((when): DictionaryRow[] => [
    {
      code: `fatigue-${when}`,
      name: `Fatigue ${when} writing`,
      unit: '0 to 10',
      better: 'less',
      how: 'said by the client; 10 is as tired as can be',
      source: common,
    },
    {
      code: `pain-${when}`,
      name: `Pain ${when} writing`,
      unit: '0 to 10',
      better: 'less',
      how: 'said by the client; 10 is the worst',
      source: common,
    },
    {
      code: `practice-fatigue-${when}`,
      name: `Fatigue ${when} home practice`,
      unit: '0 to 10',
      better: 'less',
      how: 'from the log that came back',
      source: common,
    },
  ]),
  { code: 'practice-minutes', name: 'Home practice', unit: 'min', better: 'none', how: 'from the log', source: common },
  {
    code: 'practice-lines',
    name: 'Lines of home practice',
    unit: 'count',
    better: 'none',
    how: 'from the log',
    source: common,
  },
  {
    code: 'practice-pain',
    name: 'Pain in home practice',
    unit: '0 to 10',
    better: 'less',
    how: 'from the log',
    source: common,
  },
  {
    code: 'practice-breaks',
    name: 'Breaks in home practice',
    unit: 'count',
    better: 'none',
    how: 'from the log',
    source: common,
  },
  {
    code: 'screen-grade',
    name: 'Grade of a screening item',
    unit: '0 to 3',
    better: 'more',
    how: '3 no difficulty, 2 mild, 1 marked, 0 cannot; the item stands in the column about',
    source: common,
  },
  {
    code: 'goal-level',
    name: 'Level of a goal',
    unit: 'level',
    better: 'more',
    how: 'rated at a visit; 0 is as expected; the goal stands in the column about',
    source: 'Goal attainment scaling: Kiresuk & Sherman 1968, Community Ment Health J 4:443-453.',
  },
];

const ofPages: readonly DictionaryRow[] = MEASURES.map((m) => ({
  code: m.code,
  name: m.name,
  unit: m.unit,
  better: m.direction,
  how: m.how,
  source: m.source,
}));

const ofRuler: readonly DictionaryRow[] = ruled
  .filter((code) => !MEASURES.some((known) => known.code === code))
  .map((code) => ({
    code,
    name: measureName(code, toldEnglish.measures),
    unit: 'mm',
    better: 'none',
    how: 'median of readings from a ruler, typed by hand',
    source: common,
  }));

const onlyPen = 'compared only with the same surface and device';

/** Of pen recordings and of the pages drawn from them: codes of their own, never beside those of paper. */
const ofInk: readonly DictionaryRow[] = [
  ...inkDictionary.map(({ code, name, unit, better, how }) => ({
    code: `ink-${code}`,
    name: `${name}, pen on a screen or tablet`,
    unit,
    better,
    how: `${how}; ${onlyPen}`,
    source: `Our design, method ${INK_METHOD}; formulas as named.`,
  })),
  ...ofPages.map((row) => ({
    ...row,
    code: `ink-page-${row.code}`,
    name: `${row.name}, page drawn from a pen recording`,
    how: `${row.how}; ${onlyPen}`,
  })),
];

/** Every code that an export can hold. */
export const dictionary: readonly DictionaryRow[] = [...others, ...ofPages, ...ofRuler, ...ofInk];

const named = new Map(dictionary.map((row) => [row.code, row]));

/** Name of a code; one that an older method knew keeps its code as its name. */
export const nameOf = (code: string): string => named.get(code)?.name ?? code.replaceAll('-', ' ');

/** The dictionary as CSV: first the columns of the measures file, then the measures. */
export const dictionaryCsv = (): string =>
  toCsv(
    ['kind', 'code', 'name', 'unit', 'better', 'how', 'source'],
    [
      ...CSV_COLUMNS.map(({ name, meaning }) => ['column', name, meaning, '', '', '', '']),
      ...dictionary.map((m) => ['measure', m.code, m.name, m.unit, m.better, m.how, m.source]),
    ],
  );
