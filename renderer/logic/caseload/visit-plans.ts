/** The plan for the next visit, as it is shown at the start of that visit. */
import type { ClientRecord } from '../../../db/types/record.ts';
import type { VisitPlan } from '../../../db/types/visit.ts';
import type { Told } from '../texts/screens/en/screens-en.ts';

/** The plan written at the latest visit before this one; null = none. */
export function planBefore(record: Pick<ClientRecord, 'visits' | 'visitPlans'>, visitId: string): VisitPlan | null {
  const days = new Map(record.visits.map((visit) => [visit.id, visit.date]));
  const day = days.get(visitId);
  if (day === undefined) return null;
  return (
    record.visitPlans
      .filter((plan) => plan.visitId !== visitId && (days.get(plan.visitId) ?? '') <= day)
      .sort((a, b) => (days.get(a.visitId) ?? '').localeCompare(days.get(b.visitId) ?? '') || a.at.localeCompare(b.at))
      .at(-1) ?? null
  );
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
