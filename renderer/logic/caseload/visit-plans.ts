/** The plan for the next visit, as it is shown at the start of that visit. */
import type { ClientRecord } from '../../../db/types/record.ts';
import type { VisitPlan } from '../../../db/types/visit.ts';
import { taskNames } from '../sample/next-text.ts';

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
export function planSentences(plan: VisitPlan, dayWords: (day: string) => string): string[] {
  return [
    plan.nextOn ? `The visit was planned for ${dayWords(plan.nextOn)}${plan.hour ? ` at ${plan.hour}` : ''}.` : '',
    plan.retest ? `Write again: ${taskNames[plan.retest].toLowerCase()}, at the same hour of the day.` : '',
    plan.dose.trim() ? `Medicine: ${plan.dose.trim().replace(/[.\s]*$/, '.')}` : '',
    plan.trialId ? 'Go on with the trial that is open.' : '',
    plan.questions.trim() ? `Ask: ${plan.questions.trim().replace(/[.\s]*$/, '.')}` : '',
  ].filter(Boolean);
}
