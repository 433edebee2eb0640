import { readFileSync, writeFileSync } from 'node:fs';
import { armor, Decrypter, Encrypter, generateX25519Identity, identityToRecipient } from 'age-encryption';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { keyFile, keyFileCopy } from '../../../db/files.ts';
import { addSignIn, openCaseload, rekeyCaseload, settleSignIns, signInsIn, type Caseload } from '../../../db/index.ts';
import { parseKeyFile } from '../../../db/key-file.ts';
import { isRecipientOf, newKeyPair, openWith, sealTo } from '../../../db/keys/age-keys.ts';
import { PEOPLE, type Person } from '../../../db/types/clinic/people.ts';
import { client, doing, newCaseload, NOW, PASSPHRASE, QUICK } from '../support.ts';

const HERS = 'nine lighthouses and a spoon';
const ASSISTANT = 'eleven quiet harbors in fog';
const ids = ['aaaaaaaa-0000-4000-8000-000000000001', 'aaaaaaaa-0000-4000-8000-000000000002'] as const;
const third = 'aaaaaaaa-0000-4000-8000-000000000003';
const quick = { now: NOW, workFactor: QUICK };

const person = (id: string, initials: string, role: Person['role'] = 'therapist'): Person => ({
  id,
  name: '',
  initials,
  role,
  credentials: '',
  removedOn: null,
});
const first = { id: ids[0], initials: 'MK', passphrase: PASSPHRASE };
const second = { id: ids[1], initials: 'QM', passphrase: HERS };

/** A caseload of two, as the handlers make it: wrap, list, settled. */
async function shared(): Promise<{ caseload: Caseload; recoveryKey: string }> {
  const caseload = await newCaseload();
  caseload.put('client', client(), doing);
  const { recoveryKey } = await addSignIn(caseload, second, first, quick);
  caseload.putSetting(PEOPLE, [person(ids[0], 'MK'), person(ids[1], 'QM')], doing);
  settleSignIns(caseload.folder);
  return { caseload, recoveryKey };
}

/** Who the opening says it was, or why it was refused. */
async function whoOpens(
  folder: string,
  secret: Parameters<typeof openCaseload>[0] extends infer O ? Partial<O> : never,
) {
  const opened = await openCaseload({ folder, now: NOW, ...secret } as Parameters<typeof openCaseload>[0]);
  if (!opened.ok) return opened.code;
  expect(opened.caseload.clients()).toHaveLength(1);
  opened.caseload.close();
  return opened.person;
}

test('key pairs and sealed secrets are those of the age format: the library opens and makes the same', async () => {
  for (let n = 0; n < 20; n++) {
    const { identity, recipient } = newKeyPair();
    // Reference: age-encryption, an implementation of age-encryption.org/v1 by the format's author.
    expect(await identityToRecipient(identity.toString('ascii'))).toBe(recipient);
    expect(isRecipientOf(recipient, identity)).toBe(true);
  }
  const { identity, recipient } = newKeyPair();
  const theirs = new Decrypter();
  theirs.addIdentity(identity.toString('ascii'));
  expect(await theirs.decrypt(armor.decode(await sealTo(Buffer.from('secret'), recipient)), 'text')).toBe('secret');
  const encrypter = new Encrypter();
  encrypter.addRecipient(recipient);
  const sealed = armor.encode(await encrypter.encrypt('secret'));
  expect((await openWith(sealed, identity))?.toString()).toBe('secret');
  const other = Buffer.from(await generateX25519Identity());
  expect(await openWith(sealed, other)).toBeNull();
});

test('each signs in with her own passphrase and initials, and with nobody else’s', async () => {
  const { caseload, recoveryKey } = await shared();
  const { folder } = caseload;
  caseload.close();
  expect(recoveryKey).toMatch(/^(\w{4}-){7}\w{4}$/);
  expect(await whoOpens(folder, { passphrase: PASSPHRASE, initials: 'mk ' })).toBe(ids[0]);
  expect(await whoOpens(folder, { passphrase: HERS, initials: 'QM' })).toBe(ids[1]);
  // The command line and backups ask for no initials.
  expect(await whoOpens(folder, { passphrase: HERS })).toBe(ids[1]);
  for (const initials of ['MK', 'ZZ', 'XX', 'A']) {
    expect(await whoOpens(folder, { passphrase: HERS, initials })).toBe('wrong-passphrase');
  }
  expect(await whoOpens(folder, { passphrase: ASSISTANT, initials: 'QM' })).toBe('wrong-passphrase');
  expect(await whoOpens(folder, { recoveryKey })).toBeNull();
});

test('the key file names nobody: no initials, no role, and its mark fits one pair of letters in sixteen', async () => {
  const { caseload } = await shared();
  const text = readFileSync(keyFile(caseload.folder), 'utf8');
  expect(text).not.toMatch(/"(MK|QM)"|initials|therapist|assistant|name/);
  const read = parseKeyFile(text);
  if (read.state !== 'ok' || !('people' in read.file)) throw new Error('no people');
  expect(read.file.people.map((one) => Object.keys(one).sort())).toEqual(
    Array(2).fill(['id', 'mark', 'own', 'recipient', 'secret']),
  );
  for (let at = 20; at < text.length - 3; at += 131) {
    const changed = text.slice(0, at) + (text[at] === 'x' ? 'y' : 'x') + text.slice(at + 1);
    expect(parseKeyFile(changed).state, changed.slice(at - 10, at + 10)).toBe('damaged');
  }
});

test('two people who chose the same passphrase are told apart by their initials', async () => {
  const { caseload } = await shared();
  await addSignIn(caseload, { id: third, initials: 'AS', passphrase: HERS }, null, quick);
  caseload.putSetting(PEOPLE, [person(ids[0], 'MK'), person(ids[1], 'QM'), person(third, 'AS', 'assistant')], doing);
  const { folder } = caseload;
  caseload.close();
  expect(await whoOpens(folder, { passphrase: HERS, initials: 'AS' })).toBe(third);
  expect(await whoOpens(folder, { passphrase: HERS, initials: 'QM' })).toBe(ids[1]);
});

test('after a removal the key is another: her old key file and passphrase open nothing, the sheet still does', async () => {
  const { caseload, recoveryKey } = await shared();
  const { folder } = caseload;
  const before = readFileSync(keyFile(folder));
  const removed = [person(ids[0], 'MK'), { ...person(ids[1], 'QM'), removedOn: '2026-03-04' }];
  caseload.putSetting(PEOPLE, removed, doing);
  caseload.close();
  // Between list and key the window refuses her already, and her wrap shows that the key is still to be changed.
  expect(await whoOpens(folder, { passphrase: HERS, initials: 'QM' })).toBe('wrong-passphrase');
  expect(await whoOpens(folder, { passphrase: PASSPHRASE, initials: 'MK' })).toBe(ids[0]);
  expect(signInsIn(folder)).toEqual([...ids]);
  const done = await rekeyCaseload({ folder, passphrase: PASSPHRASE, person: ids[0], without: [ids[1]], ...quick });
  expect(done).toEqual({ ok: true, recoveryKey: '' });
  expect(signInsIn(folder)).toEqual([ids[0]]);
  expect(await whoOpens(folder, { passphrase: HERS })).toBe('wrong-passphrase');
  expect(await whoOpens(folder, { passphrase: PASSPHRASE, initials: 'MK' })).toBe(ids[0]);
  expect(await whoOpens(folder, { recoveryKey })).toBeNull();
  const present = readFileSync(keyFile(folder));
  for (const name of [keyFile(folder), keyFileCopy(folder)]) writeFileSync(name, before);
  expect(await whoOpens(folder, { passphrase: HERS })).toBe('damaged');
  for (const name of [keyFile(folder), keyFileCopy(folder)]) writeFileSync(name, present);
});

test('a changed passphrase leaves the others’ as they are, and her old key file opens nothing of today', async () => {
  const { caseload } = await shared();
  const { folder } = caseload;
  caseload.close();
  const before = readFileSync(keyFile(folder));
  const change = { folder, passphrase: HERS, person: ids[1], next: ASSISTANT, ...quick };
  // Somebody else's passphrase changes nothing of hers.
  expect(await rekeyCaseload({ ...change, passphrase: PASSPHRASE })).toEqual({ ok: false, code: 'wrong-passphrase' });
  expect(await rekeyCaseload(change)).toEqual({ ok: true, recoveryKey: '' });
  expect(await whoOpens(folder, { passphrase: ASSISTANT, initials: 'QM' })).toBe(ids[1]);
  expect(await whoOpens(folder, { passphrase: PASSPHRASE, initials: 'MK' })).toBe(ids[0]);
  for (const name of [keyFile(folder), keyFileCopy(folder)]) writeFileSync(name, before);
  expect(await whoOpens(folder, { passphrase: HERS })).toBe('damaged');
});

test('the recovery sheet sets one person’s passphrase, and is used up', async () => {
  const { caseload, recoveryKey } = await shared();
  const { folder } = caseload;
  caseload.close();
  const done = await rekeyCaseload({ folder, recoveryKey, person: ids[0], next: ASSISTANT, ...quick });
  if (!done.ok) throw new Error(done.code);
  expect(done.recoveryKey).not.toBe('');
  expect(await whoOpens(folder, { recoveryKey })).toBe('wrong-passphrase');
  expect(await whoOpens(folder, { recoveryKey: done.recoveryKey })).toBeNull();
  expect(await whoOpens(folder, { passphrase: ASSISTANT, initials: 'MK' })).toBe(ids[0]);
  expect(await whoOpens(folder, { passphrase: HERS, initials: 'QM' })).toBe(ids[1]);
});

test('an adding that was cut off before the list leaves everything as it was: passphrase and sheet of before', async () => {
  const caseload = await newCaseload();
  caseload.put('client', client(), doing);
  const { folder } = caseload;
  await addSignIn(caseload, second, first, quick);
  caseload.close();
  expect(await whoOpens(folder, { passphrase: HERS, initials: 'QM' })).toBe('wrong-passphrase');
  expect(signInsIn(folder)).toEqual([...ids]);
  expect(await whoOpens(folder, { passphrase: PASSPHRASE })).toBeNull();
  expect(signInsIn(folder)).toEqual([]);
  expect(JSON.parse(readFileSync(keyFile(folder), 'utf8'))).toMatchObject({ version: 1, outgoing: null });
});

test('any order of adding, removing and changed passphrases lets in exactly those who are there (properties)', async () => {
  const step = fc.record({ do: fc.constantFrom('add', 'remove', 'change'), who: fc.nat(5) });
  await fc.assert(
    fc.asyncProperty(fc.array(step, { minLength: 1, maxLength: 6 }), async (steps) => {
      const { caseload: opened } = await shared();
      const { folder } = opened;
      let people = [person(ids[0], 'MK'), person(ids[1], 'QM')];
      const words = new Map<string, string>([
        [ids[0], PASSPHRASE],
        [ids[1], HERS],
      ]);
      const gone: string[] = [];
      let caseload = opened;
      for (const [n, { do: what, who }] of steps.entries()) {
        const present = people.filter(({ removedOn }) => removedOn === null);
        const one = present[who % present.length]!;
        if (what === 'add') {
          const id = `bbbbbbbb-0000-4000-8000-00000000000${n}`;
          words.set(id, `passphrase number ${n} of somebody`);
          await addSignIn(caseload, { id, initials: `P${n}`, passphrase: words.get(id)! }, null, quick);
          people = [...people, person(id, `P${n}`)];
          caseload.putSetting(PEOPLE, people, doing);
        } else {
          if (what === 'remove' && present.length === 1) continue;
          const actor = what === 'remove' ? present.find(({ id }) => id !== one.id)! : one;
          if (what === 'remove') {
            people = people.map((each) => (each === one ? { ...each, removedOn: '2026-03-04' } : each));
            caseload.putSetting(PEOPLE, people, doing);
          }
          caseload.close();
          const secret = { folder, passphrase: words.get(actor.id)!, person: actor.id, ...quick };
          gone.push(words.get(one.id)!);
          const next = `changed passphrase number ${n}`;
          const done = await rekeyCaseload(what === 'remove' ? { ...secret, without: [one.id] } : { ...secret, next });
          expect(done.ok).toBe(true);
          if (what === 'change') words.set(one.id, next);
          const again = await openCaseload({ folder, now: NOW, passphrase: words.get(actor.id)! });
          if (!again.ok) throw new Error(again.code);
          caseload = again.caseload;
        }
      }
      caseload.close();
      for (const { id, initials, removedOn } of people) {
        if (removedOn === null) expect(await whoOpens(folder, { passphrase: words.get(id)!, initials })).toBe(id);
      }
      for (const passphrase of gone) expect(await whoOpens(folder, { passphrase })).toBe('wrong-passphrase');
    }),
    { numRuns: 3, seed: 17 },
  );
});
