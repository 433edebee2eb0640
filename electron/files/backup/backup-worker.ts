/** The worker behind backups: encrypting and reading back takes seconds and must not stop the window. */
import path from 'node:path';
import { parentPort, workerData } from 'node:worker_threads';
import { checkFile, openReader } from '../../../db/connection.ts';
import { codeOf } from '../../../db/errors.ts';
import { caseloadFile } from '../../../db/files.ts';
import { countBadBlobs } from '../../../db/records/blobs.ts';
import { holdsClient } from '../../../db/records/erase.ts';
import { verifyTrail } from '../../../db/records/trail.ts';
import { salvage } from '../../../db/salvage.ts';
import { Refusal } from '../../contract/envelope.ts';
import { openContainer, readManifest } from './container.ts';
import type { BackupAnswer, BackupJob } from './jobs.ts';
import { picturesFolder } from './picture-store.ts';
import { unpack } from './unpack.ts';
import { writeBackup } from './write.ts';

const lent = workerData as BackupJob;
const job: BackupJob = { ...lent, identity: Buffer.from(lent.identity) };

/** @throws Refusal when the job was cancelled */
function goOn(): void {
  if (job.stop && Atomics.load(job.stop, 0) === 1) throw new Refusal('cancelled');
}

/** Twenty steps are enough for a bar; every block would flood the main thread. */
let told = -1;
function progress(stage: string, done: number): void {
  goOn();
  const step = Math.floor(done * 20) + (stage === 'checking' ? 100 : 0);
  if (step === told) return;
  told = step;
  parentPort?.postMessage({ progress: { stage, done } });
}

/** 'ok', or what is wrong with pages, indexes, references or pictures. */
function checkAll(db: ReturnType<typeof openReader>): string {
  const file = checkFile(db, true);
  if (file !== 'ok') return file;
  const bad = countBadBlobs(db);
  return bad === 0 ? 'ok' : `pictures that do not fit their checksum: ${bad}`;
}

/** Null when this key does not open the file. */
function holds(file: string, clientIds: readonly string[]): boolean | null {
  try {
    const db = openReader(file, job.identity);
    try {
      return clientIds.some((id) => holdsClient(db, id));
    } finally {
      db.close();
    }
  } catch {
    return null;
  }
}

async function run(): Promise<BackupAnswer> {
  goOn();
  switch (job.kind) {
    case 'write':
      return { kind: 'write', manifest: await writeBackup(job, progress) };
    case 'unpack': {
      const container = await openContainer(job.file);
      const pictures = picturesFolder(path.dirname(job.file));
      const manifest = await unpack({ container, ...job, pictures }, (done) => progress('checking', done));
      return { kind: 'unpack', manifest };
    }
    case 'manifests': {
      const manifests = [];
      for (const file of job.files) {
        try {
          manifests.push(await readManifest(await openContainer(file), job.identity));
        } catch (error) {
          if (!(error instanceof Refusal)) throw error;
          manifests.push(null);
        }
      }
      return { kind: 'manifests', manifests };
    }
    case 'salvage':
      return { kind: 'salvage', salvaged: salvage(job) };
    case 'holding':
      return { kind: 'holding', holds: job.files.map((file) => holds(file, job.clientIds)) };
    case 'check': {
      const db = openReader(caseloadFile(job.folder), job.identity);
      try {
        // One moment of the file: what is typed meanwhile must not look like damage.
        return db.transaction(() => ({
          kind: 'check' as const,
          file: job.what === 'start' ? checkFile(db, false) : checkAll(db),
          trail: verifyTrail(db),
        }))();
      } finally {
        db.close();
      }
    }
  }
}

try {
  const answer = await run().finally(() => job.identity.fill(0));
  parentPort?.postMessage({ answer });
} catch (error) {
  const failed = error instanceof Refusal ? error.code : codeOf(error);
  parentPort?.postMessage({ failed, words: error instanceof Error ? error.message : '' });
}
