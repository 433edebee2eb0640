/**
 * One backup file: a tar with READ-ME.txt, key.json (the key file), manifest.age and caseload.age, both encrypted
 * to the caseload's own key in the age format. To open one without Fairhand: unpack it, save the "passphrase" text
 * of key.json as identity.age, then `age -d -i identity.age caseload.age`; that is a tar of JSON lines and pictures.
 */
import { Decrypter } from 'age-encryption';
import { createReadStream, closeSync, openSync, readSync, statSync } from 'node:fs';
import { Manifest } from '../../../db/dump.ts';
import { parseKeyFile, type KeyFile } from '../../../db/key-file.ts';
import { decryptingKey } from '../../../db/keys/age-keys.ts';
import { Refusal } from '../../contract/envelope.ts';
import { chunksOf, streamOf } from './streams.ts';
import { BLOCK, paddingAfter, readTarHeader, TarError } from './tar.ts';

export const MEMBERS = { readMe: 'READ-ME.txt', key: 'key.json', manifest: 'manifest.age', caseload: 'caseload.age' };

export const READ_ME = `This is a backup of a Fairhand caseload. It is encrypted; nothing in it can be read without the passphrase.

To restore it, use Restore in Fairhand. To open it without Fairhand, with any program for the age format
(age-encryption.org/v1):
  1. Unpack this file; it is a tar archive.
  2. Save the text "passphrase" of key.json, with real line ends, as identity.age.
  3. age -d -i identity.age caseload.age > caseload.tar     (asks for the passphrase of that day)
  4. Unpack caseload.tar: rows/ holds the records as JSON lines, blobs/ the pictures as they were added.
In a backup that was made by itself the pictures lie beside it, in the folder pictures: pictures.json of its
caseload.tar says which is which, and each opens with the same identity.age.
The text "recovery" of key.json opens with the recovery key of the printed sheet instead.

Where key.json lists "people", each has a key of her own. Save the text "own" of one of them as own.age and her text
"secret" as secret.age, then:
  age -d own.age > own.txt                          (asks for her passphrase of that day)
  age -d -i own.txt secret.age > identity.txt
  age -d -i identity.txt caseload.age > caseload.tar
The texts "own" and "secret" under "recovery" open with the recovery key in the same way.
`;

/** Where a member lies in the file, in bytes. */
interface Place {
  offset: number;
  size: number;
}

export interface Container {
  file: string;
  bytes: number;
  key: KeyFile;
  manifest: Place;
  caseload: Place;
}

/** Key file and manifest are small; more is no backup of ours. Bytes. */
const LARGEST_KEY = 64 * 1024;
const LARGEST_MANIFEST = 16 * 1024 * 1024;

function read(handle: number, offset: number, size: number): Buffer {
  const buffer = Buffer.alloc(size);
  if (readSync(handle, buffer, 0, size, offset) !== size) throw new TarError('the file breaks off');
  return buffer;
}

/** Looks at the parts of a backup file without decrypting. @throws Refusal not-a-backup */
export async function openContainer(file: string): Promise<Container> {
  let handle: number | null = null;
  try {
    const bytes = statSync(file).size;
    handle = openSync(file, 'r');
    const places = new Map<string, Place>();
    // At most the members we know: a long list of files is somebody else's tar.
    for (let offset = 0; places.size < 8;) {
      const header = await readTarHeader(read(handle, offset, BLOCK));
      if (header === null) break;
      const place = { offset: offset + BLOCK, size: header.size };
      offset = place.offset + header.size + paddingAfter(header.size);
      if (offset > bytes) throw new TarError('the file breaks off');
      places.set(header.name, place);
    }
    const [key, manifest, caseload] = [MEMBERS.key, MEMBERS.manifest, MEMBERS.caseload].map((name) => places.get(name));
    if (!key || !manifest || !caseload) throw new TarError('a part is missing');
    if (key.size > LARGEST_KEY || manifest.size > LARGEST_MANIFEST) throw new TarError('too large');
    const parsed = parseKeyFile(read(handle, key.offset, key.size).toString('utf8'));
    if (parsed.state !== 'ok') throw new TarError('the key is damaged');
    return { file, bytes, key: parsed.file, manifest, caseload };
  } catch (error) {
    if (error instanceof TarError) throw new Refusal('not-a-backup');
    const code = (error as NodeJS.ErrnoException).code;
    if (code === 'ENOENT' || code === 'EISDIR' || code === 'EACCES') throw new Refusal('not-a-backup');
    throw error;
  } finally {
    if (handle !== null) closeSync(handle);
  }
}

/** Plaintext of one member, streamed. Rejects with Refusal wrong-passphrase when the key is another's. */
export async function* decrypted(container: Container, place: Place, identity: Uint8Array): AsyncGenerator<Uint8Array> {
  const { file } = container;
  const decrypter = new Decrypter();
  decrypter.addIdentity(await decryptingKey(identity));
  const source = createReadStream(file, { start: place.offset, end: place.offset + place.size - 1 });
  const bytes = streamOf(source as AsyncIterable<Uint8Array>);
  let plain: ReadableStream<Uint8Array>;
  try {
    plain = await decrypter.decrypt(bytes);
  } catch (error) {
    source.destroy();
    const noMatch = error instanceof Error && /no identity matched/.test(error.message);
    throw new Refusal(noMatch ? 'wrong-passphrase' : 'not-a-backup');
  }
  try {
    yield* chunksOf(plain);
  } catch {
    // Every 64 kB carry their own seal: a changed byte ends here.
    throw new Refusal('not-a-backup');
  } finally {
    source.destroy();
  }
}

/** What a backup holds, from its small member. @throws Refusal not-a-backup, wrong-passphrase */
export async function readManifest(container: Container, identity: Uint8Array): Promise<Manifest> {
  const parts: Uint8Array[] = [];
  for await (const chunk of decrypted(container, container.manifest, identity)) parts.push(chunk);
  try {
    return Manifest.parse(JSON.parse(Buffer.concat(parts).toString('utf8')));
  } catch {
    throw new Refusal('not-a-backup');
  }
}
