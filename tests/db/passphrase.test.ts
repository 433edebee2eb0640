import { readFileSync } from 'node:fs';
import { armor, Decrypter, Encrypter } from 'age-encryption';
import { expect, test } from 'vitest';
import { openText, sealText } from '../../db/age.ts';
import { keyFile } from '../../db/files.ts';
import { changePassphrase, createCaseload, openCaseload, renewRecoveryKey } from '../../db/index.ts';
import { parseKeyFile } from '../../db/key-file.ts';
import { client, doing, newCaseload, newFolder, NOW, PASSPHRASE, QUICK } from './support.ts';

const NEXT = 'nine lighthouses and a spoon';

test('a changed passphrase opens, the old one no longer does, and the open caseload goes on', async () => {
  const caseload = await newCaseload();
  const { folder } = caseload;
  const change = { folder, next: NEXT, now: NOW, workFactor: QUICK };
  expect(await changePassphrase({ ...change, passphrase: 'a wrong one altogether' })).toEqual({
    ok: false,
    code: 'wrong-passphrase',
  });
  expect(await changePassphrase({ ...change, passphrase: PASSPHRASE, next: 'short' })).toEqual({
    ok: false,
    code: 'passphrase-too-short',
  });
  expect(await changePassphrase({ ...change, passphrase: PASSPHRASE })).toEqual({ ok: true });
  caseload.put('client', client(), doing);
  caseload.close();
  expect(await openCaseload({ folder, passphrase: PASSPHRASE, now: NOW })).toEqual({
    ok: false,
    code: 'wrong-passphrase',
  });
  const opened = await openCaseload({ folder, passphrase: NEXT, now: NOW });
  expect(opened.ok && opened.caseload.clients().length).toBe(1);
  if (opened.ok) opened.caseload.close();
});

test('a new recovery sheet takes the place of the old one', async () => {
  const folder = newFolder();
  const created = await createCaseload({ folder, passphrase: PASSPHRASE, now: NOW, workFactor: QUICK });
  if (!created.ok) throw new Error(created.code);
  created.caseload.close();
  const renewed = await renewRecoveryKey({ folder, passphrase: PASSPHRASE, now: NOW });
  if (!renewed.ok) throw new Error(renewed.code);
  const old = await openCaseload({ folder, recoveryKey: created.recoveryKey, now: NOW });
  expect(old).toEqual({ ok: false, code: 'wrong-passphrase' });
  const opened = await openCaseload({ folder, recoveryKey: renewed.recoveryKey, now: NOW });
  expect(opened.ok).toBe(true);
  if (opened.ok) opened.caseload.close();
});

test('our passphrase files and those of the age library open each other', async () => {
  const ours = await sealText('secret', PASSPHRASE, QUICK);
  const theirs = new Decrypter();
  theirs.addPassphrase(PASSPHRASE);
  expect(await theirs.decrypt(armor.decode(ours), 'text')).toBe('secret');
  expect(await openText(ours, `${PASSPHRASE}!`)).toBeNull();
  const encrypter = new Encrypter();
  encrypter.setScryptWorkFactor(QUICK);
  encrypter.setPassphrase(PASSPHRASE);
  expect(await openText(armor.encode(await encrypter.encrypt('secret')), PASSPHRASE)).toBe('secret');
});

test('the same letters typed on another keyboard are the same passphrase', async () => {
  expect(
    await openText(
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
