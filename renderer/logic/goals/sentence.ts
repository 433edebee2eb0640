import type { Goal } from '../../../db/types/goal.ts';
import { wordsOfPercent } from './goal-ladder.ts';
import { successWords } from './success-words.ts';

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

const cueWords = { none: 'without cues', visual: 'with a visual cue', verbal: 'with one spoken cue' } as const;
const readerWords = { unfamiliar: 'an unfamiliar reader', family: 'a family reader' } as const;

/**
 * The goal as one sentence with everything it needs. What is missing is left out, and named by `missingParts`.
 * @param who the client's name or "the client"
 * @param showDate turns an ISO date into the user's way of writing it
 */
export function goalSentence(goal: GoalText, who: string, showDate: (iso: string) => string): string {
  const parts: string[] = [];
  if (goal.dueOn) parts.push(`By ${showDate(goal.dueOn)}`);
  const output = goal.output || 'something not named yet';
  const length = goal.wordsOf ? ` (about ${goal.wordsOf} words)` : '';
  const paper = goal.paper ? ` on ${goal.paper}` : '';
  const aid = goal.aid ? ` with ${goal.aid}` : '';
  parts.push(`${who} will write ${output}${length}${paper}${aid}, ${cueWords[goal.cue]}`);
  let sentence = parts.join(' ');
  const { measure = 'words' } = goal;
  const { need, of } = goal.tries;
  if (measure !== 'words') {
    sentence += `, so that ${successWords[measure]}`;
    sentence += of > 1 || need > 1 ? `, on ${need} of ${of} tries` : '';
  } else if (goal.percent !== null) {
    sentence += `, so that ${readerWords[goal.reader]} reads ${goal.percent} % of the words${wordCount(goal)}`;
  }
  if (goal.baseline) sentence += `; at the start (${showDate(goal.setOn)}): ${goal.baseline}`;
  if (goal.because) sentence += `; because: ${goal.because.trim().replace(/[.]$/, '')}`;
  return `${sentence}.`;
}

/** Names of the parts that a goal should have and this one has not. */
export function missingParts(goal: GoalText): string[] {
  const missing: [boolean, string][] = [
    [!goal.output, 'what is written'],
    [!goal.paper, 'paper'],
    [countsWords(goal) && goal.percent === null, 'how many words are to be read'],
    [!goal.dueOn, 'a date'],
    [countsWords(goal) && !goal.baseline, 'the start level'],
    [!goal.because, 'why it matters to the client'],
    [!countsWords(goal) && goal.tries.need > goal.tries.of, 'tries that are possible (more are needed than there are)'],
  ];
  return missing.filter(([isMissing]) => isMissing).map(([, name]) => name);
}

/** Words are counted over all tries together, as the levels count them: single tries pass or fail by chance. */
function wordCount(goal: Pick<Goal, 'wordsOf' | 'percent' | 'tries'>): string {
  const { of } = goal.tries;
  const words = (goal.wordsOf ?? 0) * of;
  const counted = words > 0 && goal.percent !== null ? `${wordsOfPercent(goal.percent, words)} of ${words}` : '';
  const said = [counted, of > 1 ? `${of} tries together` : ''].filter(Boolean).join(', ');
  return said === '' ? '' : ` (${said})`;
}
