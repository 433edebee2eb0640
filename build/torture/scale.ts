/** Opening, listing and searching 5,000 clients with 50,000 visits: the encrypted file against the same one in plain. */
import Database from 'better-sqlite3';
import { rmSync } from 'node:fs';
import path from 'node:path';
import { openFile, pragmas, type Db } from '../../db/connection.ts';
import { dump, load } from '../../db/dump.ts';
import { caseloadFile, syncFile } from '../../db/files.ts';
import { readMigrations } from '../../db/migrate.ts';
import { readClientRecord } from '../../db/records/client-record.ts';
import { listClients, searchClients } from '../../db/records/clients.ts';
import { freshCaseload } from './children.ts';
import { seeded } from './random.ts';
import { fillCaseload } from './scale-caseload.ts';

interface Timing {
  encryptedMs: number;
  plainMs: number;
  ratio: number;
}

export interface ScaleReport {
  clients: number;
  visits: number;
  megabytes: number;
  open: Timing;
  list: Timing;
  search: Timing;
  record: Timing;
  faults: string[];
}

/** Runs whose times count, and runs before them that warm up file and statement caches. */
const RUNS = 15;
const WARM_UP = 3;

const median = (times: number[]): number => times.sort((x, y) => x - y)[Math.floor(times.length / 2)]!;

/** Medians of two works in turn, so that what else the machine does falls on both, ms. */
function inTurn(encrypted: () => void, plain: () => void): Timing {
  const times: [number[], number[]] = [[], []];
  for (let n = 0; n < WARM_UP + RUNS; n++) {
    for (const [index, work] of [encrypted, plain].entries()) {
      const began = performance.now();
      work();
      if (n >= WARM_UP) times[index]!.push(performance.now() - began);
    }
  }
  const [a, b] = times.map(median) as [number, number];
  return { encryptedMs: round(a), plainMs: round(b), ratio: round(a / b) };
}

const round = (value: number): number => Math.round(value * 100) / 100;
function openPlain(file: string): Db {
  const db = new Database(file);
  for (const [name, set] of pragmas) db.pragma(`${name} = ${set}`);
  db.prepare('SELECT count(*) FROM sqlite_schema').get();
  return db;
}

export async function scaleTest(clients: number, visitsEach: number, seed: number): Promise<ScaleReport> {
  const random = seeded(seed);
  const caseload = await freshCaseload();
  const { folder } = caseload;
  const identity = caseload.withKey((key) => Buffer.from(key));
  const some = fillCaseload(caseload, clients, visitsEach, random).at(-1)!;
  caseload.close();

  const plainFile = path.join(folder, 'plain.db');
  const encrypted = openFile(caseloadFile(folder), identity);
  const plain = openPlain(plainFile);
  for (const { sql } of readMigrations()) plain.exec(sql);
  const waiting = new Map();
  for (const entry of dump(encrypted)) load(plain, entry, waiting);
  encrypted.close();
  plain.close();

  // What was just written must be on the disk, or its writing out falls into the first times.
  for (const file of [caseloadFile(folder), plainFile]) syncFile(file);
  const open = { encrypted: () => openFile(caseloadFile(folder), identity), plain: () => openPlain(plainFile) };
  const opening = (each: () => Db) => () => {
    const db = each();
    db.prepare('SELECT code FROM client LIMIT 1').get();
    db.close();
  };
  const opened = inTurn(opening(open.encrypted), opening(open.plain));
  const [a, b] = [open.encrypted(), open.plain()];
  const pair = (work: (db: Db) => void): Timing =>
    inTurn(
      () => work(a),
      () => work(b),
    );
  const report: ScaleReport = {
    clients,
    visits: clients * visitsEach,
    megabytes: round(((a.pragma('page_count', { simple: true }) as number) * 4096) / 1e6),
    open: opened,
    list: pair((db) => void listClients(db)),
    search: pair((db) => void searchClients(db, 'celia gallo')),
    record: pair((db) => void readClientRecord(db, some)),
    faults: [],
  };
  if (searchClients(a, 'celia gallo').length !== searchClients(b, 'celia gallo').length) {
    report.faults.push('the two files answer differently');
  }
  a.close();
  b.close();
  rmSync(folder, { recursive: true, force: true });
  return report;
}
