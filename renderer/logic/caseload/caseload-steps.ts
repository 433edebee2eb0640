/** How far each step of a visit is: the marks and words of the spine. No step is ever locked. */
import type { ClientRecord } from '../../../db/types/record.ts';
import { sampleLegibility, wordsReadOf } from '../record/sample-legibility.ts';
import type { Tab } from './tabs.ts';

export interface StepState {
  /** empty = not begun at this visit, half = begun, done = done. */
  mark: 'empty' | 'half' | 'done';
  /** The same in words, shown under the step. */
  words: string;
}

const counted = (n: number, one: string, many = `${one}s`): string => `${n} ${n === 1 ? one : many}`;

/** State of each step at a visit. `planned`: minutes a visit usually has. */
export function stepStates(record: ClientRecord, visitId: string): Partial<Record<Tab, StepState>> {
  const of = <T extends { visitId: string }>(list: readonly T[]): T[] => list.filter((f) => f.visitId === visitId);
  return {
    intake: screenStep(record, of(record.redFlags).length, of(record.intakeAnswers).length),
    sample: sampleStep(record, visitId),
    readback: readbackStep(record, visitId),
    program: programStep(record, visitId),
    goals: goalStep(record),
    pages: pagesStep(of(record.issuedPages).length),
  };
}

function screenStep(record: ClientRecord, flags: number, answers: number): StepState {
  if (flags > 0 && answers > 0) return { mark: 'done', words: `${counted(answers, 'answer')}, flags asked` };
  if (flags > 0) return { mark: 'half', words: 'flags asked' };
  if (answers > 0) return { mark: 'half', words: `${counted(answers, 'answer')}, flags not asked` };
  return { mark: 'empty', words: record.intakeAnswers.length > 0 ? 'done at an earlier visit' : 'not begun' };
}

function sampleStep(record: ClientRecord, visitId: string): StepState {
  const samples = record.samples.filter((s) => s.visitId === visitId);
  if (samples.length === 0) return { mark: 'empty', words: 'none at this visit' };
  const pages = record.samplePages.filter((p) => samples.some((s) => s.id === p.sampleId));
  if (pages.length === 0) return { mark: 'half', words: 'no page yet' };
  const measured = pages.filter((p) => record.pageMeasurements.some((m) => m.pageId === p.id)).length;
  return measured === pages.length
    ? { mark: 'done', words: `${counted(measured, 'page')} measured` }
    : { mark: 'half', words: `${measured} of ${counted(pages.length, 'page')} measured` };
}

function readbackStep(record: ClientRecord, visitId: string): StepState {
  const readable = record.samples.filter((s) => s.visitId === visitId && s.task.text.trim() !== '');
  if (readable.length === 0) return { mark: 'empty', words: 'nothing to read yet' };
  const read = readable.filter((s) => record.readings.some((r) => r.sampleId === s.id));
  if (read.length === 0) return { mark: 'empty', words: 'waits for a reader' };
  const last = read.at(-1)!;
  const legibility = sampleLegibility(
    record.readings.filter((r) => r.sampleId === last.id),
    last.task.spellings ?? [],
  );
  const words = legibility ? `${wordsReadOf(legibility)} words` : 'read, kept apart';
  return { mark: read.length === readable.length ? 'done' : 'half', words };
}

function programStep(record: ClientRecord, visitId: string): StepState {
  const here = record.programs.filter((p) => p.visitId === visitId).at(-1);
  if (here?.status === 'approved') return { mark: 'done', words: 'approved' };
  if (here) return { mark: 'half', words: 'draft' };
  const before = record.programs.some((p) => p.status === 'approved');
  return { mark: 'empty', words: before ? 'approved earlier' : 'none yet' };
}

function goalStep(record: ClientRecord): StepState {
  const active = record.goals.filter((g) => g.status === 'active').length;
  return active > 0 ? { mark: 'done', words: `${active} agreed` } : { mark: 'empty', words: 'none agreed' };
}

const pagesStep = (issued: number): StepState =>
  issued > 0 ? { mark: 'done', words: `${issued} issued` } : { mark: 'empty', words: 'none issued' };

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
