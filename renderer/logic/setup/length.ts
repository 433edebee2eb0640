/** Lengths in millimeters, shown and typed in millimeters or inches. */
export type LengthUnit = 'mm' | 'in';

const MM_PER_INCH = 25.4; // exact, by definition

/** Whole millimeters, or inches to the nearest eighth as on a tape: 394 -> "15 1/2 in". */
export function formatLength(mm: number, unit: LengthUnit): string {
  if (unit === 'mm') return `${Math.round(mm)} mm`;
  const eighths = Math.round((Math.abs(mm) / MM_PER_INCH) * 8);
  const sign = mm < 0 && eighths > 0 ? '-' : '';
  const whole = Math.floor(eighths / 8);
  let top = eighths % 8;
  let bottom = 8;
  while (top > 0 && top % 2 === 0) {
    top /= 2;
    bottom /= 2;
  }
  const fraction = top === 0 ? '' : `${top}/${bottom}`;
  return `${sign}${[whole > 0 || fraction === '' ? String(whole) : '', fraction].filter(Boolean).join(' ')} in`;
}

/**
 * Reads "395", "15.5", "15,5" or "15 1/2". The unit may be written behind; else `unit` holds.
 * @returns millimeters, or null when it is no length
 */
export function parseLength(text: string, unit: LengthUnit): number | null {
  const match = /^\s*(\d+(?:[.,]\d+)?)?(?:\s*(\d+)\/(\d+))?\s*(mm|cm|in|"|”)?\s*$/i.exec(text);
  if (!match || (match[1] === undefined && match[2] === undefined)) return null;
  const whole = match[1] === undefined ? 0 : Number(match[1].replace(',', '.'));
  const bottom = match[3] === undefined ? 1 : Number(match[3]);
  // "15 1/2" reads as a number and a fraction; "151/2" and "1/0" are slips.
  if (bottom === 0 || (match[1] !== undefined && match[2] !== undefined && !/\d\s+\d+\//.test(text))) return null;
  const value = whole + (match[2] === undefined ? 0 : Number(match[2]) / bottom);
  const written = match[4]?.toLowerCase() ?? unit;
  return written === 'mm' ? value : written === 'cm' ? value * 10 : value * MM_PER_INCH;
}
