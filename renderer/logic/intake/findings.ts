/** What the answers and the set-up say: findings, how bad, from which answer; and what may start now. */
import type { Grade, Side } from '../../../db/types/common.ts';
import type { IntakeAnswer } from '../../../db/types/intake.ts';
import type { IntakeItem, ItemTable } from '../../../db/types/items.ts';
import { latestAnswers } from '../record/latest-answers.ts';
import type { FlagState } from './flags.ts';
import type { SetupResult } from '../setup/setup-types.ts';
import type { Told } from '../texts/screens/en/screens-en.ts';

/** before: act before writing work (0 or 1). alongside: act while writing (2). fine: 3. unknown: not tested. not-indicated. */
export type Severity = 'before' | 'alongside' | 'fine' | 'unknown' | 'not-indicated';

export interface Finding {
  /** Item code, or a set-up finding's code. */
  code: string;
  /** Null = not tested or not indicated: never taken as safe. */
  grade: Grade | null;
  side: Side;
  /** `intakeAnswer/<id>`, `setup/<id>`, or 'not asked'. */
  source: string;
  /** Detail code of the item (tremor type …) or null. */
  detail: string | null;
  severity: Severity;
  /** Why it was not tested; '' = it was, or nobody said why. */
  reason: string;
  sentence: string;
}

const severityOf = (grade: Grade | null): Severity =>
  grade === null ? 'unknown' : grade === 3 ? 'fine' : grade === 2 ? 'alongside' : 'before';

/** Grade that the client's ratings earn by the item's own cuts; null while a needed rating is missing. */
export function gradeFromRatings(item: IntakeItem, before: number | null, after: number | null): Grade | null {
  if (!item.ratings) return null;
  const { grades, atMost } = item.ratings;
  if (grades === 'rise' && (before === null || after === null)) return null;
  if (before === null && after === null) return null;
  const value = grades === 'rise' ? (after ?? 0) - (before ?? 0) : Math.max(before ?? 0, after ?? 0);
  if (value <= atMost[0]) return 3;
  if (value <= atMost[1]) return 2;
  return value <= atMost[2] ? 1 : 0;
}

function fromAnswer(answer: IntakeAnswer, item: IntakeItem, words: Told['findings']): Finding {
  const name = `${item.title}${words.side[answer.side]}`;
  const base = {
    code: item.code,
    side: answer.side,
    source: `intakeAnswer/${answer.id}`,
    detail: answer.detail,
    reason: '',
  };
  if (answer.state === 'not-indicated') {
    return { ...base, grade: null, severity: 'not-indicated', sentence: words.notIndicated(name) };
  }
  if (answer.state === 'not-tested' || answer.grade === null) {
    const reason = answer.reason.trim();
    return {
      ...base,
      grade: null,
      severity: 'unknown',
      reason,
      sentence: words.notTested(name, words.reasons[reason] ?? reason),
    };
  }
  const choice = item.detail?.choices.find((each) => each.code === answer.detail);
  // With its question: "Shoulder? No trouble." beside a low grade would else deny it.
  const detail = choice ? ` ${item.detail?.question} ${choice.title}.` : '';
  return {
    ...base,
    grade: answer.grade,
    severity: severityOf(answer.grade),
    sentence: words.graded(name, answer.grade, `${item.anchors[answer.grade]}${detail}`),
  };
}

function fromSetup(setup: SetupResult, source: string, table: ItemTable): Finding[] {
  return setup.findings.map(({ code, sentence }) => {
    const title = table.setupFindings.find((each) => each.code === code)?.title ?? code;
    return {
      code,
      grade: 1,
      side: 'none',
      source,
      reason: '',
      detail: null,
      severity: 'before',
      sentence: `${title}. ${sentence}`,
    };
  });
}

const order: Record<Severity, number> = { before: 0, alongside: 1, unknown: 2, 'not-indicated': 3, fine: 4 };

/**
 * Findings of all facts, worst first. Items of the short screen that nobody answered appear as unknown.
 * @param setup result of the set-up calculator and the fact it came from, where it was measured
 */
export function findings(
  answers: readonly IntakeAnswer[],
  table: ItemTable,
  setup: { result: SetupResult; factId: string } | null,
  words: Told['findings'],
): Finding[] {
  const latest = latestAnswers(answers);
  const fromItems = table.items.flatMap((item): Finding[] => {
    const own = latest.filter((answer) => answer.item === item.code);
    if (own.length > 0) return own.map((answer) => fromAnswer(answer, item, words));
    if (!item.short) return [];
    return [
      {
        ...{ code: item.code, grade: null, side: 'none', source: 'not asked', detail: null, severity: 'unknown' },
        reason: words.notAskedYet,
        sentence: words.notAsked(item.title),
      },
    ];
  });
  const all = setup ? [...fromItems, ...fromSetup(setup.result, `setup/${setup.factId}`, table)] : fromItems;
  return all.sort((a, b) => order[a.severity] - order[b.severity] || (a.grade ?? 4) - (b.grade ?? 4));
}

export interface MayStart {
  area: 'set-up' | ItemTable['mayStart'][number]['area'];
  title: string;
  may: boolean;
  because: string;
}

/** Worst grade of an item among findings: null when any of its sides is untested or it was never asked. */
function worst(list: readonly Finding[], code: string): number | null {
  const own = list.filter((finding) => finding.code === code);
  const grades = own.flatMap(({ grade }) => (grade === null ? [] : [grade]));
  return own.length === 0 || grades.length < own.length ? null : Math.min(...grades);
}

/**
 * What may start now, in the order of the work. Untested never counts as fine (safety: not tested is not safe).
 * The rule table decides each exercise; this is the overview at the end of the screen.
 */
export function mayStart(
  list: readonly Finding[],
  flags: FlagState,
  table: ItemTable,
  words: Told['findings'],
): MayStart[] {
  const titleOf = (code: string): string => table.items.find((item) => item.code === code)?.title ?? code;
  const emergency = flags.level === 'emergency';
  const areas = table.mayStart.map(({ area, title, needs }): MayStart => {
    if (!flags.mayCompose) return { area, title, may: false, because: flags.sentence };
    for (const need of needs) {
      const grade = worst(list, need.item);
      if (grade === null) return { area, title, may: false, because: words.untested(titleOf(need.item)) };
      if (grade < need.grade) return { area, title, may: false, because: words.low(titleOf(need.item), grade) };
    }
    return { area, title, may: true, because: words.nothingAgainst };
  });
  const because = emergency ? flags.sentence : words.seatingFirst;
  return [{ area: 'set-up', title: words.setUp, may: !emergency, because }, ...areas];
}
