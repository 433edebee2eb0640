/**
 * A short form of the trail's head, to print on a page and to type again: how many entries the trail has, and 60 bits
 * of the last one's hash. A history that was rewritten anywhere before that entry has another.
 */
const ALPHABET = '0123456789ABCDEFGHJKMNPQRSTVWXYZ';
const LETTERS = 12;

/** @param hash of entry number `entries`, SHA-256 in hex; '' when there is none */
export function fingerprintOf(entries: number, hash: string): string {
  if (entries === 0) return '0';
  let bits = BigInt(`0x${hash.slice(0, 15)}`);
  let code = '';
  for (let n = 0; n < LETTERS; n++) {
    code = ALPHABET[Number(bits & 31n)]! + code;
    bits >>= 5n;
  }
  return `${entries}-${(code.match(/.{4}/g) ?? []).join('-')}`;
}

/** What was typed from a page: spaces, hyphens, case, and the letters O, I and L do not matter. Null: no fingerprint. */
export function readFingerprint(typed: string): { entries: number; code: string } | null {
  const plain = typed
    .toUpperCase()
    .replace(/O/g, '0')
    .replace(/[IL]/g, '1')
    .replace(/[^0-9A-Z]/g, '');
  const match = /^(\d{1,9})([0-9A-HJKMNP-TV-Z]{12})$/.exec(plain);
  return match ? { entries: Number(match[1]), code: match[2]! } : null;
}

/** Whether the entry of that number has this hash. */
export const fits = (read: { entries: number; code: string }, hash: string): boolean =>
  fingerprintOf(read.entries, hash).replaceAll('-', '') === `${read.entries}${read.code}`;
