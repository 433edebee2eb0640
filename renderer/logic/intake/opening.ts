/** Which items the screen asks: eight for everyone, the others only on indication. */
import type { IntakeAnswer } from '../../../db/types/intake.ts';
import type { IntakeItem, ItemTable, OpensWhen } from '../../../db/types/items.ts';
import { worstGrade } from '../record/latest-answers.ts';
import type { Told } from '../texts/screens/en/screens-en.ts';

export interface OpeningInput {
  answers: readonly IntakeAnswer[];
  /** Diagnosis kinds of the client, codes of the rule table. */
  diagnoses: readonly string[];
  /** Measures of the latest sample: code and value in the measure's own unit. */
  measures?: readonly { code: string; value: number | null }[];
  /** A home program without a helper is about to be composed. */
  homeProgram?: boolean;
  /** The goal talk has begun. */
  goalTalk?: boolean;
  /** Items that the therapist opened by hand. */
  openedByHand?: readonly string[];
}

export interface ItemState {
  item: IntakeItem;
  /** `asked` = on today's list; `closed` = no reason to ask so far. */
  state: 'asked' | 'closed';
  answered: boolean;
  /** Why it is asked; for a closed item '' */
  because: string;
}

function met(condition: OpensWhen, input: OpeningInput, table: ItemTable): boolean {
  switch (condition.when) {
    case 'grade-at-most': {
      const grade = worstGrade(input.answers, condition.item);
      return grade !== null && grade <= condition.grade;
    }
    case 'brain-diagnosis':
      return input.diagnoses.some((kind) => table.brainDiagnoses.includes(kind));
    case 'measure-at-most':
    case 'measure-at-least': {
      const value = input.measures?.find((measure) => measure.code === condition.measure)?.value ?? null;
      if (value === null) return false;
      return condition.when === 'measure-at-most' ? value <= condition.value : value >= condition.value;
    }
    case 'home-program':
      return input.homeProgram === true;
    case 'goal-talk':
      return input.goalTalk === true;
  }
}

/** State of every item, in the order of the table. An item once answered stays on the list. */
export function openItems(input: OpeningInput, table: ItemTable, words: Told['findings']): ItemState[] {
  return table.items.map((item) => {
    // A first rating without its second has no grade yet: the item is still to be finished.
    const answered = input.answers.some(
      (answer) => answer.item === item.code && (answer.state !== 'graded' || answer.grade !== null),
    );
    const condition = item.opensWhen.find((each) => met(each, input, table));
    const because = item.short
      ? words.everyone
      : (condition?.because ??
        (input.openedByHand?.includes(item.code) ? words.openedByYou : answered ? words.answeredBefore : ''));
    return { item, state: because === '' ? 'closed' : 'asked', answered, because };
  });
}

/** The first asked item without an answer: where the screen resumes. Null when all are answered. */
export const resumeAt = (states: readonly ItemState[]): string | null =>
  states.find((state) => state.state === 'asked' && !state.answered)?.item.code ?? null;
