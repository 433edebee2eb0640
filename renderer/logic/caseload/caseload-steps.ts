/** How far each step of a visit is: the marks and words of the spine. No step is ever locked. */
import type { ClientRecord } from '../../../db/types/record.ts';
import type { RedFlag } from '../../../db/types/items.ts';
import { flagsLeft } from './next-steps.ts';
import { rightOf, sampleLegibility } from '../record/sample-legibility.ts';
import type { Decimals } from '../texts/decimals.ts';
import type { Told } from '../texts/screens/en/screens-en.ts';
import type { Telling } from '../texts/screens/telling.ts';
import type { Tab } from './tabs.ts';

export interface StepState {
  /** empty = not begun at this visit, half = begun, done = done. */
  mark: 'empty' | 'half' | 'done';
  /** The same in words, shown under the step. */
  words: string;
}

/** State of each step at a visit. `planned`: minutes a visit usually has. */
export function stepStates(
  record: ClientRecord,
  visitId: string,
  redFlags: readonly RedFlag[],
  { told, decimals }: Telling,
): Partial<Record<Tab, StepState>> {
  const of = <T extends { visitId: string }>(list: readonly T[]): T[] => list.filter((f) => f.visitId === visitId);
  const words = told.visit;
  return {
    intake: screenStep(
      record,
      [of(record.redFlags).length, flagsLeft(record, visitId, redFlags)],
      of(record.intakeAnswers).length,
      words,
    ),
    sample: sampleStep(record, visitId, words),
    readback: readbackStep(record, visitId, words, decimals),
    program: programStep(record, visitId, words),
    goals: goalStep(record, words),
    pages: pagesStep(of(record.issuedPages).length, words),
  };
}

function screenStep(
  record: ClientRecord,
  [flags, left]: readonly [number, number],
  answers: number,
  words: Told['visit'],
): StepState {
  if (flags + answers > 0 && left > 0) return { mark: 'half', words: words.answersFlagsLeft(answers, left) };
  if (flags > 0 && answers > 0) return { mark: 'done', words: words.answersFlagsAsked(answers) };
  if (flags > 0) return { mark: 'half', words: words.flagsAsked };
  return { mark: 'empty', words: record.intakeAnswers.length > 0 ? words.doneEarlier : words.notBegun };
}

function sampleStep(record: ClientRecord, visitId: string, words: Told['visit']): StepState {
  const samples = record.samples.filter((s) => s.visitId === visitId);
  if (samples.length === 0) return { mark: 'empty', words: words.noSampleHere };
  const pages = record.samplePages.filter((p) => samples.some((s) => s.id === p.sampleId));
  if (pages.length === 0) return { mark: 'half', words: words.noPageYet };
  const measured = pages.filter((p) => record.pageMeasurements.some((m) => m.pageId === p.id)).length;
  return {
    mark: measured === pages.length ? 'done' : 'half',
    words: words.pagesMeasured(measured, pages.length),
  };
}

function readbackStep(record: ClientRecord, visitId: string, words: Told['visit'], decimals: Decimals): StepState {
  const readable = record.samples.filter((s) => s.visitId === visitId && s.task.text.trim() !== '');
  if (readable.length === 0) return { mark: 'empty', words: words.nothingToRead };
  const read = readable.filter((s) => record.readings.some((r) => r.sampleId === s.id));
  if (read.length === 0) return { mark: 'empty', words: words.waitsForReader };
  const last = read.at(-1)!;
  const legibility = sampleLegibility(
    record.readings.filter((r) => r.sampleId === last.id),
    last.task.spellings ?? [],
  );
  return {
    mark: read.length === readable.length ? 'done' : 'half',
    words: legibility ? words.wordsRead(decimals(rightOf(legibility), 1, 0), legibility.words) : words.readKeptApart,
  };
}

function programStep(record: ClientRecord, visitId: string, words: Told['visit']): StepState {
  const here = record.programs.filter((p) => p.visitId === visitId).at(-1);
  if (here?.status === 'approved') return { mark: 'done', words: words.approved };
  if (here) return { mark: 'half', words: words.draft };
  const before = record.programs.some((p) => p.status === 'approved');
  return { mark: 'empty', words: before ? words.approvedEarlier : words.noProgram };
}

function goalStep(record: ClientRecord, words: Told['visit']): StepState {
  const active = record.goals.filter((g) => g.status === 'active').length;
  return active > 0 ? { mark: 'done', words: words.goalsAgreed(active) } : { mark: 'empty', words: words.noGoal };
}

const pagesStep = (issued: number, words: Told['visit']): StepState =>
  issued > 0 ? { mark: 'done', words: words.pagesIssued(issued) } : { mark: 'empty', words: words.nonePage };

/** Minutes since the first thing of a visit was noted today, and that time; null when it was another day. */
export function visitClock(
  record: ClientRecord,
  visit: { id: string; date: string; at: string },
  today: string,
  nowMs: number,
): { began: string; minutes: number } | null {
  if (visit.date !== today) return null;
  const times = [record.redFlags, record.intakeAnswers, record.samples, record.readings]
    .flatMap((list) => list as readonly { visitId: string; at: string }[])
    .filter((fact) => fact.visitId === visit.id)
    .map((fact) => fact.at);
  const began = [visit.at, ...times].sort()[0]!;
  return { began, minutes: Math.max(0, Math.floor((nowMs - Date.parse(began)) / 60_000)) };
}
