/**
 * The caseload asked as a whole: goals met, change beyond noise, practice done, visits used, by diagnosis and by what
 * is written. Pure. Nothing in it names or ranks a person, and no share is given for fewer clients than `LEAST`.
 */
import type { ClientRecord } from '../../../db/types/record.ts';
import type { RulesInUse } from '../../../db/types/rules-in-use.ts';
import type { Verdict } from '../../change/index.ts';
import { median } from '../../statistics/order-statistics.ts';
import { medianInterval } from '../../statistics/median-interval.ts';
import { wilson, type Interval } from '../../statistics/wilson.ts';
import { practiceBack } from '../program/ladder/sessions.ts';
import { changeOf } from '../record/change-samples.ts';
import { occasionsWanted } from '../record/writing-occasions.ts';
import { limitsOf } from '../rules/limits.ts';

/** Fewer clients than this give no share: one person more or less would move it by more than ten points. */
export const LEAST = 10;

/** What one client adds: no name, no code, no initials, no date. */
export interface FigureFacts {
  diagnoses: string[];
  occasions: string[];
  /** Goals that came due: met, given up, or past their day. */
  goalsDue: number;
  goalsMet: number;
  verdict: Verdict;
  /** Middle of the change, percentage points; null = nothing compared. */
  change: number | null;
  /** Practice days a week that came back, and that were asked for; null = no program approved. */
  practice: { done: number; asked: number } | null;
  visits: number;
  /** Visits of a course that had so many authorized; null = no such number. */
  authorized: number | null;
  /** For each rule of approved programs: lines it gave, and lines kept against a caution with a reason. */
  rules: { rule: string; lines: number; overridden: number; edited: number }[];
}

export function figureFacts(
  record: ClientRecord,
  rules: Pick<RulesInUse, 'thresholds' | 'repeatPairs'>,
  today: string,
): FigureFacts {
  const decided = record.goals.filter(
    ({ status, dueOn }) =>
      status === 'met' || status === 'dropped' || (status === 'active' && (dueOn ?? today) < today),
  );
  const { answer } = changeOf(record, limitsOf(rules));
  const back = practiceBack(record);
  const given = new Map<string, FigureFacts['rules'][number]>();
  for (const program of record.programs.filter(({ status }) => status === 'approved')) {
    for (const line of program.lines) {
      if (line.rule === null) continue;
      const row = given.get(line.rule) ?? { rule: line.rule, lines: 0, overridden: 0, edited: 0 };
      row.lines += 1;
      row.overridden += Number(line.override !== null);
      row.edited += Number(line.edited);
      given.set(line.rule, row);
    }
  }
  const kinds = record.client.diagnoses.map(({ kind, text }) => kind ?? (text.trim() === '' ? '' : 'other'));
  return {
    diagnoses: [...new Set(kinds.filter(Boolean))],
    occasions: [...new Set(occasionsWanted(record).map(({ code }) => code))],
    goalsDue: decided.length,
    goalsMet: decided.filter(({ status }) => status === 'met').length,
    verdict: answer.verdict,
    change: answer.change?.mid ?? null,
    practice: back && back.daysAsked > 0 ? { done: back.daysPerWeek ?? 0, asked: back.daysAsked } : null,
    visits: record.visits.length,
    authorized: record.client.care?.authorizedVisits ?? null,
    rules: [...given.values()],
  };
}

/** So many of so many, with the interval; `share` null while there are fewer than `LEAST`. */
export interface Share {
  of: number;
  has: number;
  share: (Interval & { mid: number }) | null;
}

const shareOf = (has: number, of: number): Share => ({
  has,
  of,
  share: of < LEAST ? null : { ...wilson(has, of), mid: has / of },
});

export interface Middle {
  of: number;
  median: number | null;
  interval: Interval | null;
}

function middleOf(values: readonly number[]): Middle {
  if (values.length < LEAST) return { of: values.length, median: null, interval: null };
  return { of: values.length, median: median(values), interval: medianInterval(values) };
}

export interface FigureRow {
  /** Code of the diagnosis or occasion; 'all' for everybody, 'none' for those without any. */
  group: string;
  clients: number;
  /** Clients with a goal that came due: how many met one. */
  goals: Share;
  /** Clients whose writing could be compared: more words read now, and fewer. */
  better: Share;
  worse: Share;
  /** Compared, and neither more, fewer nor steady could be said. */
  cannotTell: number;
  /** Nothing to compare: counted, never left out silently. */
  notCompared: number;
  change: Middle;
  /** Clients with a program: how many brought back at least half of the days asked for. */
  practised: Share;
  visits: Middle;
  authorizedUsed: Middle;
}

function rowOf(group: string, facts: readonly FigureFacts[]): FigureRow {
  const due = facts.filter(({ goalsDue }) => goalsDue > 0);
  const compared = facts.filter(({ verdict }) => verdict !== 'nothing' && verdict !== 'not-comparable');
  const withVerdict = (verdict: Verdict): number => compared.filter((one) => one.verdict === verdict).length;
  const asked = facts.flatMap(({ practice }) => practice ?? []);
  return {
    group,
    clients: facts.length,
    goals: shareOf(due.filter(({ goalsMet }) => goalsMet > 0).length, due.length),
    better: shareOf(withVerdict('up'), compared.length),
    worse: shareOf(withVerdict('down'), compared.length),
    cannotTell: withVerdict('cannot-tell'),
    notCompared: facts.length - compared.length,
    change: middleOf(facts.flatMap(({ change }) => change ?? [])),
    practised: shareOf(asked.filter((one) => one.done >= one.asked / 2).length, asked.length),
    visits: middleOf(facts.map(({ visits }) => visits)),
    authorizedUsed: middleOf(
      facts.flatMap(({ visits, authorized }) =>
        authorized === null || authorized === 0 ? [] : (100 * visits) / authorized,
      ),
    ),
  };
}

export type GroupedBy = 'diagnoses' | 'occasions';

/** Everybody first, then each group in the order of its code: never by how it did. A client counts in each of her groups. */
export function figureRows(facts: readonly FigureFacts[], by: GroupedBy): FigureRow[] {
  const groups = [...new Set(facts.flatMap((one) => one[by]))].sort();
  const none = facts.filter((one) => one[by].length === 0);
  return [
    rowOf('all', facts),
    ...groups.map((group) =>
      rowOf(
        group,
        facts.filter((one) => one[by].includes(group)),
      ),
    ),
    ...(none.length > 0 ? [rowOf('none', none)] : []),
  ];
}

/** Rules of the table by how often their lines were kept against a caution, then by how often they were reworded. */
export function rulesChanged(facts: readonly FigureFacts[]): FigureFacts['rules'] {
  const all = new Map<string, FigureFacts['rules'][number]>();
  for (const { rule, lines, overridden, edited } of facts.flatMap((one) => one.rules)) {
    const row = all.get(rule) ?? { rule, lines: 0, overridden: 0, edited: 0 };
    all.set(rule, {
      rule,
      lines: row.lines + lines,
      overridden: row.overridden + overridden,
      edited: row.edited + edited,
    });
  }
  return [...all.values()]
    .filter(({ overridden, edited }) => overridden + edited > 0)
    .sort((a, b) => b.overridden - a.overridden || b.edited - a.edited || (a.rule < b.rule ? -1 : 1));
}
