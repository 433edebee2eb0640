/** Cells that a spreadsheet would run as a formula get a quote in front: after white space and in full-width form too. */
const FORMULA_START = /^[\s\ufeff]*[=+\-@\uff1d\uff0b\uff0d\uff20]|^[\t\r\n]/u;

/**
 * Rows as CSV (RFC 4180, CRLF). Numbers stay numbers; text that begins like a formula is made harmless.
 */
export function toCsv(header: readonly string[], rows: readonly (readonly (string | number | null)[])[]): string {
  const cell = (value: string | number | null): string => {
    if (value === null) return '';
    if (typeof value === 'number') return Number.isFinite(value) ? String(value) : '';
    const safe = FORMULA_START.test(value) ? `'${value}` : value;
    return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
  };
  return [header, ...rows].map((row) => row.map(cell).join(',')).join('\r\n') + '\r\n';
}
