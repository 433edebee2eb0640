/** Every kind of save on a disk that is full, and on one that takes nothing any more: a sentence, and nothing is lost. */
import { execFileSync } from 'node:child_process';
import { closeSync, mkdirSync, openSync, readFileSync, rmSync, writeFileSync, writeSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { createCaseload } from '../../db/index.ts';
import type { RequestName } from '../../electron/contract/index.ts';
import type { messages } from '../../electron/contract/messages.ts';
import { backupNames, backupsFolder } from '../../electron/files/backup/backup-list.ts';
import { dispatch } from '../../electron/handlers/dispatch.ts';
import { Services } from '../../electron/handlers/services.ts';
import { client, doing, newFolder, NOW, PASSPHRASE, QUICK, visit } from '../db/support.ts';

type Answer = { ok: boolean; code?: keyof typeof messages; value?: Record<string, string> };

interface Disk {
  folder: string;
  run(...args: string[]): void;
}

/** A disk of 8 MB in memory; null where this user may not mount one. */
function smallDisk(): Disk | null {
  const folder = path.join(newFolder(), 'disk');
  mkdirSync(folder);
  const run = (...args: string[]) => void execFileSync(args[0]!, args.slice(1), { stdio: 'ignore' });
  try {
    run('mount', '-t', 'tmpfs', '-o', 'size=8m', 'tmpfs', folder);
    return { folder, run };
  } catch {
    return null;
  }
}

/** A folder whose files can be made unchangeable while they are open (ext4 and others, as root); null elsewhere. */
function lockableFolder(): Disk | null {
  const folder = path.join(newFolder(), 'disk');
  mkdirSync(folder);
  const run = (...args: string[]) => void execFileSync(args[0]!, args.slice(1), { stdio: 'ignore' });
  const probe = path.join(folder, 'probe');
  const open = openSync(probe, 'w');
  try {
    run('chattr', '+i', probe);
    try {
      writeSync(open, 'x');
      return null;
    } catch {
      return { folder, run };
    } finally {
      run('chattr', '-i', probe);
    }
  } catch {
    return null;
  } finally {
    closeSync(open);
    rmSync(probe, { force: true });
  }
}

const STATES = {
  full: {
    spoil: ({ folder }: Disk) => {
      // To the last byte: what is left of a page would still take a small file.
      for (let size = 1 << 20; size >= 1; size >>= 1) {
        for (let n = 0; n < 12; n++) {
          try {
            writeFileSync(path.join(folder, `ballast-${size}-${n}`), Buffer.alloc(size));
          } catch {
            break;
          }
        }
      }
    },
    mend: ({ folder, run }: Disk) => run('find', folder, '-maxdepth', '1', '-name', 'ballast-*', '-delete'),
  },
  'read-only': {
    spoil: ({ folder, run }: Disk) => run('mount', '-o', 'remount,ro', folder),
    mend: ({ folder, run }: Disk) => run('mount', '-o', 'remount,rw', folder),
  },
  // Files that are open take nothing any more either. All but the log's index: it is mapped into memory, and a system
  // ends a program that writes into a map it cannot keep (then it is as after a kill: tests/db/torture).
  'read-only while open': {
    spoil: ({ folder, run }: Disk) => run('find', folder, '!', '-name', '*-shm', '-exec', 'chattr', '+i', '{}', '+'),
    mend: ({ folder, run }: Disk) => run('chattr', '-R', '-i', folder),
  },
};

test.each(['full', 'read-only', 'read-only while open'] as const)(
  'each kind of save on a %s disk',
  async (state) => {
    const whileOpen = state === 'read-only while open';
    const disk = whileOpen ? lockableFolder() : smallDisk();
    if (!disk) return console.log('no such disk can be made here (needs root on Linux)');
    const folder = path.join(disk.folder, 'caseload');
    const { spoil, mend } = STATES[state];
    const bringable = { bytes: new Uint8Array(), name: '' };
    const port = {
      keyStore: null,
      chooseOpen: async () => ({ name: bringable.name, read: async () => bringable.bytes }),
    } as never;
    const now = () => new Date(NOW);
    const services = new Services({
      folder,
      port,
      shell: 'browser',
      version: '0',
      now,
      emit: () => undefined,
      demoSource: null,
    });
    const ask = async (name: RequestName, input: unknown = {}) =>
      JSON.parse(await dispatch(services, JSON.stringify({ name, input }))) as Answer;
    try {
      const made = await createCaseload({ folder, passphrase: PASSPHRASE, now: NOW, workFactor: QUICK });
      if (!made.ok) throw new Error(made.code);
      const { caseload } = made;
      const kept = caseload.put('client', client({ name: 'Kept Invented' }), doing);
      const other = caseload.put('client', client({ code: 'O-2', name: 'Other Invented' }), doing);
      const seen = caseload.put('visit', visit(kept.id), doing);
      caseload.close();
      expect((await ask('app.unlock', { passphrase: PASSPHRASE })).ok).toBe(true);
      const backup = (await ask('backup.now')).value!['name']!;
      const exported = (await ask('client.export', { clientId: other.id })).value!['file']!;
      const file = readFileSync(path.join(backupsFolder(folder), backup));
      const bare = (fact: object) =>
        Object.fromEntries(Object.entries(fact).filter(([key]) => key !== 'at' && key !== 'by'));
      const saves: [string, () => Promise<Answer>][] = [
        ['client', () => ask('client.save', { ...bare(kept), note: 'x'.repeat(8000) })],
        ['visit', () => ask('visit.save', { ...bare(seen), told: 'x'.repeat(8000) })],
        [
          'words of a form',
          () => ask('typed.keep', { place: 'a', clientId: kept.id, fields: { Note: 'x'.repeat(8000) } }),
        ],
        ['therapist', () => ask('app.therapist', { initials: 'QX', clinic: 'x'.repeat(200), credentials: '' })],
        ['removing', () => ask('fact.remove', { kind: 'visit', id: seen.id })],
        ['merging', () => ask('client.merge', { from: other.id, into: kept.id })],
        ['erasing', () => ask('client.erase', { clientId: other.id })],
        ['backup', () => ask('backup.now')],
        ['export of one', () => ask('client.export', { clientId: kept.id })],
        ['export of all', () => ask('caseload.export')],
        [
          'a backup brought in',
          () => {
            Object.assign(bringable, { bytes: file, name: 'caseload-20250101T000000Z-hand.tar' });
            return ask('backup.bring');
          },
        ],
        [
          'a client file',
          () => {
            Object.assign(bringable, { bytes: readFileSync(exported), name: 'client.tar' });
            return ask('client.import');
          },
        ],
        ['restore', () => ask('backup.restore', { name: backup, passphrase: PASSPHRASE })],
        ['new key', () => ask('app.rekey', { passphrase: PASSPHRASE, next: 'nine lighthouses and a spoon' })],
      ];
      // A disk cannot be mounted read-only while a file on it is open for writing: there it is tried from the lock on.
      const fromTheLock: typeof saves = [
        ['opening', () => ask('app.unlock', { passphrase: PASSPHRASE })],
        ...saves.filter(([name]) => ['a backup brought in', 'restore'].includes(name)),
      ];
      const before = services.need().counts();
      const said: Record<string, string> = {};
      for (const [name, save] of state === 'read-only' ? fromTheLock : saves) {
        if (state === 'read-only') services.lock('asked');
        spoil(disk);
        const answer = await save();
        said[name] = answer.ok ? 'saved' : answer.code!;
        // The lock works on any disk, and forgets the key.
        if (name === 'backup') services.lock('asked');
        mend(disk);
        if ((await ask('app.status')).value!['state'] !== 'open') {
          const opened = await ask('app.unlock', { passphrase: PASSPHRASE });
          expect(opened.ok, `${name}: ${opened.code}`).toBe(true);
        }
        expect(services.need().verifyTrail().whole, name).toBe(true);
        expect(services.need().quickCheck(), name).toBe('ok');
        if (!answer.ok)
          expect(services.need().counts(), name).toMatchObject({ client: before['client'], visit: before['visit'] });
      }
      // A refusal has a sentence; none of them is 'internal'.
      for (const [name, code] of Object.entries(said)) {
        if (name === 'a client file') expect(code).toBe('code-taken');
        else expect(['disk-full', 'folder-not-writable'], `${name} on a ${state} disk`).toContain(code);
      }
      expect(backupNames(backupsFolder(folder)).map((each) => each.name)).toEqual([backup]);
    } finally {
      services.lock('asked');
      mend(disk);
      if (!whileOpen) disk.run('umount', '-l', disk.folder);
      rmSync(disk.folder, { recursive: true, force: true });
    }
  },
  240_000,
);
