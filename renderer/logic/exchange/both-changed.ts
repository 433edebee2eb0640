/** Two versions of one fact side by side, field by field, in words that fit a table. */

import type { Told } from '../texts/screens/en/screens-en.ts';

type Words = Told['trail'];

const LONGEST = 240;

const shown = (value: unknown, words: Words): string => {
  if (value === undefined || value === null || value === '') return words.empty;
  if (value === true) return words.yes;
  if (value === false) return words.no;
  if (Array.isArray(value) && value.length === 0) return words.none;
  const text = typeof value === 'string' || typeof value === 'number' ? String(value) : JSON.stringify(value);
  return text.length > LONGEST ? `${text.slice(0, LONGEST)} …` : text;
};

/** `readersNow` -> `readers now`. */
const label = (field: string, { fields }: Words): string =>
  (fields as Readonly<Record<string, string>>)[field] ??
  field.replace(/([A-Z])/g, (letter) => ` ${letter.toLowerCase()}`);

/**
 * @param kept JSON text of the version that stands, null = it was taken away
 * @param other that of the other side
 */
export function differences(
  kept: string | null,
  other: string | null,
  words: Words,
): { field: string; kept: string; other: string }[] {
  if (kept === null || other === null) {
    const said = (body: string | null): string => (body === null ? words.takenAway : words.stillThere);
    return [{ field: words.allOfIt, kept: said(kept), other: said(other) }];
  }
  const [a, b] = [JSON.parse(kept) as Record<string, unknown>, JSON.parse(other) as Record<string, unknown>];
  return [...new Set([...Object.keys(a), ...Object.keys(b)])]
    .filter((field) => !['id', 'at', 'by'].includes(field) && JSON.stringify(a[field]) !== JSON.stringify(b[field]))
    .map((field) => ({ field: label(field, words), kept: shown(a[field], words), other: shown(b[field], words) }));
}
