import type { Goal } from '../../../db/types/goal.ts';
import { wordsOfPercent } from './goal-ladder.ts';
import { successOf } from './signature-check.ts';
import type { Told } from '../texts/screens/en/screens-en.ts';
import type { Telling } from '../texts/screens/telling.ts';
import { toldStartLevel } from './start-level.ts';

type GoalText = Pick<
  Goal,
  | 'output'
  | 'paper'
  | 'aid'
  | 'cue'
  | 'reader'
  | 'wordsOf'
  | 'percent'
  | 'tries'
  | 'dueOn'
  | 'setOn'
  | 'baseline'
  | 'because'
  | 'measure'
>;

/** Whether a reader counts the words; otherwise tries pass or fail. */
export const countsWords = ({ measure }: Pick<Goal, 'measure'>): boolean => (measure ?? 'words') === 'words';

/**
 * The goal as one sentence with everything it needs. What is missing is left out, and named by `missingParts`.
 * @param who the client's name or "the client"
 * @param showDate turns an ISO date into the user's way of writing it
 */
export function goalSentence(goal: GoalText, who: string, showDate: (iso: string) => string, telling: Telling): string {
  const words = telling.told.goals;
  const output = goal.output || words.somethingUnnamed;
  let sentence = goal.dueOn ? words.by(showDate(goal.dueOn)) : '';
  sentence += words.willWrite(who, output, goal.wordsOf || null, goal.paper, goal.aid, words.cue[goal.cue]);
  const { measure = 'words' } = goal;
  const { need, of } = goal.tries;
  if (measure !== 'words') {
    sentence += words.soThat(successOf(measure, words));
    sentence += of > 1 || need > 1 ? words.onTries(need, of) : '';
  } else if (goal.percent !== null) {
    sentence += readsWords(goal, goal.percent, telling.told);
  }
  if (goal.baseline) sentence += words.atStart(showDate(goal.setOn), toldStartLevel(goal.baseline, telling));
  if (goal.because) sentence += words.because(goal.because.trim().replace(/[.]$/, ''));
  return `${sentence}.`;
}

/** Names of the parts that a goal should have and this one has not. */
export function missingParts(goal: GoalText, words: Told['goals']): string[] {
  const names = words.missing;
  const missing: [boolean, string][] = [
    [!goal.output, names.output],
    [!goal.paper, names.paper],
    [countsWords(goal) && goal.percent === null, names.percent],
    [!goal.dueOn, names.date],
    [countsWords(goal) && !goal.baseline, names.start],
    [!goal.because, names.why],
    [!countsWords(goal) && goal.tries.need > goal.tries.of, names.tries],
  ];
  return missing.filter(([isMissing]) => isMissing).map(([, name]) => name);
}

/** Words are counted over all tries together, as the levels count them: single tries pass or fail by chance. */
function readsWords(goal: Pick<Goal, 'reader' | 'wordsOf' | 'tries'>, percent: number, told: Told): string {
  const { of } = goal.tries;
  const words = (goal.wordsOf ?? 0) * of;
  const reader = told.goals.reader[goal.reader];
  const tries = of > 1 ? told.goals.triesTogether(of) : '';
  if (words === 0) return told.goals.reads(reader, percent, tries && ` (${tries})`);
  const counted = told.reading.of(String(wordsOfPercent(percent, words)), words);
  return told.goals.readsWords(reader, counted, percent, tries && `, ${tries}`);
}
