import type { ClientRecord } from '../../../db/types/record.ts';
import type { Tab } from './tabs.ts';

export interface NextStep {
  tab: Tab;
  action: string;
  text: string;
}

const of = <T extends { visitId: string }>(list: readonly T[], visitId: string) =>
  list.filter((f) => f.visitId === visitId);

/** What a therapist would do next at this visit, from what is recorded so far; never more than four. */
export function nextSteps(record: ClientRecord, visitId: string): NextStep[] {
  if (record.visits.length === 0)
    return [
      {
        tab: 'client',
        action: 'Start the first visit',
        text: 'Everything observed belongs to a visit.',
      },
    ];
  const steps: NextStep[] = [];
  if (of(record.redFlags, visitId).length === 0)
    steps.push({ tab: 'intake', action: 'Ask the red flags', text: 'Two minutes, before anything else.' });
  else if (record.intakeAnswers.length === 0)
    steps.push({ tab: 'intake', action: 'Intake screen', text: 'Is hand, posture and table ready?' });
  const samples = of(record.samples, visitId);
  if (samples.length === 0)
    steps.push({ tab: 'sample', action: 'Take a writing sample', text: 'No sample at this visit yet.' });
  const unread = record.samples.filter((s) => s.task.text !== '' && !record.readings.some((r) => r.sampleId === s.id));
  if (unread.length > 0)
    steps.push({
      tab: 'readback',
      action: 'Read back',
      text: `${unread.length === 1 ? 'One sample waits' : `${unread.length} samples wait`} for a reader.`,
    });
  const program = record.programs.at(-1);
  if (!program || program.status === 'draft')
    steps.push({
      tab: 'program',
      action: 'Home program',
      text: program ? 'The draft is not approved yet.' : 'No program yet.',
    });
  if (!record.goals.some((g) => g.status === 'active'))
    steps.push({ tab: 'goals', action: 'Agree a goal', text: 'No goal is active.' });
  steps.push({ tab: 'pages', action: 'Print a summary', text: 'One page for the family.' });
  return steps.slice(0, 4);
}
