import { expect, test } from 'vitest';
import { createFile, openFile } from '../../db/connection.ts';
import { caseloadFile } from '../../db/files.ts';
import { NOTE_LENGTH } from '../../db/types/note-length.ts';
import { contract } from '../../electron/contract/index.ts';
import { createCaseload, openCaseload, rekeyCaseload } from '../../db/index.ts';
import { dump, manifestOf } from '../../db/dump.ts';
import { migrate, readMigrations } from '../../db/migrate.ts';
import { client, doing, newCaseload, newFolder, NOW, PASSPHRASE, QUICK, reopen } from './support.ts';

const NEXT = 'nine lighthouses and a spoon';
const place = 'practice-log/one';

test('words of a form outlive close, change of key and opening; they have no trail and go when used', async () => {
  const folder = newFolder();
  const made = await createCaseload({ folder, passphrase: PASSPHRASE, now: NOW, workFactor: QUICK });
  if (!made.ok) throw new Error(made.code);
  const { id } = made.caseload.put('client', client(), doing);
  const before = made.caseload.lastSeq();
  made.caseload.keepWords({ place, clientId: id, fields: { Note: 'slow after lunch' } }, doing);
  expect(made.caseload.lastSeq()).toBe(before);
  made.caseload.close();
  expect((await rekeyCaseload({ folder, passphrase: PASSPHRASE, next: NEXT, now: NOW, workFactor: QUICK })).ok).toBe(
    true,
  );
  const opened = await openCaseload({ folder, passphrase: NEXT, now: NOW });
  if (!opened.ok) throw new Error(opened.code);
  const { caseload } = opened;
  expect(caseload.wordsKept(place)).toEqual({ Note: 'slow after lunch' });
  expect(caseload.wordsKept('practice-log/two')).toEqual({});
  caseload.keepWords({ place, clientId: id, fields: {} }, doing);
  expect(caseload.wordsKept(place)).toEqual({});
  caseload.close();
});

test('they go with their client; of an unknown client nothing is kept', async () => {
  const caseload = await newCaseload();
  const { id } = caseload.put('client', client(), doing);
  caseload.keepWords({ place, clientId: id, fields: { Note: 'erased too' } }, doing);
  caseload.erase(id, doing);
  expect(caseload.wordsKept(place)).toEqual({});
  expect(() => caseload.keepWords({ place, clientId: id, fields: { Note: 'x' } }, doing)).toThrow('not-found');
  caseload.close();
  const again = await reopen(caseload.folder);
  expect(again.wordsKept(place)).toEqual({});
  again.close();
});

test('a file of an earlier version, without this table, can be copied and counted all the same', async () => {
  const caseload = await newCaseload();
  const identity = caseload.withKey((key) => Buffer.from(key));
  caseload.close();
  const file = `${caseloadFile(caseload.folder)}.old`;
  const old = createFile(file, identity);
  for (const upTo of [1, 2, 3, 4]) {
    migrate(old, null, '', readMigrations(), upTo);
    expect([...dump(old)].map(({ name }) => name).filter((name) => name.includes('unkept'))).toEqual([]);
    expect(manifestOf(old, NOW).counts['client']).toBe(0);
  }
  old.close();
  openFile(file, identity).close();
});

test('a form keeps as many words as a note takes: no field of the window is longer', () => {
  const { input } = contract['typed.keep'];
  const keeping = (length: number) => input.safeParse({ place, clientId: null, fields: { Note: 'x'.repeat(length) } });
  expect(keeping(NOTE_LENGTH).success).toBe(true);
  expect(keeping(NOTE_LENGTH + 1).success).toBe(false);
});
