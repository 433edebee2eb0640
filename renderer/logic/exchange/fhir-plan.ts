import type { Annotation, CarePlan, CarePlanActivity, Goal as FhirGoal } from './fhir-types.ts';
import type { Goal } from '../../../db/types/goal.ts';
import type { Program } from '../../../db/types/program.ts';
import type { ClientRecord } from '../../../db/types/record.ts';
import { doseWords } from '../texts/dose-words.ts';
import { texts } from '../texts/en.ts';
import { goalSentence } from '../goals/sentence.ts';
import { signed, LEVELS } from '../goals/levels.ts';
import { concept, measureConcept, quantity, refer, systems } from './fhir-codes.ts';
import { englishTelling } from '../texts/screens/telling.ts';

const lifecycle = { active: 'active', met: 'completed', revised: 'cancelled', dropped: 'cancelled' } as const;

/** Goals with their target and five levels. Why a goal matters is the client's own word and stays unless asked for. */
export const goalResources = (record: ClientRecord, options: { withPersonalText: boolean }): FhirGoal[] =>
  record.goals.map((goal) => {
    const said: Goal = options.withPersonalText ? goal : { ...goal, because: '' };
    const levels = LEVELS.flatMap((level, i) => (goal.levels[i] ? [`${signed(level)}: ${goal.levels[i]}`] : []));
    const notes: Annotation[] = levels.length > 0 ? [{ text: `Levels: ${levels.join('; ')}` }] : [];
    if (goal.replaces) notes.push({ text: 'Revises an earlier goal.' });
    const target = {
      measure: measureConcept('legibility'),
      ...(goal.percent === null ? {} : { detailQuantity: quantity(goal.percent, '%') }),
      ...(goal.dueOn ? { dueDate: goal.dueOn } : {}),
    };
    return {
      resourceType: 'Goal',
      id: goal.id,
      lifecycleStatus: lifecycle[goal.status],
      ...(goal.status === 'met'
        ? {
            achievementStatus: {
              coding: [
                {
                  system: 'http://terminology.hl7.org/CodeSystem/goal-achievement',
                  code: 'achieved',
                  display: 'Achieved',
                },
              ],
            },
          }
        : {}),
      description: { text: goalSentence(said, 'the client', (iso) => iso, englishTelling) },
      subject: refer(record.client.id),
      startDate: goal.setOn,
      ...(goal.percent !== null || goal.dueOn ? { target: [target] } : {}),
      ...(notes.length > 0 ? { note: notes } : {}),
    };
  });

/** Approved home programs; the latest is in force. Drafts are nobody's plan yet and stay. */
export function carePlans(record: ClientRecord, options: { withPersonalText: boolean }): CarePlan[] {
  const approved = record.programs
    .filter((program) => program.status === 'approved' && program.approvedAt !== null)
    .sort((a, b) => a.approvedAt!.localeCompare(b.approvedAt!));
  const visits = new Set(record.visits.map((visit) => visit.id));
  const goals = record.goals.filter((goal) => goal.status === 'active').map((goal) => refer(goal.id));
  return approved.map((program, i): CarePlan => {
    const inForce = i === approved.length - 1;
    const end = approved[i + 1]?.approvedAt;
    return {
      resourceType: 'CarePlan',
      id: program.id,
      status: inForce ? 'active' : 'completed',
      intent: 'plan',
      title: 'Home program for handwriting',
      description: `Tier ${program.tier} of 4. Rules ${program.ruleVersion}. Approved by ${program.approvedBy ?? '–'}.`,
      subject: refer(record.client.id),
      ...(visits.has(program.visitId) ? { encounter: refer(program.visitId) } : {}),
      period: { start: program.approvedAt!, ...(end ? { end } : {}) },
      created: program.approvedAt!,
      ...(inForce && goals.length > 0 ? { goal: goals } : {}),
      activity: program.lines.map((line) => activityOf(line, inForce)),
      ...(options.withPersonalText && program.note.trim() ? { note: [{ text: program.note.trim() }] } : {}),
    };
  });
}

function activityOf(line: Program['lines'][number], inForce: boolean): CarePlanActivity {
  const dose = doseWords(line.dose, texts.dose);
  const words = [line.text, ...line.cautions.map((caution) => `Caution: ${caution}`), `Because: ${line.because}`];
  return {
    detail: {
      code: concept(systems.lineKind, line.item ?? line.kind, line.title),
      status: inForce ? 'in-progress' : 'completed',
      description: words.filter(Boolean).join(' '),
      ...(dose ? { scheduledString: dose } : {}),
    },
  };
}
