/**
 * Kills the adding and the removing of a person before each of its steps on the disk (strace, Linux): whoever was there
 * gets in, whoever is not on the list does not, the records are whole, and the change can be made again.
 */
import { spawnSync } from 'node:child_process';
import { cpSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import {
  addSignIn,
  type Caseload,
  createCaseload,
  openCaseload,
  peopleIn,
  type Secret,
  settleSignIns,
  signInsIn,
} from '../../../db/index.ts';
import { PEOPLE, type Person } from '../../../db/types/clinic/people.ts';
import { fill } from '../backups.ts';
import { NOW, PASSPHRASE } from '../children.ts';

export const HERS = 'a second passphrase that protects nothing';
const person = (n: number, initials: string): Person => ({
  id: `aaaaaaaa-0000-4000-8000-00000000000${n}`,
  name: '',
  initials,
  role: 'therapist',
  credentials: '',
  removedOn: null,
});
export const firstPerson = person(1, 'MK');
export const secondPerson = person(2, 'QM');

/** As the handlers do it: the wraps, the list, then what was before goes out of use. */
export async function addSecondPerson(caseload: Caseload): Promise<void> {
  const mine = { ...firstPerson, passphrase: PASSPHRASE };
  await addSignIn(caseload, { ...secondPerson, passphrase: HERS }, mine, { now: NOW, workFactor: 4 });
  caseload.putSetting(PEOPLE, [firstPerson, secondPerson], { at: NOW, by: firstPerson.initials });
  settleSignIns(caseload.folder);
}

const STEPS = 'rename,unlink,fsync,fdatasync,ftruncate';
const MOST = 500;

export interface PeopleKillReport {
  kills: number;
  /** Kills after which the change counted. */
  counted: number;
  faults: string[];
}

/** @param every kill before each of so many steps only, 1 = all. Null where strace is not here or may not trace. */
export async function peopleKilledAtEachStep(every = 1): Promise<PeopleKillReport | null> {
  const report: PeopleKillReport = { kills: 0, counted: 0, faults: [] };
  const base = mkdtempSync(path.join(tmpdir(), 'fairhand-people-steps-'));
  try {
    const start = path.join(base, 'add-from');
    const made = await createCaseload({ folder: start, passphrase: PASSPHRASE, now: NOW, workFactor: 4 });
    if (!made.ok) throw new Error(made.code);
    const id = fill(made.caseload);
    made.caseload.close();
    const sheet = made.recoveryKey;
    for (const change of ['add', 'remove'] as const) {
      const from = path.join(base, `${change}-from`);
      for (let n = 1; n < MOST && report.faults.length === 0; n += every) {
        const folder = path.join(base, `${change}-${n}`);
        cpSync(from, folder, { recursive: true });
        const killed = runKilled(folder, change, n);
        if (killed === null || (!killed && n === 1)) return null;
        if (killed) report.kills++;
        const counts = await look(report, `${change} ${n}`, { folder, id, change, sheet });
        if (counts && killed) report.counted++;
        if (!killed && !counts) report.faults.push(`${change} was not made`);
        // What was cut off can be made again.
        if (killed && runKilled(folder, change, MOST * 10) !== false && !(change === 'add' && counts))
          report.faults.push(`${change} ${n}: it cannot be made again`);
        if (!killed && change === 'add') cpSync(folder, path.join(base, 'remove-from'), { recursive: true });
        rmSync(folder, { recursive: true, force: true });
        if (!killed) break;
      }
    }
  } finally {
    rmSync(base, { recursive: true, force: true });
  }
  return report;
}

/** Whether it was killed; null where strace is not here. */
function runKilled(folder: string, change: string, step: number): boolean | null {
  const changer = fileURLToPath(new URL('people-changer.ts', import.meta.url));
  const node = [process.execPath, '--no-warnings', changer, folder, change];
  const inject = `inject=${STEPS}:signal=SIGKILL:when=${step}`;
  const { status, error } = spawnSync('strace', ['-f', '-qq', '-o', '/dev/null', '-e', inject, ...node]);
  return error ? null : status !== 0;
}

interface After {
  folder: string;
  id: string;
  change: 'add' | 'remove';
  sheet: string;
}

/** Whether the change counts; what does not fit goes into the report. */
async function look(report: PeopleKillReport, step: string, { folder, id, change, sheet }: After): Promise<boolean> {
  const fault = (what: string) => void report.faults.push(`${step}: ${what}`);
  const opens = async (secret: Secret): Promise<Person[] | null | false> => {
    const tried = await openCaseload({ folder, now: NOW, ...secret });
    if (!tried.ok) {
      if (tried.code !== 'wrong-passphrase') fault(tried.code);
      return false;
    }
    const { caseload } = tried;
    if (caseload.record(id).client.name !== 'Kept Safe' || caseload.counts()['blob'] !== 6) fault('something is gone');
    if (!caseload.verifyTrail().whole) fault('the trail broke');
    const people = peopleIn(caseload.setting(PEOPLE));
    caseload.close();
    return people;
  };
  // Before anything settles the key file.
  const hers = await opens({ passphrase: HERS, initials: secondPerson.initials });
  const old = await opens({ recoveryKey: sheet });
  const people = await opens({ passphrase: PASSPHRASE, initials: firstPerson.initials });
  if (people === false) fault('the first person is shut out');
  const second = (people || []).find((one) => one.id === secondPerson.id);
  const listed = second !== undefined && second.removedOn === null;
  if ((hers !== false) !== listed) fault(listed ? 'the second person is shut out' : 'the second person gets in');
  if (change === 'add' && (old === false) !== listed) fault('the sheet of before counts wrongly');
  if (change === 'add') return listed;
  // The wrap of a removed person tells that the key is still to be changed.
  return !listed && !signInsIn(folder).includes(secondPerson.id);
}
