/**
 * 5,000 clients with pictures: whether opening, the first screen, a search, the hour's backup and a hand-over cost what
 * was done since, and not what lies there. Each figure is a ratio to the same caseload before it had pictures, or to an
 * empty one. The pictures are small stand-ins where the disk is short: what grows with their bytes is told by the gigabyte.
 */
import { randomBytes } from 'node:crypto';
import { readdirSync, rmSync, statfsSync } from 'node:fs';
import { openCaseload, type Caseload } from '../../db/index.ts';
import { makeBackup } from '../../electron/files/backup/backup.ts';
import { backupsFolder } from '../../electron/files/backup/backup-list.ts';
import { picturesFolder } from '../../electron/files/backup/picture-store.ts';
import { median } from '../../renderer/statistics/order-statistics.ts';
import { freshCaseload, NOW, PASSPHRASE } from './children.ts';
import { seeded } from './random.ts';
import { fillCaseload, visitOf } from './scale-caseload.ts';

const doing = { at: NOW, by: 'TY' };
const RUNS = 5;
/** What a scanned page of A4 has, about, bytes. */
const PICTURE = 1024 * 1024;
/** A month's clients of one therapist. */
const HANDED = 100;

/** What is found is told at once: a long run that is cut off leaves its figures. */
const tell = (what: string, ms: number): void => console.error(`${what}: ${Math.round(ms)} ms`);

const round = (value: number): number => Math.round(value * 100) / 100;

async function timed<T>(work: () => T | Promise<T>): Promise<{ ms: number; value: T }> {
  const began = performance.now();
  const value = await work();
  return { ms: performance.now() - began, value };
}

async function medianTime(work: () => unknown): Promise<number> {
  const times: number[] = [];
  for (let n = 0; n < RUNS; n++) times.push((await timed(work)).ms);
  return median(times)!;
}

/** The list of clients and the records that the first screenful of the worklist looks at. */
const firstScreen = (caseload: Caseload) =>
  caseload
    .clients()
    .slice(0, 100)
    .map(({ id }) => caseload.record(id));

async function looks(folder: string, identity: Uint8Array) {
  const open = async (): Promise<Caseload> => {
    const opened = await openCaseload({ folder, identity: Buffer.from(identity), now: NOW });
    if (!opened.ok) throw new Error(opened.code);
    return opened.caseload;
  };
  const openMs = await medianTime(async () => (await open()).close());
  const caseload = await open();
  const screenMs = await medianTime(() => firstScreen(caseload));
  const searchMs = await medianTime(() => caseload.search('celia gallo'));
  caseload.close();
  tell('opening', openMs);
  tell('first screen', screenMs);
  tell('search', searchMs);
  return { openMs, screenMs, searchMs };
}

let hour = 0;
async function backup(caseload: Caseload, reason: 'hour' | 'hand') {
  const now = new Date(Date.parse(NOW) + ++hour * 3_600_000).toISOString();
  const { ms, value } = await timed(() =>
    caseload.withKey((identity) => makeBackup({ folder: caseload.folder, identity, now, reason })),
  );
  tell(`backup (${reason})`, ms);
  return { ms, bytes: value.bytes };
}

const stored = (folder: string): number => readdirSync(picturesFolder(backupsFolder(folder))).length;

async function handOver(from: Caseload, ids: readonly string[], into: Caseload): Promise<number> {
  const handed = from.handover.handOver(ids, doing);
  const { ms } = await timed(() => into.handover.takeIn(handed, (id) => from.blob(id)?.data ?? null, doing));
  tell('hand-over', ms);
  return ms;
}

export async function picturesAtScale(clients: number, visitsEach: number, gigabytes: number, seed: number) {
  const faults: string[] = [];
  let caseload = await freshCaseload();
  const { folder } = caseload;
  const free = statfsSync(folder);
  const room = (copies: number): number =>
    Math.floor(Math.min(gigabytes * 2 ** 30, (free.bavail * free.bsize) / copies) / PICTURE);
  // The file, its log while much is written, and the pictures of its backups.
  const pictures = room(2.5);
  // A backup by hand and what is read back of it are as large again: made of as many as there is room for.
  const carried = room(5);
  const ids = fillCaseload(caseload, clients, visitsEach, seeded(seed));
  const identity = caseload.withKey((key) => Buffer.from(key));
  await backup(caseload, 'hour');
  const again = () => caseload.put('visit', visitOf(ids[0]!, '2026-03-01'), doing);
  again();
  const plain = await backup(caseload, 'hour');
  caseload.close();
  const before = await looks(folder, identity);

  const opened = await openCaseload({ folder, passphrase: PASSPHRASE, now: NOW });
  if (!opened.ok) throw new Error(opened.code);
  caseload = opened.caseload;
  const fill = (from: number, to: number): void => {
    for (let n = from; n < to; n++) caseload.putBlob(ids[n % clients]!, 'image/png', randomBytes(PICTURE), doing);
  };
  fill(0, carried);
  const byHand = await backup(caseload, 'hand');
  rmSync(backupsFolder(folder), { recursive: true, force: true });
  fill(carried, pictures);
  const first = await backup(caseload, 'hour');
  if (stored(folder) !== pictures) faults.push(`${stored(folder)} pictures stored, not ${pictures}`);
  again();
  caseload.putBlob(ids[0]!, 'image/png', randomBytes(PICTURE), doing);
  const later = await backup(caseload, 'hour');
  const written = stored(folder) - pictures;
  if (written !== 1) faults.push(`${written} pictures written for one that is new`);
  const hourly = readdirSync(backupsFolder(folder)).filter((name) => name.includes('-hour')).length;

  const [empty, full] = [await freshCaseload(), await freshCaseload()];
  fillCaseload(full, clients, visitsEach, seeded(seed + 1));
  const some = ids.slice(-HANDED);
  const intoEmpty = await handOver(caseload, some, empty);
  const intoFull = await handOver(caseload, some, full);
  const merged = full.clients().length;
  if (merged !== clients + HANDED) faults.push(`${merged} clients after the hand-over`);
  for (const one of [empty, full]) {
    one.close();
    rmSync(one.folder, { recursive: true, force: true });
  }
  caseload.close();
  const after = await looks(folder, identity);
  rmSync(folder, { recursive: true, force: true });
  const gbOf = (count: number): number => (count * PICTURE) / 2 ** 30;
  const gb = gbOf(pictures);
  return {
    clients,
    visits: clients * visitsEach,
    gigabytes: round(gb),
    asked: gigabytes,
    open: { ms: round(after.openMs), ratio: round(after.openMs / before.openMs) },
    firstScreen: { ms: round(after.screenMs), ratio: round(after.screenMs / before.screenMs) },
    search: { ms: round(after.searchMs), ratio: round(after.searchMs / before.searchMs) },
    hoursBackup: { ms: round(later.ms), ratio: round(later.ms / plain.ms), picturesWritten: written, backups: hourly },
    firstBackup: { secondsPerGigabyte: round((first.ms - plain.ms) / 1000 / gb) },
    byHand: {
      gigabytes: round(gbOf(carried)),
      secondsPerGigabyte: round((byHand.ms - plain.ms) / 1000 / gbOf(carried)),
    },
    handOver: { clients: HANDED, ms: round(intoFull), ratio: round(intoFull / intoEmpty) },
    faults,
  };
}
