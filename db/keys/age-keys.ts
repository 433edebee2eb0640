/**
 * Key pairs of the age format (X25519) and files sealed to one, without a string on the way: what the library
 * makes and opens as text cannot be zeroed.
 */
import {
  createPrivateKey,
  createPublicKey,
  diffieHellman,
  generateKeyPairSync,
  hkdfSync,
  randomBytes,
  type KeyObject,
} from 'node:crypto';
import { armor, Decrypter, Encrypter, Stanza } from 'age-encryption';
import { native, opened, openWhole, sealed, sealWhole, unpadded, ZERO_NONCE } from '../age.ts';

const LABEL = 'age-encryption.org/v1/X25519';
/** The alphabet of Bech32 (BIP 173), 5 bits a character. */
const ALPHABET = 'qpzry9x8gf2tvdw0s3jn54khce6mua7l';
const KEY_BYTES = 32;
/** DER before the 32 bytes of an X25519 private key (RFC 8410, section 7). */
const PKCS8 = Buffer.from('302e020100300506032b656e04220420', 'hex');
/** DER before the 32 bytes of an X25519 public key (RFC 8410, section 4). */
const SPKI = Buffer.from('302a300506032b656e032100', 'hex');

const privateKey = (der: Buffer): KeyObject => createPrivateKey({ key: der, format: 'der', type: 'pkcs8' });
const publicKey = (raw: Uint8Array): KeyObject =>
  createPublicKey({ key: Buffer.concat([SPKI, raw]), format: 'der', type: 'spki' });
const rawOf = (key: KeyObject): Buffer => key.export({ type: 'spki', format: 'der' }).subarray(-KEY_BYTES);

/** The 32 bytes in a Bech32 text as ASCII; its checksum is not looked at. Null when it is none. */
function keyBytes(text: Uint8Array): Buffer | null {
  const bytes = Buffer.alloc(KEY_BYTES);
  let [held, bits, at] = [0, 0, 0];
  for (let i = text.lastIndexOf(0x31) + 1; i < text.length && at < KEY_BYTES; i++) {
    const five = ALPHABET.indexOf(String.fromCharCode(text[i]!).toLowerCase());
    if (five < 0) return null;
    held = ((held << 5) | five) & 0xfff;
    bits += 5;
    if (bits >= 8) {
      bits -= 8;
      bytes[at++] = held >> bits;
    }
  }
  return at === KEY_BYTES ? bytes : null;
}

/** The secret as DER, to zero after use; null where it is none. */
function derOf(identity: Uint8Array): Buffer<ArrayBuffer> | null {
  const secret = keyBytes(identity);
  if (!secret) return null;
  const der = Buffer.concat([PKCS8, secret]);
  secret.fill(0);
  return der;
}

/** One step of the checksum of Bech32 (BIP 173). */
function polymod(sum: number, value: number): number {
  const top = sum >>> 25;
  let next = ((sum & 0x1ffffff) << 5) ^ value;
  for (const [bit, generator] of [0x3b6a57b2, 0x26508e6d, 0x1ea119fa, 0x3d4233dd, 0x2a1462b3].entries())
    if ((top >> bit) & 1) next ^= generator;
  return next;
}

/** Bech32 (BIP 173) of 32 bytes as ASCII, lower case. */
function bech32(prefix: string, bytes: Uint8Array): Buffer {
  const fives: number[] = [];
  let [held, bits] = [0, 0];
  for (const byte of bytes) {
    held = ((held << 8) | byte) & 0xfff;
    for (bits += 8; bits >= 5; bits -= 5) fives.push((held >> (bits - 5)) & 31);
  }
  if (bits > 0) fives.push((held << (5 - bits)) & 31);
  const ascii = Buffer.from(prefix);
  const spread = [...[...ascii].map((c) => c >> 5), 0, ...[...ascii].map((c) => c & 31)];
  const sum = [...spread, ...fives, 0, 0, 0, 0, 0, 0].reduce(polymod, 1) ^ 1;
  const check = [0, 1, 2, 3, 4, 5].map((n) => (sum >>> (5 * (5 - n))) & 31);
  const text = Buffer.from([...ascii, 0x31, ...[...fives, ...check].map((five) => ALPHABET.charCodeAt(five))]);
  fives.fill(0);
  return text;
}

/** A new key pair: the identity (AGE-SECRET-KEY-1…, ASCII; zero it after use) and its recipient (age1…). */
export function newKeyPair(): { identity: Buffer; recipient: string } {
  const secret = randomBytes(KEY_BYTES);
  const der = Buffer.concat([PKCS8, secret]);
  const identity = bech32('age-secret-key-', secret);
  // Upper case without a string.
  for (const [n, code] of identity.entries()) if (code >= 0x61 && code <= 0x7a) identity[n] = code - 32;
  const recipient = bech32('age', rawOf(createPublicKey(privateKey(der)))).toString('ascii');
  secret.fill(0);
  der.fill(0);
  return { identity, recipient };
}

/**
 * An identity (AGE-SECRET-KEY-1…, ASCII) as the library's Decrypter takes it. As text the library would decode it into
 * bytes that nobody zeroes; it is text only where the system's cryptography has no X25519.
 */
export async function decryptingKey(identity: Uint8Array): Promise<CryptoKey | string> {
  const der = derOf(identity);
  try {
    if (der) return await crypto.subtle.importKey('pkcs8', der, { name: 'X25519' }, false, ['deriveBits']);
  } catch {
    // Told apart by what is answered.
  } finally {
    der?.fill(0);
  }
  return Buffer.from(identity.buffer, identity.byteOffset, identity.length).toString('ascii');
}

/**
 * Whether a recipient (age1…) is the public half of an identity (AGE-SECRET-KEY-1…, ASCII): X25519 of RFC 7748.
 * Leaves no copy of the secret behind.
 */
export function isRecipientOf(recipient: string, identity: Uint8Array): boolean {
  const told = keyBytes(Buffer.from(recipient, 'ascii'));
  const der = told && derOf(identity);
  if (!told || !der) return false;
  try {
    return rawOf(createPublicKey(privateKey(der))).equals(told);
  } finally {
    der.fill(0);
  }
}

const wrapKey = (shared: Uint8Array, share: Uint8Array, recipient: Uint8Array): Buffer =>
  Buffer.from(hkdfSync('sha256', shared, Buffer.concat([share, recipient]), LABEL, 32));

/** Encrypts bytes to a recipient (age1…); they are left as they are. */
export async function sealBytesTo(bytes: Uint8Array, recipient: string): Promise<Uint8Array> {
  const to = keyBytes(Buffer.from(recipient, 'ascii'));
  if (!native || !to) {
    const encrypter = new Encrypter();
    encrypter.addRecipient(recipient);
    return encrypter.encrypt(bytes);
  }
  const wrap = (fileKey: Uint8Array): Promise<Stanza> => {
    const pair = generateKeyPairSync('x25519');
    const share = rawOf(pair.publicKey);
    const shared = diffieHellman({ privateKey: pair.privateKey, publicKey: publicKey(to) });
    const key = wrapKey(shared, share, to);
    const body = sealed(key, ZERO_NONCE, fileKey);
    for (const each of [shared, key]) each.fill(0);
    return Promise.resolve(new Stanza(['X25519', unpadded(share)], body));
  };
  return sealWhole(bytes, wrap);
}

/** Encrypts a short secret to a recipient (age1…), as printable lines. */
export const sealTo = async (secret: Uint8Array, recipient: string): Promise<string> =>
  armor.encode(await sealBytesTo(secret, recipient));

/** What was sealed to this identity's recipient, to zero after use; null when it was sealed to another, changed or cut. */
export async function openBytesWith(bytes: Uint8Array, identity: Uint8Array): Promise<Buffer | null> {
  try {
    if (native) return await openWhole(bytes, (stanza) => Promise.resolve(fileKeyOf(stanza, identity)));
    const decrypter = new Decrypter();
    decrypter.addIdentity(await decryptingKey(identity));
    return Buffer.from(await decrypter.decrypt(bytes));
  } catch {
    return null;
  }
}

/** The same from printable lines. */
export async function openWith(text: string, identity: Uint8Array): Promise<Buffer | null> {
  try {
    return await openBytesWith(armor.decode(text), identity);
  } catch {
    return null;
  }
}

/** The file's own key; null when the stanza is of another kind. @throws when it was sealed to another */
function fileKeyOf({ args, body }: Stanza, identity: Uint8Array): Buffer | null {
  const share = Buffer.from(args[1] ?? '', 'base64');
  if (args[0] !== 'X25519' || share.length !== KEY_BYTES || body.length !== 32) return null;
  const der = derOf(identity);
  if (!der) return null;
  const own = privateKey(der);
  const shared = diffieHellman({ privateKey: own, publicKey: publicKey(share) });
  const key = wrapKey(shared, share, rawOf(createPublicKey(own)));
  try {
    return opened(key, ZERO_NONCE, body);
  } finally {
    for (const each of [der, shared, key]) each.fill(0);
  }
}
