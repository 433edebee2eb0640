/** What a record says for the next proposal: readings with their fatigue and pain, the own first samples, the last step. */
import { daysBetween } from '../../texts/days.ts';
import type { ClientRecord } from '../../../../db/types/record.ts';
import type { PracticeLog, Program } from '../../../../db/types/program.ts';
import { stepSigns, type StepSigns } from '../../../change/index.ts';
import { changeSince } from '../../record/change-samples.ts';
import { type Occasion, occasionsOf } from '../../record/occasions.ts';
import type { Limits } from '../../rules/limits.ts';
import { changedDimension, type Dimension } from './paper-ladder.ts';
import { minutesADay } from '../draft/program-line.ts';
import { practiceSummary } from './practice-log.ts';
import type { PracticeBack, Session } from './proposals.ts';

const rise = (before: number | null, after: number | null): number | null =>
  before === null || after === null ? null : after - before;

/** Approved programs, oldest first. */
export const approvedPrograms = (record: Pick<ClientRecord, 'programs'>): Program[] =>
  record.programs
    .filter((each) => each.status === 'approved')
    .sort((a, b) => Date.parse(a.approvedAt ?? a.at) - Date.parse(b.approvedAt ?? b.at));

/** Letters that readers took for others most often in one sample: what is practiced until the next. */
function hardLetters(occasion: Occasion | undefined, most: number): ReadonlySet<string> {
  const counts = new Map<string, number>();
  for (const { intended, count } of occasion?.legibility?.confusions ?? [])
    if (/^\p{Ll}$/u.test(intended)) counts.set(intended, (counts.get(intended) ?? 0) + count);
  const worst = [...counts].sort((a, b) => b[1] - a[1] || (a[0] < b[0] ? -1 : 1)).slice(0, most);
  return new Set(worst.map(([letter]) => letter));
}

/** How often the practiced letters were written and read, over all readings of a sample that have its words. */
function lettersRead({ legibility }: Occasion, letters: ReadonlySet<string>): Session['letters'] {
  const readings = legibility?.readings.filter((each) => each.counts !== null) ?? [];
  const written = readings.flatMap(({ reading }) => reading.lines.flatMap((line) => [...line.intended.toLowerCase()]));
  const of = written.filter((letter) => letters.has(letter)).length;
  const wrong = readings
    .flatMap(({ counts }) => counts?.confusions ?? [])
    .reduce((sum, each) => sum + (letters.has(each.intended) ? each.count : 0), 0);
  return of === 0 ? null : { right: Math.max(0, of - wrong), of };
}

/** Practice days since the program in force, oldest first. */
function logsSince(record: Pick<ClientRecord, 'programs' | 'practiceLogs'>): PracticeLog[] {
  const since = approvedPrograms(record).at(-1)?.approvedAt?.slice(0, 10) ?? '';
  return record.practiceLogs.filter((log) => log.date >= since).sort((a, b) => a.date.localeCompare(b.date));
}

/** What came back since the program in force, against what it asks for; null before there is one. */
export function practiceBack(record: Pick<ClientRecord, 'programs' | 'practiceLogs'>): PracticeBack | null {
  const program = approvedPrograms(record).at(-1);
  if (!program) return null;
  const logs = logsSince(record);
  const { days, daysPerWeek } = practiceSummary(logs);
  const asked = program.lines.filter((line) => line.dose.minutes !== null);
  const mean = (values: (number | null)[]): number | null => {
    const said = values.filter((value) => value !== null);
    return said.length === 0 ? null : Math.round(said.reduce((sum, value) => sum + value, 0) / said.length);
  };
  return {
    days,
    daysPerWeek,
    daysAsked: Math.max(0, ...asked.map((line) => line.dose.daysPerWeek ?? 0)),
    minutesADay: mean(logs.map((log) => log.minutes)),
    minutesAsked: minutesADay(asked),
    linesADay: mean(logs.map((log) => log.lines)),
  };
}

/**
 * Samples and practice days since the program in force, in order of time. Practice days carry fatigue and no words;
 * a sample without its own ratings takes those of practice on the same day.
 */
export function sessionsOf(record: ClientRecord, lettersTaught = 3): Session[] {
  const since = approvedPrograms(record).at(-1)?.approvedAt?.slice(0, 10) ?? '';
  const occasions = occasionsOf(record).filter((each) => !each.probe);
  const letters = hardLetters(occasions.filter((each) => each.day <= since && each.legibility).at(-1), lettersTaught);
  const samples = occasions
    .filter((each) => each.day >= since)
    .map((each) => ({ ...each, letters: lettersRead(each, letters) }))
    .map(({ day, sample, legibility, letters: practiced }) => ({
      day,
      read: legibility ? legibility.accuracy * 100 : null,
      words: legibility?.words ?? null,
      letters: practiced,
      fatigueRise: rise(sample.fatigueBefore, sample.fatigueAfter),
      painRise: rise(sample.painBefore, sample.painAfter),
    }));
  const logs = logsSince(record);
  const painAtFirst = logs.find((log) => log.pain !== null)?.pain ?? null;
  const practice = logs.map((log) => ({
    day: log.date,
    read: null,
    words: null,
    letters: null,
    fatigueRise: rise(log.fatigueBefore, log.fatigueAfter),
    // Against the first day of this program: pain may be what it was, not more.
    painRise: rise(painAtFirst, log.pain),
    startedAt: log.fatigueBefore,
  }));
  const ofDay = new Map(practice.map((each) => [each.day, each.fatigueRise]));
  const filled = samples.map((each) => ({ ...each, fatigueRise: each.fatigueRise ?? ofDay.get(each.day) ?? null }));
  return [...filled, ...practice].sort((a, b) => a.day.localeCompare(b.day));
}

/** What the model of change says of the retests since the last approved step, against the client's own start. */
export function stepSignsOf(record: ClientRecord, limits: Limits): StepSigns {
  const since = approvedPrograms(record).at(-1)?.approvedAt?.slice(0, 10) ?? '';
  const { answer, before, now } = changeSince(record, since, limits);
  const from = [before.at(-1)?.day ?? '', since].sort().at(-1)!;
  const to = now.at(-1)?.day ?? from;
  const days = from === '' ? 0 : daysBetween(from, to);
  return stepSigns(answer.chances, now.length, days, limits.change);
}

/** What the last step changed, where two programs in a row differ in exactly one thing. */
export function lastChange(record: Pick<ClientRecord, 'programs'>): Dimension | null {
  const [before, after] = approvedPrograms(record).slice(-2);
  return before && after ? changedDimension(before.lines, after.lines) : null;
}
