/** Opening, listing and searching 5,000 clients with 50,000 visits: the encrypted file against the same one in plain. */
import Database from 'better-sqlite3';
import { randomUUID } from 'node:crypto';
import { rmSync } from 'node:fs';
import path from 'node:path';
import { openFile, pragmas, type Db } from '../../db/connection.ts';
import { dump, load } from '../../db/dump.ts';
import { caseloadFile } from '../../db/files.ts';
import { readMigrations } from '../../db/migrate.ts';
import { readClientRecord } from '../../db/records/client-record.ts';
import { listClients, searchClients } from '../../db/records/clients.ts';
import { freshCaseload, NOW } from './children.ts';
import { pick, seeded } from './random.ts';

const FIRST = ['Ada', 'Bruno', 'Célia', 'Dorit', 'Emre', 'Fiona', 'Goran', 'Hana', 'Iris', 'Jonas'];
const LAST = ['Abel', 'Brook', 'Cerny', 'Dahl', 'Eder', 'Frost', 'Gallo', 'Hart', 'Ilves', 'Jung'];

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

/** Median of several runs, ms. */
function median(runs: number, work: () => void): number {
  const times: number[] = [];
  for (let n = 0; n < runs; n++) {
    const began = performance.now();
    work();
    times.push(performance.now() - began);
  }
  return times.sort((a, b) => a - b)[Math.floor(runs / 2)]!;
}

const round = (value: number): number => Math.round(value * 100) / 100;
const timing = (encrypted: number, plain: number): Timing => ({
  encryptedMs: round(encrypted),
  plainMs: round(plain),
  ratio: round(encrypted / plain),
});

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
  const empty = { referrer: '', readers: '', wants: '', interests: '', callName: '', callNumber: '', note: '' };
  const set = {
    language: 'en',
    largePrint: '14',
    familyConsent: false,
    familyConsentOn: null,
    archivedOn: null,
  } as const;
  const words = { nextVisit: '', told: '', skilled: '', response: '', taughtBack: '', plan: '' };
  let some = '';
  for (let n = 0; n < clients; n += 50) {
    caseload.together({ at: NOW, by: 'TY' }, (write) => {
      for (let m = n; m < Math.min(clients, n + 50); m++) {
        const id = randomUUID();
        some = id;
        const name = `${pick(random, FIRST)} ${pick(random, LAST)}-${pick(random, LAST)}`;
        const lists = { diagnoses: [], precautions: [], medicines: [] };
        const who = { code: `C${m}`, name, birthYear: 1950, handBefore: null, handNow: null };
        write.put('client', { id, ...who, ...empty, ...lists, ...set });
        for (let v = 0; v < visitsEach; v++) {
          const date = new Date(Date.UTC(2025, 0, 1 + Math.floor(random() * 500))).toISOString().slice(0, 10);
          write.put('visit', { id: randomUUID(), clientId: id, date, kind: 'treatment', minutes: 45, ...words });
        }
      }
    });
  }
  caseload.close();

  const plainFile = path.join(folder, 'plain.db');
  const encrypted = openFile(caseloadFile(folder), identity);
  const plain = openPlain(plainFile);
  for (const { sql } of readMigrations()) plain.exec(sql);
  const waiting = new Map();
  for (const entry of dump(encrypted)) load(plain, entry, waiting);
  encrypted.close();
  plain.close();

  const openings = {
    encrypted: () => openFile(caseloadFile(folder), identity),
    plain: () => openPlain(plainFile),
  };
  const opening = (open: () => Db): number =>
    median(9, () => {
      const db = open();
      db.prepare('SELECT code FROM client LIMIT 1').get();
      db.close();
    });
  const [a, b] = [openings.encrypted(), openings.plain()];
  const pair = (work: (db: Db) => void): Timing =>
    timing(
      median(9, () => work(a)),
      median(9, () => work(b)),
    );
  const report: ScaleReport = {
    clients,
    visits: clients * visitsEach,
    megabytes: round(((a.pragma('page_count', { simple: true }) as number) * 4096) / 1e6),
    open: timing(opening(openings.encrypted), opening(openings.plain)),
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
