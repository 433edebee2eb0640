import { randomUUID } from 'node:crypto';
import { existsSync, rmSync, statSync } from 'node:fs';
import { mkdir } from 'node:fs/promises';
import path from 'node:path';
import { laptopFile } from '../../db/files.ts';
import { fits, readFingerprint } from '../../db/fingerprint.ts';
import { listAside } from '../../db/set-aside.ts';
import { Refusal } from '../contract/envelope.ts';
import type { recordRequests } from '../contract/records.ts';
import { makeBackup, restoreBackup, undoRestore } from '../files/backup/backup.ts';
import { backupNames, backupsFolder, listBackups, listBackupsWith } from '../files/backup/backup-list.ts';
import { bringBackup } from '../files/backup/backup-bring.ts';
import { newestIn, noteSecond } from '../files/backup/backup-second.ts';
import { whereClientsRemain } from '../files/backup/backup-holding.ts';
import { salvageCaseload } from '../files/backup/backup-salvage.ts';
import {
  clientFileName,
  exportsFolder,
  exportsHolding,
  readClientFile,
  writeAllClients,
  writeClientFile,
} from '../files/backup/client-file.ts';
import { BACKUP_ENDING, CLIENT_ENDING } from '../files/handed-file.ts';
import { freeName } from '../files/save-into.ts';
import type { Handler } from './handler.ts';
import { prove } from './sign-in/prove.ts';
import type { Services } from './services.ts';
import { summaryOf } from '../trail-words.ts';
import { toldEnglish } from '../../renderer/logic/texts/screens/told-english.ts';

/** Largest backup file that is brought in through the window, bytes. */
const largestBackup = 1024 ** 3;

/** The caseload was replaced: what is written from now on must not pass for what was written before. */
const renameLaptop = (services: Services): void => rmSync(laptopFile(services.folder), { force: true });

const nowIso = (services: Services): string => services.options.now().toISOString();

async function backupState(services: Services) {
  const caseload = services.need();
  const place = backupsFolder(services.folder);
  const second = services.secondPlace();
  const secondThere = second !== '' && existsSync(second);
  const secondNewest = second === '' ? null : newestIn(services.folder, second);
  return {
    place,
    backups: await caseload.withKey((identity) => listBackups(place, identity)),
    second,
    secondThere,
    secondNewest,
    secondOld: services.secondOld(),
  };
}

/** Older files that hold one of the clients, after these were erased. */
export async function stillHolding(
  services: Services,
  clientIds: readonly string[],
): Promise<{ stillIn: string[]; unknown: string[] }> {
  const caseload = services.need();
  const places = [services.secondPlace()].filter((place) => place !== '' && existsSync(place));
  const { holding, unknown } = await caseload.withKey((identity) =>
    whereClientsRemain({ folder: services.folder, identity, clientIds, places }),
  );
  const exported = await exportsHolding(services.folder, clientIds);
  return { stillIn: [...holding.map(({ file }) => file), ...exported], unknown: unknown.map(({ file }) => file) };
}

/** A file by its whole path; of a folder the newest backup. @throws Refusal not-a-backup */
function fileAt(place: string): { name: string; source: string } {
  if (!path.isAbsolute(place) || !existsSync(place)) throw new Refusal('not-a-backup');
  if (!statSync(place).isDirectory()) return { name: path.basename(place), source: place };
  const name = backupNames(place)[0]?.name;
  if (name === undefined) throw new Refusal('not-a-backup');
  return { name, source: path.join(place, name) };
}

/** A file that the system handed over stays where it is and is read there; else the therapist picks one. */
async function chosenFile(
  services: Services,
  handed: boolean | undefined,
  title: string,
  ending: string,
  place?: string,
): Promise<{ name: string; source: string | Uint8Array } | null> {
  if (place !== undefined) return fileAt(place.trim());
  if (handed) {
    const { handed: file } = services;
    services.handed = null;
    return file && { name: file.name, source: file.file };
  }
  const asked = { title, endings: [ending, 'tar'], maxBytes: largestBackup };
  const chosen = await services.options.port.chooseOpen(asked);
  return chosen && { name: chosen.name, source: await chosen.read() };
}

/** Names come from lists; anything else would reach outside the backup folder. */
function backupFile(services: Services, name: string): string {
  const place = backupsFolder(services.folder);
  if (!backupNames(place).some((b) => b.name === name)) throw new Refusal('not-a-backup');
  return path.join(place, name);
}

export const recordHandlers: { [N in keyof typeof recordRequests]: Handler<N> } = {
  'trail.list': (services, { clientId }) => {
    const words = services.told().trail;
    return services
      .need()
      .trail(clientId, 500)
      .map((row) => ({
        seq: row.seq,
        at: row.at,
        by: row.by,
        kind: row.kind,
        action: row.action,
        summary: summaryOf(row, words),
      }));
  },
  'trail.verify': (services) => {
    const { whole, entries } = services.need().verifyTrail();
    return { whole, entries };
  },
  'trail.fingerprint': (services) => ({ fingerprint: services.need().fingerprint() }),
  'trail.checkFingerprint': (services, { typed }) => {
    const caseload = services.need();
    const read = readFingerprint(typed);
    if (read === null) return { fits: 'unreadable', entries: 0 };
    const { entries } = read;
    if (entries > caseload.lastSeq()) return { fits: 'beyond', entries };
    return { fits: fits(read, caseload.trailHashAt(entries) ?? '') ? 'yes' : 'no', entries };
  },
  'records.check': async (services) => {
    const { file, trail } = await services.need().withKey((identity) => services.check(identity, 'check'));
    const sound = file === 'ok' && trail.whole;
    const found = sound
      ? `Every page of the file, every reference, every picture and all ${trail.entries} trail entries fit.`
      : trail.whole
        ? 'The file has damage.'
        : 'The trail does not fit at one entry.';
    return { sound, found };
  },
  'backup.state': backupState,
  'backup.now': async (services) => {
    const now = nowIso(services);
    const { folder, options } = services;
    const caseload = services.need();
    const second = services.secondPlace();
    const places = [backupsFolder(folder), ...(second && existsSync(second) ? [second] : [])];
    services.backingUp?.abort();
    const run = (services.backingUp = new AbortController());
    const { signal } = run;
    try {
      const made = [];
      for (const [n, to] of places.entries()) {
        const onProgress = (stage: string, done: number) => {
          // Writing is the first half of a place, reading back the second.
          const half = stage === 'checking' ? 0.5 + done / 2 : done / 2;
          options.emit({ kind: 'progress', task: stage, id: 'backup', done: (n + half) / places.length });
        };
        made.push(await caseload.withKey((identity) => makeBackup({ folder, identity, now, to, onProgress, signal })));
        if (to === second) noteSecond(folder, second, now);
      }
      return made[0]!;
    } finally {
      if (services.backingUp === run) services.backingUp = null;
    }
  },
  'backup.cancel': (services) => {
    services.backingUp?.abort();
    return {};
  },
  'backup.setSecond': async (services, { folder }) => {
    const place = folder.trim();
    if (place !== '') {
      if (!path.isAbsolute(place)) throw new Refusal('folder-not-writable');
      await mkdir(place, { recursive: true }).catch(() => {
        throw new Refusal('folder-not-writable');
      });
    }
    services.need().putSetting('secondPlace', place, services.doing());
    return backupState(services);
  },
  'backup.listWith': (services, { passphrase }) =>
    services.slowed(() => listBackupsWith(backupsFolder(services.folder), passphrase)),
  'backup.bring': async (services, { handed, place }) => {
    const title = services.told().trail.chooseBackup;
    const chosen = await chosenFile(services, handed, title, BACKUP_ENDING, place);
    if (!chosen) return { name: null };
    return { name: await bringBackup(backupsFolder(services.folder), chosen.name, chosen.source) };
  },
  'backup.restore': async (services, { name, passphrase }) => {
    const file = backupFile(services, name);
    // The open caseload is closed only when the backup was opened and compared.
    const beforeReplacing = () => services.lock('asked');
    return services.slowed(async () => {
      const done = await restoreBackup({
        folder: services.folder,
        file,
        passphrase,
        now: nowIso(services),
        beforeReplacing,
        onNewKey: services.reseal,
      });
      renameLaptop(services);
      return done;
    });
  },
  'backup.undoRestore': async (services, { keptAs }) => {
    if (!listAside(services.folder).includes(keptAs)) throw new Refusal('not-found');
    services.lock('asked');
    const done = await undoRestore(services.folder, keptAs, nowIso(services));
    renameLaptop(services);
    services.sealAtNextOpening();
    return done;
  },
  'client.erase': async (services, { clientId }) => {
    services.signedIn.refuseAssistant('assistant-erases');
    const caseload = services.need();
    caseload.erase(clientId, services.doing());
    return stillHolding(services, [clientId]);
  },
  'client.merge': (services, { from, into }) => services.need().merge(from, into, services.doing()),
  'records.salvage': async (services, { passphrase }) => {
    // A wrong passphrase leaves an open caseload open.
    await services.slowed(() => prove(services.folder, passphrase));
    services.lock('asked');
    const { name, counts, lastVisit, lost } = await services.slowed(() =>
      salvageCaseload({ folder: services.folder, passphrase, now: nowIso(services) }),
    );
    return { name, clients: counts['client'] ?? 0, lastVisit, lost };
  },
  'client.export': async (services, { clientId }) => {
    const caseload = services.need();
    const client = caseload.get('client', clientId);
    if (!client) throw new Refusal('not-found');
    const folder = exportsFolder(services.folder);
    await mkdir(folder, { recursive: true, mode: 0o700 });
    const name = freeName(clientFileName(client.code, services.today()), (each) => existsSync(path.join(folder, each)));
    const file = path.join(folder, name);
    await writeClientFile(caseload, clientId, file, nowIso(services));
    caseload.noteExport([clientId], toldEnglish.trail.exports.record, services.doing());
    return { file };
  },
  'caseload.export': async (services) => {
    const caseload = services.need();
    const ids = caseload.clients().map(({ id }) => id);
    const stamp = nowIso(services).replace(/\D/g, '').slice(0, 14);
    const target = path.join(exportsFolder(services.folder), `all-${stamp}-${randomUUID().slice(0, 4)}`);
    const written = await writeAllClients(caseload, target, nowIso(services), services.today());
    if (ids.length > 0) caseload.noteExport(ids, toldEnglish.trail.exports.record, services.doing());
    return written;
  },
  'client.import': async (services, { handed }) => {
    const caseload = services.need();
    const chosen = await chosenFile(services, handed, services.told().trail.chooseClientFile, CLIENT_ENDING);
    if (!chosen) return { clientId: null };
    return { clientId: await readClientFile(caseload, chosen.source, services.doing()) };
  },
};
