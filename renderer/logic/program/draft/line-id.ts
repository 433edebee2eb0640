import { fnv } from '../../texts/text-digest.ts';

/** A UUID (version 8, made by rule) that is the same for the same words: drafts can be compared line by line. */
export function lineId(words: string): string {
  const hex = [0x811c9dc5, 0x9dc5811c, 0x1c9dc581, 0xc5811c9d]
    .map((start) => fnv(words, start).toString(16).padStart(8, '0'))
    .join('');
  const variant = ((Number.parseInt(hex.charAt(16), 16) & 0x3) | 0x8).toString(16);
  return `${hex.slice(0, 8)}-${hex.slice(8, 12)}-8${hex.slice(13, 16)}-${variant}${hex.slice(17, 20)}-${hex.slice(20, 32)}`;
}
