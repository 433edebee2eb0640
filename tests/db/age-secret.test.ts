/** Key pairs of the npm package age-encryption 0.3.1 (the format's own library in TypeScript), told by our own code. */
import { Decrypter, Encrypter, generateX25519Identity, identityToRecipient } from 'age-encryption';
import { expect, test } from 'vitest';
import { decryptingKey, isRecipientOf } from '../../db/keys/age-keys.ts';

test('of 200 key pairs each recipient belongs to its identity and to no other', async () => {
  const identities = await Promise.all(Array.from({ length: 200 }, generateX25519Identity));
  const recipients = await Promise.all(identities.map((identity) => identityToRecipient(identity)));
  identities.forEach((identity, i) => {
    expect(isRecipientOf(recipients[i]!, Buffer.from(identity, 'ascii'))).toBe(true);
    expect(isRecipientOf(recipients[(i + 1) % 200]!, Buffer.from(identity, 'ascii'))).toBe(false);
  });
});

test('what is no key belongs to nobody', async () => {
  const identity = Buffer.from(await generateX25519Identity(), 'ascii');
  for (const text of ['', '1', 'age1', 'age1qqq', 'age1ÿÿÿ', 'b'.repeat(80)]) {
    expect(isRecipientOf(text, identity)).toBe(false);
    expect(isRecipientOf('age1qqq', Buffer.from(text))).toBe(false);
  }
});

test('the key opens what was encrypted to its recipient, and cannot be read out again', async () => {
  const identity = await generateX25519Identity();
  const encrypter = new Encrypter();
  encrypter.addRecipient(await identityToRecipient(identity));
  const sealed = await encrypter.encrypt('a list for the market');
  const key = await decryptingKey(Buffer.from(identity, 'ascii'));
  expect(key).toMatchObject({ extractable: false });
  const decrypter = new Decrypter();
  decrypter.addIdentity(key);
  expect(await decrypter.decrypt(sealed, 'text')).toBe('a list for the market');
});
