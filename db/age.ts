/**
 * Passphrases in the age file format (age-encryption.org/v1), with the slow part off the main thread.
 *
 * The library's own passphrase recipient stretches in JavaScript and stops everything for over a second; these two
 * are the same stanza ("scrypt", salt, log2 of the work factor) made with Node's native scrypt. Where the system's
 * cryptography lacks ChaCha20-Poly1305 the library's own is used: slower, same bytes.
 */
import {
  createCipheriv,
  createDecipheriv,
  createHmac,
  createPrivateKey,
  createPublicKey,
  getCiphers,
  hkdfSync,
  randomBytes,
  scrypt,
} from 'node:crypto';
import { armor, Decrypter, Encrypter, Stanza, type Identity, type Recipient } from 'age-encryption';

const LABEL = 'age-encryption.org/v1/scrypt';
export const CIPHER = 'chacha20-poly1305';
/** log2 of scrypt's N that age implementations use: about 0.7 s and 256 MB a try. */
const WORK_FACTOR = 18;
/** A hostile file must not make us stretch for minutes. */
const HIGHEST_WORK_FACTOR = 20;

/** The system's cryptography has the cipher of the format. */
export const native = getCiphers().includes(CIPHER);
const zeroNonce = Buffer.alloc(12);

function stretch(passphrase: string, salt: Uint8Array, logN: number): Promise<Buffer> {
  const labelled = Buffer.concat([Buffer.from(LABEL), salt]);
  const options = { N: 2 ** logN, r: 8, p: 1, maxmem: 2 ** (logN + 11) };
  return new Promise((resolve, reject) => {
    scrypt(passphrase, labelled, 32, options, (error, key) => (error ? reject(error) : resolve(key)));
  });
}

export const unpadded = (bytes: Uint8Array): string => Buffer.from(bytes).toString('base64').replace(/=+$/, '');

class PassphraseRecipient implements Recipient {
  readonly #passphrase: string;
  readonly #logN: number;
  constructor(passphrase: string, logN: number) {
    this.#passphrase = passphrase;
    this.#logN = logN;
  }
  async wrapFileKey(fileKey: Uint8Array): Promise<Stanza[]> {
    const salt = randomBytes(16);
    const key = await stretch(this.#passphrase, salt, this.#logN);
    const cipher = createCipheriv(CIPHER, key, zeroNonce, { authTagLength: 16 });
    const body = Buffer.concat([cipher.update(fileKey), cipher.final(), cipher.getAuthTag()]);
    key.fill(0);
    return [new Stanza(['scrypt', unpadded(salt), String(this.#logN)], body)];
  }
}

class PassphraseIdentity implements Identity {
  readonly #passphrase: string;
  constructor(passphrase: string) {
    this.#passphrase = passphrase;
  }
  async unwrapFileKey(stanzas: Stanza[]): Promise<Uint8Array | null> {
    const stanza = stanzas[0];
    if (stanzas.length !== 1 || !stanza || stanza.args[0] !== 'scrypt' || stanza.args.length !== 3) return null;
    const logN = /^[1-9]\d?$/.test(stanza.args[2] ?? '') ? Number(stanza.args[2]) : NaN;
    const salt = Buffer.from(stanza.args[1] ?? '', 'base64');
    if (!(logN <= HIGHEST_WORK_FACTOR) || salt.length !== 16 || stanza.body.length !== 32) return null;
    const key = await stretch(this.#passphrase, salt, logN);
    const decipher = createDecipheriv(CIPHER, key, zeroNonce, { authTagLength: 16 });
    decipher.setAuthTag(stanza.body.subarray(16));
    try {
      return Buffer.concat([decipher.update(stanza.body.subarray(0, 16)), decipher.final()]);
    } catch {
      return null;
    } finally {
      key.fill(0);
    }
  }
}

/** One spelling for what looks the same on every keyboard (Unicode NFKC); spaces at the ends do not count. */
export const normalPassphrase = (typed: string): string => typed.normalize('NFKC').trim();

/** An Encrypter for one passphrase. `logN` is lowered only for random keys, which need no stretching, and in tests. */
function toPassphrase(passphrase: string, logN: number = WORK_FACTOR): Encrypter {
  const encrypter = new Encrypter();
  if (native) encrypter.addRecipient(new PassphraseRecipient(normalPassphrase(passphrase), logN));
  else {
    encrypter.setScryptWorkFactor(logN);
    encrypter.setPassphrase(normalPassphrase(passphrase));
  }
  return encrypter;
}

/** Encrypts bytes to a passphrase, as printable lines; they are left as they are and never become a string. */
export async function sealBytes(bytes: Uint8Array, passphrase: string, logN: number = WORK_FACTOR): Promise<string> {
  if (!native) return armor.encode(await toPassphrase(passphrase, logN).encrypt(bytes));
  const recipient = new PassphraseRecipient(normalPassphrase(passphrase), logN);
  return armor.encode(await sealShort(bytes, (fileKey) => recipient.wrapFileKey(fileKey)));
}

/** A Decrypter for one passphrase; its `decrypt` rejects when the passphrase is not the one. */
function fromPassphrase(passphrase: string): Decrypter {
  const decrypter = new Decrypter();
  if (native) decrypter.addIdentity(new PassphraseIdentity(normalPassphrase(passphrase)));
  else decrypter.addPassphrase(normalPassphrase(passphrase));
  return decrypter;
}

/** Encrypts a short text to a passphrase, as printable lines. */
export async function sealText(text: string, passphrase: string, logN?: number): Promise<string> {
  return armor.encode(await toPassphrase(passphrase, logN).encrypt(text));
}

/** A key of the format: HKDF-SHA-256 of the file's own key. */
const derived = (fileKey: Uint8Array, salt: Uint8Array, what: 'header' | 'payload'): Buffer =>
  Buffer.from(hkdfSync('sha256', fileKey, salt, what, 32));

/** Decrypts one sealed piece (ChaCha20-Poly1305, its tag at the end). @throws when it does not fit */
function opened(key: Uint8Array, nonce: Uint8Array, sealed: Uint8Array): Buffer {
  const decipher = createDecipheriv(CIPHER, key, nonce, { authTagLength: 16 });
  decipher.setAuthTag(sealed.subarray(-16));
  const parts = [decipher.update(sealed.subarray(0, -16)), decipher.final()];
  const whole = Buffer.concat(parts);
  for (const part of parts) part.fill(0);
  return whole;
}

const HEADER = /^(age-encryption\.org\/v1\n-> (\S+(?: \S+)+)\n([A-Za-z0-9+/]+)\n---) ([A-Za-z0-9+/]+)\n/;
/** Of the first chunk of a payload, and the last. */
const ONLY_CHUNK = Buffer.from([0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 1]);

/** A short file with one stanza, made without the library: it would leave copies of the bytes behind. At most 64 kB. */
export async function sealShort(
  bytes: Uint8Array,
  wrap: (fileKey: Uint8Array) => Promise<Stanza[]>,
): Promise<Uint8Array> {
  const fileKey = randomBytes(16);
  const nonce = randomBytes(16);
  const keys = [derived(fileKey, Buffer.alloc(0), 'header'), derived(fileKey, nonce, 'payload')];
  try {
    const [stanza] = await wrap(fileKey);
    const signed = `age-encryption.org/v1\n-> ${stanza!.args.join(' ')}\n${unpadded(stanza!.body)}\n---`;
    const mac = createHmac('sha256', keys[0]!).update(signed).digest();
    const cipher = createCipheriv(CIPHER, keys[1]!, ONLY_CHUNK, { authTagLength: 16 });
    const sealed = [cipher.update(bytes), cipher.final(), cipher.getAuthTag()];
    return Buffer.concat([Buffer.from(`${signed} ${unpadded(mac)}\n`), nonce, ...sealed]);
  } finally {
    for (const key of [fileKey, ...keys]) key.fill(0);
  }
}

/** A short file of ours, opened without the library: what it holds is never a string. Null when it has another form. */
export async function openShort(
  bytes: Uint8Array,
  unwrap: (stanza: Stanza) => Promise<Uint8Array | null>,
): Promise<Buffer | null> {
  const header = HEADER.exec(Buffer.from(bytes.subarray(0, 400)).toString('latin1'));
  if (!header) return null;
  const [whole, signed = '', args = '', body = '', mac = ''] = header;
  const stanza = new Stanza(args.split(' '), Buffer.from(body, 'base64'));
  const fileKey = await unwrap(stanza);
  if (fileKey === null) return null;
  const keys = [derived(fileKey, Buffer.alloc(0), 'header')];
  try {
    if (!createHmac('sha256', keys[0]!).update(signed).digest().equals(Buffer.from(mac, 'base64'))) return null;
    const payload = bytes.subarray(whole.length);
    keys.push(derived(fileKey, payload.subarray(0, 16), 'payload'));
    return opened(keys[1]!, ONLY_CHUNK, payload.subarray(16));
  } finally {
    for (const key of [fileKey, ...keys]) key.fill(0);
  }
}

/** The bytes of a sealed text, to zero after use; null when the passphrase is not the one. @throws when it is not age armor */
export async function openBytes(sealed: string, passphrase: string): Promise<Buffer | null> {
  const bytes = armor.decode(sealed);
  try {
    const typed = new PassphraseIdentity(normalPassphrase(passphrase));
    if (native) return await openShort(bytes, (stanza) => typed.unwrapFileKey([stanza]));
    return Buffer.from(await fromPassphrase(passphrase).decrypt(bytes));
  } catch {
    return null;
  }
}

/** The alphabet of Bech32 (BIP 173), 5 bits a character. */
export const ALPHABET = 'qpzry9x8gf2tvdw0s3jn54khce6mua7l';
export const KEY_BYTES = 32;
/** DER before the 32 bytes of an X25519 private key (RFC 8410, section 7). */
export const PKCS8 = Buffer.from('302e020100300506032b656e04220420', 'hex');

/** The 32 bytes in a Bech32 text as ASCII; its checksum is not looked at. Null when it is none. */
export function keyBytes(text: Uint8Array): Buffer | null {
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
export function derOf(identity: Uint8Array): Buffer<ArrayBuffer> | null {
  const secret = keyBytes(identity);
  if (!secret) return null;
  const der = Buffer.concat([PKCS8, secret]);
  secret.fill(0);
  return der;
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
  const der = derOf(identity);
  if (!der || !told) return false;
  try {
    const key = createPrivateKey({ key: der, format: 'der', type: 'pkcs8' });
    return createPublicKey(key).export({ type: 'spki', format: 'der' }).subarray(-KEY_BYTES).equals(told);
  } finally {
    der.fill(0);
  }
}
