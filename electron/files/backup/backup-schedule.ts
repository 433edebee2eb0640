/** When a backup is due and which old ones may go. Pure: times and names are passed in. */
import type { BackupName } from './backup-list.ts';

/** How many of each are kept, at the least. */
const KEPT = { days: 7, weeks: 5, months: 12 } as const;

const HOUR_MS = 3_600_000;

/** A copy in a second place counts as old after this many days. Common practice, no source. */
const SECOND_PLACE_DAYS = 7;

export interface BackupState {
  /** Trail entries when the last backup was made; null when there is none. */
  backedUpSeq: number | null;
  /** ISO instant of the last backup; null when there is none. */
  backedUpAt: string | null;
}

/** An hourly backup is due when something changed since the last one and an hour went by, or the clock was set back. */
export function isDue(state: BackupState, seq: number, now: string): boolean {
  if (seq === 0 || state.backedUpSeq === seq) return false;
  if (state.backedUpAt === null) return true;
  const passed = Date.parse(now) - Date.parse(state.backedUpAt);
  return passed >= HOUR_MS || passed < 0;
}

/** Monday of the week of a date, as a key. */
function weekOf(at: Date): string {
  const monday = new Date(at);
  monday.setUTCDate(at.getUTCDate() - ((at.getUTCDay() + 6) % 7));
  return monday.toISOString().slice(0, 10);
}

/**
 * Names of the automatic backups that may be deleted: none that is the newest of one of the 7 latest days, 5 latest
 * weeks or 12 latest months that have any. Counted in days with a backup, not in calendar days: after a holiday
 * nothing is lost. Backups made by hand are never among them.
 * @param offsetMinutes local time minus UTC, so that an evening belongs to its own day
 * @param now backups from after it were made before the clock was set back: they are counted by themselves, so that the
 *   one that was just made is not the oldest of all
 */
export function mayGo(backups: readonly BackupName[], offsetMinutes: number, now: string): string[] {
  return [true, false].flatMap((ahead) =>
    mayGoOf(
      backups.filter(({ at }) => Date.parse(at) > Date.parse(now) === ahead),
      offsetMinutes,
    ),
  );
}

function mayGoOf(backups: readonly BackupName[], offsetMinutes: number): string[] {
  const automatic = backups
    .filter((each) => each.reason !== 'hand')
    .sort((a, b) => b.at.localeCompare(a.at) || b.name.localeCompare(a.name));
  const keep = new Set<string>();
  const keepNewestOf = (count: number, period: (local: Date) => string): void => {
    const seen = new Set<string>();
    for (const { name, at } of automatic) {
      const key = period(new Date(Date.parse(at) + offsetMinutes * 60_000));
      if (seen.has(key)) continue;
      if (seen.size === count) return;
      seen.add(key);
      keep.add(name);
    }
  };
  keepNewestOf(KEPT.days, (local) => local.toISOString().slice(0, 10));
  keepNewestOf(KEPT.weeks, weekOf);
  keepNewestOf(KEPT.months, (local) => local.toISOString().slice(0, 7));
  return automatic.filter(({ name }) => !keep.has(name)).map(({ name }) => name);
}

/** Whole days since the newest backup in the second place; null when there is none yet. Never negative. */
export function daysSince(newest: string | null, now: string): number | null {
  if (newest === null) return null;
  return Math.max(0, Math.floor((Date.parse(now) - Date.parse(newest)) / (24 * HOUR_MS)));
}

/** Days between two checks of every page, reference and picture. */
const CHECK_DAYS = 7;

/** True when the whole file is to be checked again: a week went by, it never was, or the clock was set back. */
export function checkIsDue(lastCheck: string | null, now: string): boolean {
  if (lastCheck === null) return true;
  const passed = Date.parse(now) - Date.parse(lastCheck);
  return passed < 0 || passed >= CHECK_DAYS * 24 * HOUR_MS;
}

/** True when she should be reminded to plug the stick in. */
export function secondPlaceIsOld(newest: string | null, now: string): boolean {
  const days = daysSince(newest, now);
  return days === null || days > SECOND_PLACE_DAYS;
}
