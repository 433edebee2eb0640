/**
 * Files in the age format (age-encryption.org/v1) that lie in memory whole, sealed by a passphrase with the slow part off
 * the main thread; those sealed to a key pair are in keys/age-keys.ts.
 *
 * The library's own passphrase recipient stretches in JavaScript and stops everything for over a second; this is the
 * same stanza ("scrypt", salt, log2 of the work factor) made with Node's native scrypt. Where the system's
 * cryptography lacks ChaCha20-Poly1305 the library's own is used: slower, same bytes.
 */
import { createCipheriv, createDecipheriv, createHmac, getCiphers, hkdfSync, randomBytes, scrypt } from 'node:crypto';
import { armor, Decrypter, Encrypter, Stanza } from 'age-encryption';

const LABEL = 'age-encryption.org/v1/scrypt';
const CIPHER = 'chacha20-poly1305';
/** Bytes that a seal adds to a piece. */
const TAG = 16;
/** log2 of scrypt's N that age implementations use: about 0.7 s and 256 MB a try. */
const WORK_FACTOR = 18;
/** A hostile file must not make us stretch for minutes. */
const HIGHEST_WORK_FACTOR = 20;

/** The system's cryptography has the cipher of the format. */
export const native = getCiphers().includes(CIPHER);
/** Of a file's own key in its stanza: the key that seals it is used once. */
export const ZERO_NONCE = Buffer.alloc(12);

function stretch(passphrase: string, salt: Uint8Array, logN: number): Promise<Buffer> {
  const labelled = Buffer.concat([Buffer.from(LABEL), salt]);
  const options = { N: 2 ** logN, r: 8, p: 1, maxmem: 2 ** (logN + 11) };
  return new Promise((resolve, reject) => {
    scrypt(passphrase, labelled, 32, options, (error, key) => (error ? reject(error) : resolve(key)));
  });
}

export const unpadded = (bytes: Uint8Array): string => Buffer.from(bytes).toString('base64').replace(/=+$/, '');

/** Encrypts one piece (ChaCha20-Poly1305), its tag at the end; the piece is left as it is. */
export function sealed(key: Uint8Array, nonce: Uint8Array, bytes: Uint8Array): Buffer {
  const cipher = createCipheriv(CIPHER, key, nonce, { authTagLength: TAG });
  return Buffer.concat([cipher.update(bytes), cipher.final(), cipher.getAuthTag()]);
}

/** Decrypts one sealed piece. @throws when it does not fit */
export function opened(key: Uint8Array, nonce: Uint8Array, piece: Uint8Array): Buffer {
  const decipher = createDecipheriv(CIPHER, key, nonce, { authTagLength: TAG });
  decipher.setAuthTag(piece.subarray(-TAG));
  return joined([decipher.update(piece.subarray(0, -TAG)), decipher.final()]);
}

/** The stanza of a passphrase. */
async function wrapBy(passphrase: string, logN: number, fileKey: Uint8Array): Promise<Stanza> {
  const salt = randomBytes(16);
  const key = await stretch(passphrase, salt, logN);
  const body = sealed(key, ZERO_NONCE, fileKey);
  key.fill(0);
  return new Stanza(['scrypt', unpadded(salt), String(logN)], body);
}

/** The file's own key; null when the stanza is of another kind. @throws when the passphrase is not the one */
async function unwrapBy(passphrase: string, { args, body }: Stanza): Promise<Uint8Array | null> {
  if (args[0] !== 'scrypt' || args.length !== 3) return null;
  const logN = /^[1-9]\d?$/.test(args[2] ?? '') ? Number(args[2]) : NaN;
  const salt = Buffer.from(args[1] ?? '', 'base64');
  if (!(logN <= HIGHEST_WORK_FACTOR) || salt.length !== 16 || body.length !== 32) return null;
  const key = await stretch(passphrase, salt, logN);
  try {
    return opened(key, ZERO_NONCE, body);
  } finally {
    key.fill(0);
  }
}

/** One spelling for what looks the same on every keyboard (Unicode NFKC); spaces at the ends do not count. */
export const normalPassphrase = (typed: string): string => typed.normalize('NFKC').trim();

/**
 * Encrypts bytes to a passphrase, as printable lines; they are left as they are and never become a string. `logN` is
 * lowered only for random keys, which need no stretching, and in tests.
 */
export async function sealBytes(bytes: Uint8Array, typed: string, logN: number = WORK_FACTOR): Promise<string> {
  const passphrase = normalPassphrase(typed);
  if (native) return armor.encode(await sealWhole(bytes, (fileKey) => wrapBy(passphrase, logN, fileKey)));
  const encrypter = new Encrypter();
  encrypter.setScryptWorkFactor(logN);
  encrypter.setPassphrase(passphrase);
  return armor.encode(await encrypter.encrypt(bytes));
}

/** The bytes of a sealed text, to zero after use; null when the passphrase is not the one. @throws when it is not age armor */
export async function openBytes(text: string, typed: string): Promise<Buffer | null> {
  const bytes = armor.decode(text);
  const passphrase = normalPassphrase(typed);
  try {
    if (native) return await openWhole(bytes, (stanza) => unwrapBy(passphrase, stanza));
    const decrypter = new Decrypter();
    decrypter.addPassphrase(passphrase);
    return Buffer.from(await decrypter.decrypt(bytes));
  } catch {
    return null;
  }
}

/** A key of the format: HKDF-SHA-256 of the file's own key. */
const derived = (fileKey: Uint8Array, salt: Uint8Array, what: 'header' | 'payload'): Buffer =>
  Buffer.from(hkdfSync('sha256', fileKey, salt, what, 32));

const HEADER = /^(age-encryption\.org\/v1\n-> (\S+(?: \S+)+)\n([A-Za-z0-9+/]+)\n---) ([A-Za-z0-9+/]+)\n/;
/** Plain bytes of one chunk of a payload. */
const CHUNK = 65_536;

/** Of chunk `n` (from 0): a counter of 11 bytes and whether it is the last. A file in memory has fewer than 2 ** 32. */
function chunkNonce(n: number, last: boolean): Buffer {
  const nonce = Buffer.alloc(12);
  nonce.writeUInt32BE(n, 7);
  nonce[11] = last ? 1 : 0;
  return nonce;
}

/** What each chunk becomes, in order; no bytes are one chunk too. @param size of a chunk that is not the last */
function chunkwise(bytes: Uint8Array, size: number, each: (chunk: Uint8Array, nonce: Buffer) => Buffer): Buffer[] {
  const count = Math.max(1, Math.ceil(bytes.length / size));
  return Array.from({ length: count }, (_, n) =>
    each(bytes.subarray(n * size, (n + 1) * size), chunkNonce(n, n === count - 1)),
  );
}

/** Joins parts; they are zeroed. */
function joined(parts: readonly Buffer[]): Buffer {
  const whole = Buffer.concat(parts);
  for (const part of parts) part.fill(0);
  return whole;
}

/** A file with one stanza, made without the library: it leaves copies of the bytes behind and is ten times slower. */
export async function sealWhole(
  bytes: Uint8Array,
  wrap: (fileKey: Uint8Array) => Promise<Stanza>,
): Promise<Uint8Array> {
  const fileKey = randomBytes(16);
  const nonce = randomBytes(16);
  const keys = [derived(fileKey, Buffer.alloc(0), 'header'), derived(fileKey, nonce, 'payload')];
  try {
    const { args, body } = await wrap(fileKey);
    const signed = `age-encryption.org/v1\n-> ${args.join(' ')}\n${unpadded(body)}\n---`;
    const mac = createHmac('sha256', keys[0]!).update(signed).digest();
    const payload = chunkwise(bytes, CHUNK, (chunk, count) => sealed(keys[1]!, count, chunk));
    return Buffer.concat([Buffer.from(`${signed} ${unpadded(mac)}\n`), nonce, ...payload]);
  } finally {
    for (const key of [fileKey, ...keys]) key.fill(0);
  }
}

/** A file of ours, opened without the library: what it holds is never a string. Null when it has another form. @throws when it was changed or cut */
export async function openWhole(
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
    return joined(chunkwise(payload.subarray(16), CHUNK + TAG, (chunk, count) => opened(keys[1]!, count, chunk)));
  } finally {
    for (const key of [fileKey, ...keys]) key.fill(0);
  }
}
