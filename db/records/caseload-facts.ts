/** Puts the records of an open file together as the one object that handlers use. */
import type { Caseload } from '../caseload.ts';
import { CaseloadError } from '../codes.ts';
import { checkFile, closeFile, type Db } from '../connection.ts';
import { guarded } from '../errors.ts';
import { fingerprintOf } from '../fingerprint.ts';
import type { FolderLock } from '../folder-lock.ts';
import { openHandover } from '../handover/handover.ts';
import { versionOf } from '../migrate.ts';
import { schemaDifferences } from '../schema-check.ts';
import { putBlob, readBlob } from './blobs.ts';
import { readClientRecord } from './client-record.ts';
import { clientByCode, listClients, searchClients } from './clients.ts';
import { countRows } from './counts.ts';
import { eraseClients } from './erase.ts';
import { noteExport } from './exports.ts';
import { dropPieces, keepPiece, piecesOf } from './pen-pieces.ts';
import { mergeClients } from './merge.ts';
import { readSetting, writeSetting } from './settings.ts';
import { getFact, together } from './store.ts';
import { entriesFor, hashAt, lastChange, lastSeq, verifyTrail } from './trail.ts';
import { textsMetBy, textsSince } from './texts-since.ts';
import { exportClient, importClient, readExport } from './transfer.ts';
import { keepWords, wordsKept } from './unkept-words.ts';
import { canUndo, redoLast, undoLast } from './undo.ts';

export interface OpenFile {
  db: Db;
  folder: string;
  /** Ours from here on: zeroed when the caseload is closed. */
  identity: Buffer;
  lock: FolderLock;
  logLost: boolean;
}

/** Entries of the trail shown for one client unless more are asked for. */
const TRAIL_LIMIT = 500;

export function openRecords({ db, folder, identity, lock, logLost }: OpenFile): Caseload {
  // Undo goes back to the opening of the caseload, no further: what was closed was meant.
  const since = lastSeq(db);
  const open = <T>(work: () => T): T => {
    if (!db.open) throw new CaseloadError('locked');
    return guarded(work);
  };
  const recordIfAny = (clientId: string) =>
    getFact(db, 'client', clientId) === null ? null : readClientRecord(db, clientId);

  const handing = openHandover(db, folder);

  return {
    folder,
    logLost,
    schemaVersion: versionOf(db),
    clients: () => open(() => listClients(db)),
    search: (typed) => open(() => searchClients(db, typed)),
    clientByCode: (code) => open(() => clientByCode(db, code)),
    lastChange: (clientId) => open(() => lastChange(db, clientId)),
    record: (clientId) => open(() => readClientRecord(db, clientId)),
    textsSince: (at) => open(() => textsSince(db, at)),
    textsMetBy: (initials) => open(() => textsMetBy(db, initials)),
    get: (kind, id) => open(() => getFact(db, kind, id)),
    put: (kind, fact, doing) => open(() => together(db, doing, (write) => write.put(kind, fact))),
    remove: (kind, id, doing) => open(() => together(db, doing, (write) => write.remove(kind, id))),
    together: (doing, act) => open(() => together(db, doing, act)),
    putBlob: (clientId, mime, bytes, doing) => open(() => putBlob(db, clientId, mime, bytes, doing)),
    blob: (id) => open(() => readBlob(db, id)),
    keepInkPiece: (recordingId, seq, bytes) => open(() => keepPiece(db, recordingId, seq, bytes)),
    inkSoFar: (recordingId) => open(() => piecesOf(db, recordingId)),
    dropInkPieces: (recordingId) => open(() => dropPieces(db, recordingId)),
    keepWords: (words, doing) => open(() => keepWords(db, words, doing)),
    wordsKept: (place) => open(() => wordsKept(db, place)),
    setting: (name) => open(() => readSetting(db, name)),
    putSetting: (name, value, doing) => open(() => writeSetting(db, name, value, doing)),
    removeSetting: (name, doing) => open(() => writeSetting(db, name, null, doing)),
    undo: (clientId, doing) =>
      open(() => {
        undoLast(db, clientId, since, doing);
        return recordIfAny(clientId);
      }),
    redo: (clientId, doing) =>
      open(() => {
        redoLast(db, clientId, since, doing);
        return recordIfAny(clientId);
      }),
    canUndo: (clientId) => open(() => canUndo(db, clientId, since)),
    trail: (clientId, limit = TRAIL_LIMIT) => open(() => entriesFor(db, clientId, limit)),
    verifyTrail: () => open(() => verifyTrail(db)),
    noteExport: (clientIds, what, doing) => open(() => noteExport(db, clientIds, what, doing)),
    archive: (clientId, on, doing) =>
      open(() => {
        const client = getFact(db, 'client', clientId);
        if (client === null) throw new CaseloadError('not-found', 'client');
        return together(db, doing, (write) => write.put('client', { ...client, archivedOn: on }));
      }),
    erase: (clientIds, doing) => open(() => eraseClients(db, [clientIds].flat(), doing)),
    merge: (from, into, doing) =>
      open(() => {
        mergeClients(db, from, into, doing);
        return readClientRecord(db, into);
      }),
    exportClient: (clientId, at) => open(() => exportClient(db, clientId, at)),
    importClient: (exported, bytesOf, doing) =>
      open(() => readClientRecord(db, importClient(db, readExport(exported), bytesOf, doing))),
    handover: {
      laptop: (doing) => open(() => handing.laptop(doing)),
      handOver: (clientIds, doing) => open(() => handing.handOver(clientIds, doing)),
      expect: (handed, doing) => open(() => handing.expect(handed, doing)),
      takeIn: (handed, bytesOf, doing) => open(() => handing.takeIn(handed, bytesOf, doing)),
      bothChanged: (doing) => open(() => handing.bothChanged(doing)),
      settle: (id, take, doing) => open(() => handing.settle(id, take, doing)),
      twins: () => open(() => handing.twins()),
    },
    counts: () => open(() => countRows(db)),
    lastSeq: () => open(() => lastSeq(db)),
    trailHashAt: (seq) => open(() => hashAt(db, seq)),
    fingerprint: () => open(() => fingerprintOf(lastSeq(db), hashAt(db, lastSeq(db)) ?? '')),
    schemaDifferences: () => open(() => schemaDifferences(db)),
    quickCheck: () => open(() => checkFile(db, false)),
    withKey: (use) =>
      open(() => {
        const copy = Buffer.from(identity);
        try {
          return use(copy);
        } finally {
          copy.fill(0);
        }
      }),
    close() {
      identity.fill(0);
      try {
        closeFile(db);
      } finally {
        lock.release();
      }
    },
  };
}
