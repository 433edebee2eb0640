/** Key pairs of the npm package age-encryption 0.3.1 (the format's own library in TypeScript), told by our own code. */
import { Decrypter, Encrypter, generateX25519Identity, identityToRecipient } from 'age-encryption';
import { randomBytes } from 'node:crypto';
import { expect, test } from 'vitest';
import { decryptingKey, isRecipientOf, newKeyPair, openBytesWith, sealBytesTo } from '../../db/keys/age-keys.ts';

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

// Chunks of the format hold 64 KiB: none, one byte, one chunk, one byte more, several.
test.each([0, 1, 65_535, 65_536, 65_537, 3 * 65_536, 200_000])(
  '%i bytes sealed here open in the library and the other way round; changed, cut or lengthened they do not',
  async (size) => {
    const { identity, recipient } = newKeyPair();
    const bytes = randomBytes(size);
    const ours = await sealBytesTo(bytes, recipient);
    const decrypter = new Decrypter();
    decrypter.addIdentity(identity.toString('ascii'));
    expect(Buffer.from(await decrypter.decrypt(ours)).equals(bytes)).toBe(true);
    const encrypter = new Encrypter();
    encrypter.addRecipient(recipient);
    expect((await openBytesWith(await encrypter.encrypt(bytes), identity))?.equals(bytes)).toBe(true);
    const changed = Buffer.from(ours);
    changed[changed.length - 20]! ^= 1;
    const [chunk, tag] = [65_536, 16];
    const payload = ours.length - size - tag * Math.max(1, Math.ceil(size / chunk));
    const others = [changed, ours.subarray(0, -1), Buffer.concat([ours, Buffer.alloc(1)])];
    // Without its last chunk, and with its first two changed over.
    if (size > chunk) others.push(ours.subarray(0, payload + chunk + tag));
    if (size >= 2 * chunk) {
      const [first, second] = [0, 1].map((n) =>
        ours.subarray(payload + n * (chunk + tag), payload + (n + 1) * (chunk + tag)),
      );
      others.push(
        Buffer.concat([ours.subarray(0, payload), second!, first!, ours.subarray(payload + 2 * (chunk + tag))]),
      );
    }
    for (const each of others) expect(await openBytesWith(each, identity)).toBeNull();
  },
);
