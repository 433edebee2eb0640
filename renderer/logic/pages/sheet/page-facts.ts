/** What printed pages need to know of a record, derived anew each time. */
import { toldEnglish } from '../../texts/screens/told-english.ts';
import type { Visit } from '../../../../db/types/visit.ts';
import type { ClientRecord } from '../../../../db/types/record.ts';
import type { Goal } from '../../../../db/types/goal.ts';
import type { Program } from '../../../../db/types/program.ts';
import type { Sample } from '../../../../db/types/sample.ts';
import type { SetupTable } from '../../../../db/types/items.ts';
import { latestSetUp, setUpInput } from '../../record/latest-set-up.ts';
import { setUp } from '../../setup/set-up.ts';
import { type ConditionDifference, conditionDifferences } from '../../record/condition-changes.ts';
import type { Limits } from '../../rules/limits.ts';
import { type Occasion, occasionsOf } from '../../record/occasions.ts';
import type { SetupFigure } from './packet.ts';
import type { SheetName } from '../practice/sheet-sizes.ts';
import { englishTelling } from '../../texts/screens/telling.ts';

/** What every page is made from. Nothing is read but this. */
export interface PageInput {
  record: ClientRecord;
  visitId: string;
  /** ISO date. */
  today: string;
  locale: string;
  sheet: SheetName;
  clinic: { name: string; therapist: string; credentials: string };
  /** Print the client's code where the clinic does not want names on paper. */
  useCode: boolean;
  setupTable: SetupTable;
  /** What counts as the same conditions, as steady, as a harder day. */
  limits: Limits;
  /** Sentences of the rule table that hold for this client, for the stop box; absent = none. */
  pageSays?: readonly string[];
}

/** Enough to know the day of the page and what was in force. */
export type DatedRecord = Pick<PageInput, 'record' | 'visitId' | 'today'>;

export type ReadOccasion = Occasion & { legibility: NonNullable<Occasion['legibility']> };

export const whoOf = (input: PageInput): string =>
  input.useCode ? input.record.client.code : input.record.client.name;

/** "March 4, 2026"; '' where it is no date. */
export const longDate = (iso: string, locale: string): string => dateWords(iso, locale, 'long');

/** "Mar 4, 2026". */
export const mediumDate = (iso: string, locale: string): string => dateWords(iso, locale, 'medium');

/** The visit's date at the head of a page: a long one breaks into two lines in large print and in other languages. */
export const headDate = (input: PageInput, pt: number): string =>
  (pt > 14 || !input.locale.startsWith('en') ? mediumDate : longDate)(dayOf(input), input.locale);

function dateWords(iso: string, locale: string, dateStyle: 'long' | 'medium'): string {
  const date = new Date(`${iso.slice(0, 10)}T00:00:00Z`);
  if (Number.isNaN(date.getTime())) return '';
  return new Intl.DateTimeFormat(locale, { dateStyle, timeZone: 'UTC' }).format(date);
}

export function visitOf(input: DatedRecord): Visit | null {
  return input.record.visits.find((visit) => visit.id === input.visitId) ?? null;
}

/** Day of the chosen visit; today when there is none. */
export const dayOf = (input: DatedRecord): string => visitOf(input)?.date ?? input.today;

/** Visits up to the chosen one, oldest first. */
export function visitsUpTo(input: DatedRecord): Visit[] {
  const day = dayOf(input);
  return input.record.visits.filter((v) => v.date <= day).sort((a, b) => a.date.localeCompare(b.date));
}

/** Samples that somebody has read, up to the chosen visit, oldest first; the uncued probe line is charted apart. */
function readOccasions(input: PageInput): ReadOccasion[] {
  const day = dayOf(input);
  return occasionsOf(input.record).filter((o): o is ReadOccasion => o.legibility !== null && !o.probe && o.day <= day);
}

export interface Legible {
  first: ReadOccasion | null;
  last: ReadOccasion | null;
  /** Of the chosen visit. */
  now: ReadOccasion | null;
  /** The one before `now` on an earlier day, read by the same kind of reader. */
  before: ReadOccasion | null;
  /** Differences of conditions between `before` and `now`. */
  differences: ConditionDifference[];
}

export function legibleOf(input: PageInput): Legible {
  const all = readOccasions(input);
  const now = all.findLast((o) => o.sample.visitId === input.visitId) ?? null;
  const before = now && (all.findLast((o) => o.day < now.day && o.legibility.reader === now.legibility.reader) ?? null);
  const differences =
    now && before ? conditionDifferences(before.sample, now.sample, input.limits, toldEnglish.conditions) : [];
  return { first: all[0] ?? null, last: all.at(-1) ?? null, now, before, differences };
}

/** The program in force at the visit: the last approved one, else the last draft. */
export function programOf(input: DatedRecord): Program | null {
  const days = new Map(input.record.visits.map((v) => [v.id, v.date]));
  const day = dayOf(input);
  const upTo = input.record.programs
    .filter((p) => (days.get(p.visitId) ?? '') <= day)
    .sort((a, b) => (days.get(a.visitId) ?? '').localeCompare(days.get(b.visitId) ?? '') || a.at.localeCompare(b.at));
  return upTo.findLast((p) => p.status === 'approved') ?? upTo.at(-1) ?? null;
}

export function goalsOf(input: PageInput): Goal[] {
  const day = dayOf(input);
  return input.record.goals.filter((g) => g.setOn <= day && (g.status === 'active' || g.status === 'met'));
}

/** The goal worked on at the day of the page. */
export const goalOf = (input: PageInput): Goal | undefined => goalsOf(input).find((g) => g.status === 'active');

/** The latest set-up of the visit's day, if the calculator accepts it, as heights to set. */
export function setupOf(input: PageInput): SetupFigure | null {
  const { record } = input;
  const days = new Map(record.visits.map((v) => [v.id, v.date]));
  const day = dayOf(input);
  const setups = record.setups.filter((s) => (days.get(s.visitId) ?? '') <= day);
  const latest = latestSetUp({ ...record, setups });
  if (!latest) return null;
  const given = setUpInput(record, latest);
  const outcome = setUp(given, input.setupTable, toldEnglish.seat, englishTelling.decimals);
  if (!outcome.ok) return null;
  const { set, footrest, raiseTable, chair } = outcome.result;
  return {
    seatMm: set.seat,
    tableMm: set.table,
    footrestMm: footrest,
    raiseTableMm: raiseTable,
    chair: chair ? { nowMm: chair.now, changeMm: chair.change, cushion: chair.cushion } : null,
    hand: given.hand,
  };
}

/** The last sample's conditions up to the visit, for wording such as glasses and minutes after the tablet. */
export function lastSample(input: PageInput): Sample | null {
  const day = dayOf(input);
  return occasionsOf(input.record).findLast((o) => o.day <= day)?.sample ?? null;
}
