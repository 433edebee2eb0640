/** What a record says for the next proposal: readings with their fatigue and pain, the own first samples, the last step. */
import type { ClientRecord } from '../../db/types/record.ts';
import type { Program } from '../../db/types/program.ts';
import { occasionsOf } from '../progress/occasions.ts';
import { changedDimension, type Dimension } from './ladder.ts';
import type { Session } from './proposals.ts';

const rise = (before: number | null, after: number | null): number | null =>
  before === null || after === null ? null : after - before;

/** Approved programs, oldest first. */
export const approvedPrograms = (record: Pick<ClientRecord, 'programs'>): Program[] =>
  record.programs
    .filter((each) => each.status === 'approved')
    .sort((a, b) => Date.parse(a.approvedAt ?? a.at) - Date.parse(b.approvedAt ?? b.at));

/**
 * Samples and practice days since the program in force, in order of time. Practice days carry fatigue and no words;
 * a sample without its own ratings takes those of practice on the same day.
 */
export function sessionsOf(record: ClientRecord): Session[] {
  const since = approvedPrograms(record).at(-1)?.approvedAt?.slice(0, 10) ?? '';
  const samples = occasionsOf(record)
    .filter((each) => !each.probe && each.day >= since)
    .map(({ day, sample, legibility }) => ({
      day,
      read: legibility ? legibility.accuracy * 100 : null,
      words: legibility?.words ?? null,
      fatigueRise: rise(sample.fatigueBefore, sample.fatigueAfter),
      painRise: rise(sample.painBefore, sample.painAfter),
    }));
  const practice = record.practiceLogs
    .filter((log) => log.date >= since)
    .map((log) => ({
      day: log.date,
      read: null,
      words: null,
      fatigueRise: rise(log.fatigueBefore, log.fatigueAfter),
      painRise: null,
    }));
  const ofDay = new Map(practice.map((each) => [each.day, each.fatigueRise]));
  const filled = samples.map((each) => ({ ...each, fatigueRise: each.fatigueRise ?? ofDay.get(each.day) ?? null }));
  return [...filled, ...practice].sort((a, b) => a.day.localeCompare(b.day));
}

/** Words read in the client's first three samples, percent: what later ones are judged against. */
export const ownFirst = (record: ClientRecord): number[] =>
  occasionsOf(record)
    .flatMap(({ probe, legibility }) => (probe || !legibility ? [] : [legibility.accuracy * 100]))
    .slice(0, 3);

/** What the last step changed, where two programs in a row differ in exactly one thing. */
export function lastChange(record: Pick<ClientRecord, 'programs'>): Dimension | null {
  const [before, after] = approvedPrograms(record).slice(-2);
  return before && after ? changedDimension(before.lines, after.lines) : null;
}
