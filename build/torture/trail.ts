/** Tampers with closed caseloads as somebody with the disk, or with the key, could: the next opening must tell. */
import { cpSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { openFile } from '../../db/connection.ts';
import { caseloadFile, companions, keyFile, keyFileCopy } from '../../db/files.ts';
import { openCaseload, type Caseload } from '../../db/index.ts';
import { TrailWatch } from '../../electron/files/trail-watch.ts';
import { client } from '../../tests/db/plain-facts.ts';
import { rewriteTrail } from '../../tests/db/rewrite-trail.ts';
import { freshCaseload, NOW, PASSPHRASE } from './children.ts';
import { pick, seeded } from './random.ts';

const doing = { at: NOW, by: 'TY' };

export interface TrailReport {
  caseloads: number;
  /** What was done, how often, and how often it was told. */
  told: Record<string, string>;
  /** Openings after nothing but work: none may tell anything. */
  quiet: number;
  faults: string[];
}

interface Case {
  folder: string;
  state: string;
  identity: Buffer;
  /** The state of an earlier closing. */
  earlier: string;
  other: string;
}

const isCaseload = (name: string): boolean => name.startsWith('caseload.');
const copyOf = (folder: string): string => {
  const copy = mkdtempSync(path.join(tmpdir(), 'fairhand-trail-'));
  for (const name of readdirSync(folder).filter(isCaseload)) cpSync(path.join(folder, name), path.join(copy, name));
  return copy;
};
const change = ({ folder, identity }: Case, sql: string): void => {
  const db = openFile(caseloadFile(folder), identity);
  db.exec(sql);
  db.close();
};

const WAYS: Record<string, (one: Case) => void> = {
  'history rewritten, triggers put back': ({ folder, identity }) => rewriteTrail(folder, identity),
  'everything beside the caseload set back': ({ folder, earlier }) => {
    for (const name of readdirSync(folder).filter(isCaseload)) rmSync(path.join(folder, name));
    cpSync(earlier, folder, { recursive: true });
  },
  'the file alone set back, the note outside deleted': ({ folder, earlier, state }) => {
    for (const file of companions(caseloadFile(folder))) rmSync(file, { force: true });
    cpSync(caseloadFile(earlier), caseloadFile(folder));
    rmSync(state, { recursive: true });
  },
  'another caseload with its key': ({ folder, other }) => {
    for (const file of [caseloadFile, keyFile, keyFileCopy]) cpSync(file(other), file(folder));
  },
  'the note beside it deleted': ({ folder }) => rmSync(path.join(folder, 'caseload.seal')),
  'a trigger removed': (one) => change(one, 'DROP TRIGGER trail_never_changes'),
  'a foreign trigger': (one) => change(one, 'CREATE TRIGGER spy AFTER INSERT ON visit BEGIN DELETE FROM setting; END'),
  'a foreign table': (one) => change(one, 'CREATE TABLE stash (a TEXT)'),
  'an index removed': (one) => change(one, 'DROP INDEX visit_plan_visit'),
};

async function opened(folder: string): Promise<Caseload> {
  const answer = await openCaseload({ folder, passphrase: PASSPHRASE, now: NOW });
  if (!answer.ok) throw new Error(answer.code);
  return answer.caseload;
}

export async function trailTest(caseloads: number, seed: number): Promise<TrailReport> {
  const random = seeded(seed);
  const report: TrailReport = { caseloads, told: {}, quiet: 0, faults: [] };
  const counts = new Map(Object.keys(WAYS).map((way) => [way, { done: 0, told: 0 }]));
  const stranger = await freshCaseload();
  stranger.put('client', client(), doing);
  stranger.close();
  for (let n = 0; n < caseloads; n++) {
    const caseload = await freshCaseload();
    const { folder } = caseload;
    const state = mkdtempSync(path.join(tmpdir(), 'fairhand-state-'));
    const identity = caseload.withKey((key) => Buffer.from(key));
    const work = (open: Caseload) => {
      const times = 1 + Math.floor(random() * 20);
      for (let each = 0; each < times; each++)
        open.put('client', client({ code: `C-${n}-${random()}`.slice(0, 18) }), doing);
    };
    let earlier = '';
    try {
      const close = (open: Caseload, watch: TrailWatch) => {
        watch.seal(open, NOW);
        open.close();
      };
      work(caseload);
      close(caseload, new TrailWatch(state));
      earlier = copyOf(folder);
      for (let times = 0; times < 2; times++) {
        const open = await opened(folder);
        const watch = new TrailWatch(state);
        const strange = watch.strange(open, true);
        if (strange === 'nothing') report.quiet++;
        else report.faults.push(`after nothing but work: ${strange}`);
        work(open);
        close(open, watch);
      }
      const way = pick(random, Object.keys(WAYS));
      WAYS[way]!({ folder, state, identity, earlier, other: stranger.folder });
      const after = await opened(folder);
      const count = counts.get(way)!;
      count.done++;
      if (new TrailWatch(state).strange(after, true) === 'nothing') report.faults.push(`not told: ${way}`);
      else count.told++;
      after.close();
    } finally {
      for (const each of [folder, state, earlier]) if (each) rmSync(each, { recursive: true, force: true });
    }
  }
  rmSync(stranger.folder, { recursive: true, force: true });
  for (const [way, { done, told }] of counts) report.told[way] = `${told} of ${done}`;
  return report;
}
