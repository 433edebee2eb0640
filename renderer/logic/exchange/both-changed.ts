/** Two versions of one fact side by side, field by field, in words that fit a table. */

const LONGEST = 240;

const words = (value: unknown): string => {
  if (value === undefined || value === null || value === '') return 'empty';
  if (value === true) return 'yes';
  if (value === false) return 'no';
  if (Array.isArray(value) && value.length === 0) return 'none';
  const text = typeof value === 'string' || typeof value === 'number' ? String(value) : JSON.stringify(value);
  return text.length > LONGEST ? `${text.slice(0, LONGEST)} …` : text;
};

/** `readersNow` -> `readers now`. */
const label = (field: string): string => field.replace(/([A-Z])/g, (letter) => ` ${letter.toLowerCase()}`);

/**
 * @param kept JSON text of the version that stands, null = it was taken away
 * @param other that of the other side
 */
export function differences(
  kept: string | null,
  other: string | null,
): { field: string; kept: string; other: string }[] {
  if (kept === null || other === null) {
    const said = (body: string | null): string => (body === null ? 'taken away' : 'still there');
    return [{ field: 'all of it', kept: said(kept), other: said(other) }];
  }
  const [a, b] = [JSON.parse(kept) as Record<string, unknown>, JSON.parse(other) as Record<string, unknown>];
  return [...new Set([...Object.keys(a), ...Object.keys(b)])]
    .filter((field) => !['id', 'at', 'by'].includes(field) && JSON.stringify(a[field]) !== JSON.stringify(b[field]))
    .map((field) => ({ field: label(field), kept: words(a[field]), other: words(b[field]) }));
}
