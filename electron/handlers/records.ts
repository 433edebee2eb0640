import { join } from 'node:path';
import type { TrailRow } from '../../db/index.ts';
import { backupNames, backupsFolder, listBackups, makeBackup, restoreBackup } from '../files/backup.ts';
import { Refusal } from '../contract/envelope.ts';
import type { recordRequests } from '../contract/records.ts';
import type { Handler } from './handler.ts';

const kindWords: Record<string, string> = {
  client: 'client details',
  visit: 'visit',
  intakeAnswer: 'intake answer',
  redFlag: 'red-flag answer',
  setup: 'set-up measures',
  sample: 'writing sample',
  samplePage: 'written page',
  pageMeasurement: 'page measurement',
  reading: 'reading',
  program: 'home program',
  practiceLog: 'practice day',
  goal: 'goal',
  goalRating: 'goal rating',
  issuedPage: 'issued page',
  blob: 'picture or PDF',
  setting: 'setting',
};
const actionWords: Record<TrailRow['action'], string> = {
  create: 'added',
  update: 'changed',
  remove: 'removed',
  undo: 'undone',
  redo: 'redone',
  erase: 'erased',
  import: 'imported',
  set: 'set',
};

/** Fields that changed between two versions of a fact, by name; values stay on the record's own screens. */
function changedFields(row: TrailRow): string {
  if (
    row.action !== 'update' ||
    typeof row.before !== 'object' ||
    typeof row.after !== 'object' ||
    !row.before ||
    !row.after
  )
    return '';
  const before = row.before as Record<string, unknown>;
  const after = row.after as Record<string, unknown>;
  const names = Object.keys(after).filter(
    (k) => k !== 'at' && k !== 'by' && JSON.stringify(before[k]) !== JSON.stringify(after[k]),
  );
  return names.length ? `: ${names.join(', ')}` : '';
}

export const recordHandlers: { [N in keyof typeof recordRequests]: Handler<N> } = {
  'trail.list': (services, { clientId }) =>
    services
      .need()
      .trail(clientId, 500)
      .map((row) => ({
        seq: row.seq,
        at: row.at,
        by: row.by,
        kind: row.kind,
        action: row.action,
        summary: `${kindWords[row.kind] ?? row.kind} ${actionWords[row.action]}${changedFields(row)}`,
      })),
  'trail.verify': (services) => {
    const { whole, entries } = services.need().verifyTrail();
    return { whole, entries };
  },
  'backup.list': (services) =>
    services.need().withKey((identity) => listBackups(backupsFolder(services.folder), identity)),
  'backup.now': async (services) => {
    const now = services.options.now().toISOString();
    const made = await services.need().withKey((identity) => makeBackup({ folder: services.folder, identity, now }));
    services.caseload?.putSetting('lastBackupAt', now, services.doing());
    return made;
  },
  'backup.restore': async (services, { name, passphrase }) => {
    services.need();
    const place = backupsFolder(services.folder);
    // The name must be one of the list's: anything else would reach outside the backup folder.
    if (!backupNames(place).some((b) => b.name === name)) throw new Refusal('not-a-backup');
    services.lock('asked');
    return restoreBackup({
      folder: services.folder,
      file: join(place, name),
      passphrase,
      now: services.options.now().toISOString(),
    });
  },
  'client.erase': (services, { clientId }) => {
    services.need().erase(clientId, services.doing());
    return {};
  },
};
