/** Tremor tasks in their order: each with both hands, because one hand tells little without the other. */
import type { Hand } from '../../../db/types/common.ts';
import type { InkRecording } from '../../../db/types/sample.ts';
import type { Telling } from '../texts/screens/telling.ts';
import { inkSentence } from './ink-sentence.ts';

export const tremorTasks = ['line', 'spiral', 'hold'] as const;
export type TremorTask = (typeof tremorTasks)[number];
export const bothHands = ['right', 'left'] as const satisfies readonly Hand[];

/** The task and hand that were not done yet; when all were, the first once more. */
export function nextTremorTask(recordings: readonly InkRecording[]): {
  task: TremorTask;
  hand: Hand;
  isFirst: boolean;
  isAgain: boolean;
} {
  const done = (task: TremorTask, hand: Hand): boolean =>
    recordings.some((each) => each.task === task && each.hand === hand && each.blob !== null && !each.abandoned);
  const all = tremorTasks.flatMap((task) => bothHands.map((hand) => ({ task, hand })));
  const open = all.find(({ task, hand }) => !done(task, hand));
  return { ...(open ?? all[0]!), isFirst: !all.some(({ task, hand }) => done(task, hand)), isAgain: !open };
}

/** What a finished task showed, in a few words. */
export const rhythmWords = ({ measured }: InkRecording, telling: Telling): string =>
  measured ? inkSentence(measured.told, telling) : '';
