import type { IntakeAnswer, RedFlagAnswer } from '../../../db/types/intake.ts';

const latestBy = <T extends { at: string }>(facts: readonly T[], key: (fact: T) => string): T[] => {
  const latest = new Map<string, T>();
  for (const fact of facts) {
    const known = latest.get(key(fact));
    // Same instant: the later entry of the list wins, as it was saved later.
    if (!known || Date.parse(fact.at) >= Date.parse(known.at)) latest.set(key(fact), fact);
  }
  return [...latest.values()];
};

/** The answers that count now: the latest of each item and side, over all visits given. */
export const latestAnswers = (answers: readonly IntakeAnswer[]): IntakeAnswer[] =>
  latestBy(answers, (answer) => `${answer.item}/${answer.side}`);

/** The latest answer of each flag at each visit: an answer corrected within a visit replaces itself. */
export const latestFlagAnswers = (answers: readonly RedFlagAnswer[]): RedFlagAnswer[] =>
  latestBy(answers, (answer) => `${answer.flag}/${answer.visitId}`);

/** Lowest grade of an item over its sides; null when no side was graded. */
export function worstGrade(answers: readonly IntakeAnswer[], item: string): number | null {
  const grades = latestAnswers(answers).flatMap((answer) =>
    answer.item === item && answer.state === 'graded' && answer.grade !== null ? [answer.grade] : [],
  );
  return grades.length === 0 ? null : Math.min(...grades);
}
