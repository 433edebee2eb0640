/**
 * Passphrases in the age file format (age-encryption.org/v1), with the slow part off the main thread.
 *
 * The library's own passphrase recipient stretches in JavaScript and stops everything for over a second; these two
 * are the same stanza ("scrypt", salt, log2 of the work factor) made with Node's native scrypt. Where the system's
 * cryptography lacks ChaCha20-Poly1305 the library's own is used: slower, same bytes.
 */
import { createCipheriv, createDecipheriv, getCiphers, randomBytes, scrypt } from 'node:crypto';
import { armor, Decrypter, Encrypter, Stanza, type Identity, type Recipient } from 'age-encryption';

const LABEL = 'age-encryption.org/v1/scrypt';
const CIPHER = 'chacha20-poly1305';
/** log2 of scrypt's N that age implementations use: about 0.7 s and 256 MB a try. */
const WORK_FACTOR = 18;
/** A hostile file must not make us stretch for minutes. */
const HIGHEST_WORK_FACTOR = 20;

const native = getCiphers().includes(CIPHER);
const zeroNonce = Buffer.alloc(12);

function stretch(passphrase: string, salt: Uint8Array, logN: number): Promise<Buffer> {
  const labelled = Buffer.concat([Buffer.from(LABEL), salt]);
  const options = { N: 2 ** logN, r: 8, p: 1, maxmem: 2 ** (logN + 11) };
  return new Promise((resolve, reject) => {
    scrypt(passphrase, labelled, 32, options, (error, key) => (error ? reject(error) : resolve(key)));
  });
}

const unpadded = (bytes: Uint8Array): string => Buffer.from(bytes).toString('base64').replace(/=+$/, '');

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

/** Null when the passphrase is not the one. @throws when the text is not age armor */
export async function openText(sealed: string, passphrase: string): Promise<string | null> {
  const bytes = armor.decode(sealed);
  try {
    return await fromPassphrase(passphrase).decrypt(bytes, 'text');
  } catch {
    return null;
  }
}
