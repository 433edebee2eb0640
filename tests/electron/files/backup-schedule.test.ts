import fc from 'fast-check';
import { expect, test } from 'vitest';
import { readBackupName, type BackupName, type BackupReason } from '../../../electron/files/backup/backup-list.ts';
import {
  checkIsDue,
  daysSince,
  isDue,
  mayGo,
  secondPlaceIsOld,
} from '../../../electron/files/backup/backup-schedule.ts';

const at = (iso: string, reason: BackupReason = 'hour'): BackupName => ({
  name: `caseload-${iso.replace(/\.\d+/, '').replace(/[-:]/g, '')}-${reason}.tar`,
  at: iso,
  reason,
});

const END = '2026-03-31T23:59:59.000Z';

/** Backups every hour from 8 to 16, one day after the other, going back from 2026-03-31. */
function hourly(days: number): BackupName[] {
  const all: BackupName[] = [];
  for (let day = 0; day < days; day++) {
    for (let hour = 8; hour <= 16; hour++) {
      all.push(at(new Date(Date.UTC(2026, 2, 31 - day, hour)).toISOString()));
    }
  }
  return all;
}
const kept = (all: BackupName[]): BackupName[] => {
  const gone = new Set(mayGo(all, 0, END));
  return all.filter((each) => !gone.has(each.name));
};

test('names are read back as they were made, and other files are not ours', () => {
  const made = at('2026-03-04T09:12:00.000Z', 'close');
  expect(readBackupName(made.name)).toEqual(made);
  expect(readBackupName('caseload-20260304T091200Z-hand-2.tar')?.reason).toBe('hand');
  for (const other of ['caseload-20260304T091200Z-hour.tar.part', 'caseload.db', '../x.tar', '']) {
    expect(readBackupName(other)).toBeNull();
  }
});

test('a year of hourly backups leaves 7 days, 5 weeks and 12 months, the newest of each', () => {
  const left = kept(hourly(365)).map((each) => each.at.slice(0, 13));
  expect(left).toEqual([
    '2026-03-31T16',
    '2026-03-30T16',
    '2026-03-29T16',
    '2026-03-28T16',
    '2026-03-27T16',
    '2026-03-26T16',
    '2026-03-25T16',
    '2026-03-22T16',
    '2026-03-15T16',
    '2026-03-08T16',
    '2026-02-28T16',
    '2026-01-31T16',
    '2025-12-31T16',
    '2025-11-30T16',
    '2025-10-31T16',
    '2025-09-30T16',
    '2025-08-31T16',
    '2025-07-31T16',
    '2025-06-30T16',
    '2025-05-31T16',
    '2025-04-30T16',
  ]);
});

test('after months without the laptop nothing is rotated away that was kept before', () => {
  const old = kept(hourly(20));
  expect(kept([at('2027-01-01T09:00:00.000Z'), ...old]).length).toBeGreaterThanOrEqual(old.length);
});

test('backups made by hand stay', () => {
  const byHand = hourly(60).map((each) => ({ ...each, reason: 'hand' as const }));
  expect(mayGo(byHand, 0, END)).toEqual([]);
});

test('an evening belongs to its own local day', () => {
  // 21:00 and 23:30 of the same evening in New York are on two UTC days.
  const evening = [at('2026-03-04T03:30:00.000Z'), at('2026-03-05T02:00:00.000Z'), at('2026-03-05T04:30:00.000Z')];
  expect(mayGo(evening, -300, END)).toEqual([evening[1]!.name]);
  expect(mayGo(evening, 0, END)).toEqual([evening[1]!.name]);
});

test('the newest is never deleted, rotating twice is rotating once, and each period keeps its newest', () => {
  const instant = fc.date({ min: new Date('2024-01-01'), max: new Date('2027-01-01'), noInvalidDate: true });
  fc.assert(
    fc.property(
      fc.uniqueArray(instant, { selector: (date) => Math.floor(date.getTime() / 1000), maxLength: 80 }),
      (dates) => {
        const all = dates.map((date) => at(new Date(Math.floor(date.getTime() / 1000) * 1000).toISOString()));
        const left = kept(all);
        const newest = [...all].sort((a, b) => b.at.localeCompare(a.at))[0];
        if (newest) expect(left).toContain(newest);
        expect(kept(left)).toEqual(left);
        expect(left.length).toBeLessThanOrEqual(7 + 5 + 12);
        expect(left.length).toBeGreaterThanOrEqual(Math.min(7, new Set(all.map((each) => each.at.slice(0, 10))).size));
      },
    ),
  );
});

test('the clock set back a year: what is backed up now stays, and so does what was backed up before', () => {
  const before = kept(hourly(800));
  const now = '2025-03-31T12:00:00.000Z';
  const made = at(now, 'close');
  const gone = mayGo([...before, made], 0, now);
  expect(gone).not.toContain(made.name);
  // Nothing that was kept of the time ahead goes.
  expect(before.filter((each) => each.at > now && gone.includes(each.name))).toEqual([]);
});

test('a backup is due when something changed and an hour went by, or the clock was set back', () => {
  const state = { backedUpSeq: 5, backedUpAt: '2026-03-04T09:00:00.000Z' };
  expect(isDue(state, 5, '2026-03-09T09:00:00.000Z')).toBe(false);
  expect(isDue(state, 6, '2026-03-04T09:59:59.000Z')).toBe(false);
  expect(isDue(state, 6, '2026-03-04T10:00:00.000Z')).toBe(true);
  expect(isDue(state, 6, '2026-03-03T10:00:00.000Z')).toBe(true);
  expect(isDue({ backedUpSeq: null, backedUpAt: null }, 1, '2026-03-04T09:00:00.000Z')).toBe(true);
  expect(isDue({ backedUpSeq: null, backedUpAt: null }, 0, '2026-03-04T09:00:00.000Z')).toBe(false);
});

test('the second place is old after a week, and when nothing was ever put there', () => {
  const now = '2026-03-12T09:00:00.000Z';
  expect(secondPlaceIsOld(null, now)).toBe(true);
  expect(secondPlaceIsOld('2026-03-05T08:00:00.000Z', now)).toBe(false);
  expect(secondPlaceIsOld('2026-03-04T08:00:00.000Z', now)).toBe(true);
  expect(daysSince('2027-01-01T00:00:00.000Z', now)).toBe(0);
});

test('the whole file is checked weekly, and after the clock was set back', () => {
  expect(checkIsDue(null, '2026-03-12T09:00:00.000Z')).toBe(true);
  expect(checkIsDue('2026-03-05T09:00:01.000Z', '2026-03-12T09:00:00.000Z')).toBe(false);
  expect(checkIsDue('2026-03-05T09:00:00.000Z', '2026-03-12T09:00:00.000Z')).toBe(true);
  expect(checkIsDue('2026-03-13T09:00:00.000Z', '2026-03-12T09:00:00.000Z')).toBe(true);
});
