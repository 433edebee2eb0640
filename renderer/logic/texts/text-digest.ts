/** FNV-1a, 32 bits, from a start value. */
export function fnv(text: string, start: number): number {
  let hash = start;
  for (let i = 0; i < text.length; i += 1) {
    hash ^= text.charCodeAt(i);
    hash = Math.imul(hash, 0x01000193);
  }
  return hash >>> 0;
}

/** 64 bits of an English text, 16 hexadecimal digits: a translation keeps those of the words it was made from. */
export const textDigest = (text: string): string =>
  [0x811c9dc5, 0x9dc5811c].map((start) => fnv(text, start).toString(16).padStart(8, '0')).join('');
