import { readFileSync, writeFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { openFile } from '../../../db/connection.ts';
import { caseloadFile } from '../../../db/files.ts';
import { checkCaseload, undoRestore } from '../../../electron/files/backup/backup.ts';
import { salvageCaseload } from '../../../electron/files/backup/backup-salvage.ts';
import { client, doing, newCaseload, newFolder, NOW, PASSPHRASE, reopen } from '../../db/support.ts';

test('a damaged caseload is salvaged in the worker and can take the place of the damaged file', async () => {
  const caseload = await newCaseload();
  for (let n = 0; n < 40; n++) caseload.put('client', client({ note: 'words '.repeat(300) }), doing);
  const { folder } = caseload;
  await expect(salvageCaseload({ folder, passphrase: PASSPHRASE, now: NOW })).rejects.toThrow('locked-by-another');
  caseload.close();
  const bytes = readFileSync(caseloadFile(folder));
  const last = bytes.length / 4096 - 3;
  writeFileSync(caseloadFile(folder), bytes.fill(1, last * 4096, last * 4096 + 50));
  await expect(salvageCaseload({ folder, passphrase: 'not the one, sorry', now: NOW })).rejects.toThrow(
    'wrong-passphrase',
  );
  const salvaged = await salvageCaseload({ folder, passphrase: PASSPHRASE, now: NOW });
  expect(salvaged.counts['client']! + salvaged.lost).toBeGreaterThanOrEqual(40);
  await undoRestore(folder, salvaged.name, NOW);
  const again = await reopen(folder);
  expect(again.clients()).toHaveLength(salvaged.counts['client']!);
  const check = await again.withKey((identity) => checkCaseload(folder, identity));
  expect(check).toMatchObject({ file: 'ok', trail: { whole: true } });
});

test('what is no caseload at all gives nothing to salvage', async () => {
  const caseload = await newCaseload();
  const { folder } = caseload;
  caseload.close();
  writeFileSync(caseloadFile(folder), 'text over the file');
  await expect(salvageCaseload({ folder, passphrase: PASSPHRASE, now: NOW })).rejects.toThrow('damaged');
  await expect(salvageCaseload({ folder: newFolder(), passphrase: PASSPHRASE, now: NOW })).rejects.toThrow(
    'key-file-missing',
  );
});

test('the check in the worker reads every picture too', async () => {
  const caseload = await newCaseload();
  const { folder } = caseload;
  const { id } = caseload.put('client', client(), doing);
  caseload.putBlob(id, 'image/png', Buffer.alloc(20_000, 1), doing);
  const check = () => caseload.withKey((identity) => checkCaseload(folder, identity));
  expect((await check()).file).toBe('ok');
  caseload.withKey((identity) => {
    const db = openFile(caseloadFile(folder), identity);
    db.prepare('UPDATE blob SET bytes = zeroblob(size)').run();
    db.close();
  });
  expect((await check()).file).toBe('pictures that do not fit their checksum: 1');
});
