/** Keys of the intake screen: an item's answers, or the reasons why it was not tested. */
import type { Grade } from '../../../../db/types/common.ts';
import type { IntakeItem } from '../../../../db/types/items.ts';
import { notTestedReasons } from '../../../logic/intake/not-tested.ts';
import { say } from '../../parts/say.svelte.ts';
import type { CommandOf } from '../../frame/command-of.ts';

type Command = CommandOf<unknown>;

const grades: readonly Grade[] = [3, 2, 1, 0];
const letters = 'abcdef';

/** What the keys do. */
export interface ItemActs {
  grade: (value: Grade) => void;
  askWhy: () => void;
  notIndicated: () => void;
  /** One item on (1) or back (-1). */
  step: (by: number) => void;
  side: (side: 'right' | 'left') => void;
  detail: (code: string) => void;
}

export const reasonCommands = (notTested: (reason: string) => void, close: () => void): Command[] => [
  ...notTestedReasons.map((reason, i) => ({
    id: `reason-${i}`,
    label: say.told.findings.keys.notTestedBecause(say.told.findings.reasons[reason] ?? reason),
    key: String(i + 1),
    run: () => notTested(reason),
  })),
  { id: 'reason-close', label: say.told.findings.keys.backToItem, key: 'Escape', run: close },
];

/** @param choices what the grade given asks for further; empty where it asks nothing */
export function itemCommands(
  item: Pick<IntakeItem, 'asksSide'> | null,
  choices: readonly { code: string; title: string }[],
  acts: ItemActs,
): Command[] {
  return [
    ...grades.map((value) => ({
      id: `grade-${value}`,
      label: say.told.findings.keys.score(value),
      key: String(value),
      run: () => acts.grade(value),
    })),
    { id: 'not-tested', label: say.told.findings.keys.notTestedWithReason, key: 'n', run: acts.askWhy },
    { id: 'not-indicated', label: say.told.findings.keys.notIndicated, key: 'x', run: acts.notIndicated },
    { id: 'item-next', label: say.told.findings.keys.next, key: 'ArrowRight', run: () => acts.step(1) },
    { id: 'item-back', label: say.told.findings.keys.before, key: 'ArrowLeft', run: () => acts.step(-1) },
    ...(item?.asksSide
      ? (['right', 'left'] as const).map((each) => ({
          id: `side-${each}`,
          label: say.told.findings.keys.side(say.told.findings.hand[each]),
          key: each[0] ?? '',
          run: () => acts.side(each),
        }))
      : []),
    ...choices.map((choice, i) => ({
      id: `detail-${choice.code}`,
      label: choice.title,
      key: letters[i] ?? '',
      run: () => acts.detail(choice.code),
    })),
  ];
}
