/** The plan for the next visit, as it is shown at the start of that visit. */
import type { ClientRecord } from '../../../db/types/record.ts';
import type { Visit, VisitPlan } from '../../../db/types/visit.ts';
import type { Told } from '../texts/screens/en/screens-en.ts';

/** The visit right before this one; null = none. What was planned earlier than that is no plan any more. */
export function visitBefore<V extends Pick<Visit, 'id' | 'date'>>(visits: readonly V[], visitId: string): V | null {
  const inOrder = [...visits].sort((a, b) => a.date.localeCompare(b.date));
  return inOrder[inOrder.findIndex(({ id }) => id === visitId) - 1] ?? null;
}

/** The plan written at the visit right before this one; null = none. */
export function planBefore(record: Pick<ClientRecord, 'visits' | 'visitPlans'>, visitId: string): VisitPlan | null {
  const before = visitBefore(record.visits, visitId);
  const plans = record.visitPlans.filter((plan) => plan.visitId === before?.id);
  return plans.sort((a, b) => a.at.localeCompare(b.at)).at(-1) ?? null;
}

/** What was agreed, a sentence each; nothing is said of what was left open. */
export function planSentences(
  plan: VisitPlan,
  dayWords: (day: string) => string,
  told: Pick<Told, 'visit' | 'conditions'>,
): string[] {
  const words = told.visit;
  const ended = (text: string): string => text.trim().replace(/[.\s]*$/, '.');
  return [
    plan.nextOn ? words.plannedFor(dayWords(plan.nextOn), plan.hour ?? '') : '',
    plan.retest ? words.writeAgain(told.conditions.task[plan.retest]) : '',
    plan.dose.trim() ? words.medicine(ended(plan.dose)) : '',
    plan.trialId ? words.goOnWithTrial : '',
    plan.questions.trim() ? words.ask(ended(plan.questions)) : '',
  ].filter(Boolean);
}
