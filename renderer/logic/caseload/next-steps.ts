import type { ClientRecord } from '../../../db/types/record.ts';
import type { RedFlag } from '../../../db/types/items.ts';
import type { Told } from '../texts/screens/en/screens-en.ts';
import type { Tab } from './tabs.ts';

export interface NextStep {
  tab: Tab;
  action: string;
  text: string;
}

const of = <T extends { visitId: string }>(list: readonly T[], visitId: string) =>
  list.filter((f) => f.visitId === visitId);

/** Red flags that were not asked at this visit. */
export function flagsLeft(record: ClientRecord, visitId: string, redFlags: readonly RedFlag[]): number {
  const asked = new Set(of(record.redFlags, visitId).map(({ flag }) => flag));
  return redFlags.filter((flag) => flag.asked && !asked.has(flag.code)).length;
}

/** What a therapist would do next at this visit, from what is recorded so far; never more than four. */
export function nextSteps(
  record: ClientRecord,
  visitId: string,
  redFlags: readonly RedFlag[],
  words: Told['visit'],
): NextStep[] {
  const step = (tab: Tab, [action = '', text = '']: readonly string[]): NextStep => ({ tab, action, text });
  const { next } = words;
  if (record.visits.length === 0) return [step('client', next.firstVisit)];
  const steps: NextStep[] = [];
  if (flagsLeft(record, visitId, redFlags) > 0) steps.push(step('intake', next.redFlags));
  else if (record.intakeAnswers.length === 0) steps.push(step('intake', next.screen));
  if (of(record.samples, visitId).length === 0) steps.push(step('sample', next.sample));
  const unread = record.samples.filter((s) => s.task.text !== '' && !record.readings.some((r) => r.sampleId === s.id));
  if (unread.length > 0) steps.push(step('readback', [words.readBack, words.samplesWait(unread.length)]));
  const program = record.programs.at(-1);
  if (!program || program.status === 'draft') steps.push(step('program', program ? next.draft : next.program));
  if (!record.goals.some((g) => g.status === 'active')) steps.push(step('goals', next.goal));
  steps.push(step('pages', next.summary));
  return steps.slice(0, 4);
}
