import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { armor, Decrypter, Encrypter } from 'age-encryption';
import { expect, test } from 'vitest';
import { openBytes, sealBytes } from '../../db/age.ts';
import { keyFile, keyFileCopy } from '../../db/files.ts';
import { createCaseload, openCaseload, rekeyCaseload } from '../../db/index.ts';
import { parseKeyFile, readKeyFile, writeKeyFile } from '../../db/key-file.ts';
import { wrapsOf } from '../../db/keys/key-wraps.ts';
import { client, doing, newCaseload, newFolder, NOW, PASSPHRASE, QUICK } from './support.ts';

const opened = async (sealed: string, passphrase: string): Promise<string | null> =>
  (await openBytes(sealed, passphrase))?.toString() ?? null;
const sealText = (text: string, passphrase: string, logN?: number) => sealBytes(Buffer.from(text), passphrase, logN);
const NEXT = 'nine lighthouses and a spoon';

test('an old key file with the old secret opens nothing of today, whatever was changed', async () => {
  const folder = newFolder();
  const created = await createCaseload({ folder, passphrase: PASSPHRASE, now: NOW, workFactor: QUICK });
  if (!created.ok) throw new Error(created.code);
  created.caseload.put('client', client(), doing);
  created.caseload.close();
  const everyday = { folder, now: NOW, workFactor: QUICK };
  let sheet = created.recoveryKey;
  let passphrase = PASSPHRASE;
  for (const change of [
    // A changed passphrase, a new sheet, a used recovery key.
    () => ({ passphrase, next: NEXT }),
    () => ({ passphrase, next: passphrase }),
    () => ({ recoveryKey: sheet, next: 'eleven quiet harbors in fog' }),
  ]) {
    const before = { passphrase, sheet, key: readFileSync(keyFile(folder)) };
    const { next, ...secret } = change();
    const done = await rekeyCaseload({ ...everyday, next, ...secret });
    if (!done.ok) throw new Error(done.code);
    [passphrase, sheet] = [next, done.recoveryKey];
    const opened = await openCaseload({ folder, passphrase, now: NOW });
    expect(opened.ok && opened.caseload.clients().length).toBe(1);
    if (opened.ok) opened.caseload.close();
    const present = readFileSync(keyFile(folder));
    // A thief has yesterday's key file (a backup holds it) and yesterday's secrets.
    for (const name of [keyFile(folder), keyFileCopy(folder)]) writeFileSync(name, before.key);
    for (const old of [{ passphrase: before.passphrase }, { recoveryKey: before.sheet }]) {
      const tried = await openCaseload({ folder, now: NOW, ...old });
      expect(tried.ok).toBe(false);
    }
    for (const name of [keyFile(folder), keyFileCopy(folder)]) writeFileSync(name, present);
  }
});

test('our passphrase files and those of the age library open each other', async () => {
  const ours = await sealText('secret', PASSPHRASE, QUICK);
  const theirs = new Decrypter();
  theirs.addPassphrase(PASSPHRASE);
  expect(await theirs.decrypt(armor.decode(ours), 'text')).toBe('secret');
  expect(await opened(ours, `${PASSPHRASE}!`)).toBeNull();
  const encrypter = new Encrypter();
  encrypter.setScryptWorkFactor(QUICK);
  encrypter.setPassphrase(PASSPHRASE);
  expect(await opened(armor.encode(await encrypter.encrypt('secret')), PASSPHRASE)).toBe('secret');
});

test('the same letters typed on another keyboard are the same passphrase', async () => {
  expect(
    await opened(
      await sealText('secret', 'Žluťoučký kůň pěl'.normalize('NFD'), QUICK),
      'Žluťoučký kůň pěl'.normalize('NFC'),
    ),
  ).toBe('secret');
});

test('any changed character of a key file is noticed', async () => {
  const caseload = await newCaseload();
  const text = readFileSync(keyFile(caseload.folder), 'utf8');
  expect(parseKeyFile(text).state).toBe('ok');
  for (let at = 20; at < text.length - 3; at += 97) {
    const changed = text.slice(0, at) + (text[at] === 'x' ? 'y' : 'x') + text.slice(at + 1);
    expect(parseKeyFile(changed).state, changed.slice(at - 10, at + 10)).toBe('damaged');
  }
});

test('a passphrase costs a thief memory and time: log2 of N is 18 unless asked otherwise', async () => {
  const sealed = Buffer.from(armor.decode(await sealText('x', PASSPHRASE))).toString('latin1');
  expect(sealed).toMatch(/-> scrypt [A-Za-z0-9+/]{22} 18\n/);
});

test('re-encrypting keeps every record and shuts out the old passphrase, recovery key and secret', async () => {
  const folder = newFolder();
  const created = await createCaseload({ folder, passphrase: PASSPHRASE, now: NOW, workFactor: QUICK });
  if (!created.ok) throw new Error(created.code);
  const { caseload } = created;
  const { id } = caseload.put('client', client(), doing);
  caseload.putBlob(id, 'image/png', Buffer.alloc(50_000, 3), doing);
  const oldIdentity = caseload.withKey((identity) => Buffer.from(identity));
  const head = caseload.verifyTrail().head;
  const rekey = { folder, passphrase: PASSPHRASE, next: NEXT, now: NOW, workFactor: QUICK };
  expect(await rekeyCaseload(rekey)).toEqual({ ok: false, code: 'locked-by-another' });
  caseload.close();
  expect(await rekeyCaseload({ ...rekey, passphrase: 'not this one either' })).toEqual({
    ok: false,
    code: 'wrong-passphrase',
  });
  expect(await rekeyCaseload({ ...rekey, next: 'short' })).toEqual({ ok: false, code: 'passphrase-too-short' });
  const done = await rekeyCaseload(rekey);
  if (!done.ok) throw new Error(done.code);
  expect(readdirSync(folder).sort()).toEqual([
    'caseload.db',
    'caseload.key-copy.json',
    'caseload.key.json',
    'caseload.lock',
  ]);
  const refused = { ok: false, code: 'wrong-passphrase' };
  expect(await openCaseload({ folder, passphrase: PASSPHRASE, now: NOW })).toEqual(refused);
  expect(await openCaseload({ folder, recoveryKey: created.recoveryKey, now: NOW })).toEqual(refused);
  expect(await openCaseload({ folder, identity: oldIdentity, now: NOW })).toEqual({ ok: false, code: 'damaged' });
  const opened = await openCaseload({ folder, recoveryKey: done.recoveryKey, now: NOW });
  if (!opened.ok) throw new Error(opened.code);
  expect(opened.caseload.verifyTrail()).toMatchObject({ whole: true, head });
  expect(opened.caseload.counts()).toMatchObject({ client: 1, blob: 1 });
  opened.caseload.close();
});

test('a change of files that was cut off in the middle opens with the passphrase that fits, before and after', async () => {
  const caseload = await newCaseload();
  const { id } = caseload.put('client', client(), doing);
  const { folder } = caseload;
  caseload.close();
  const other = await newCaseload();
  other.close();
  // The key file already names another secret; the caseload file is still the old one.
  const [present, incoming] = [readKeyFile(folder), readKeyFile(other.folder)];
  if (present.state !== 'ok' || incoming.state !== 'ok') throw new Error('no key file');
  await rekeyCaseload({ folder: other.folder, passphrase: PASSPHRASE, next: NEXT, now: NOW, workFactor: QUICK });
  const next = readKeyFile(other.folder);
  if (next.state !== 'ok') throw new Error('no key file');
  writeKeyFile(folder, { ...next.file, outgoing: wrapsOf(present.file) });
  expect(await openCaseload({ folder, passphrase: NEXT, now: NOW })).toEqual({ ok: false, code: 'wrong-passphrase' });
  const opened = await openCaseload({ folder, passphrase: PASSPHRASE, now: NOW });
  expect(opened.ok && opened.caseload.record(id).client.id).toBe(id);
  if (opened.ok) opened.caseload.close();
  const settled = readKeyFile(folder);
  expect(settled.state === 'ok' && settled.file.outgoing).toBeNull();
});
