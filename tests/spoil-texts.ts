/** Puts words that try to be more than words into every text of a record that its schema lets be anything. */
import type { z } from 'zod';

/** What a spreadsheet, a FHIR file, a PDF or a page would have to take for its own: formulas, quotes, markup, operators. */
export const BREAKING = [
  '=HYPERLINK("http://x.example","y")',
  "+1+cmd|' /C calc'!A0",
  '-2+3',
  '@SUM(A1:A9)',
  '\t=1+1',
  '\uff1d1+1',
  '"\r\n=1+1,"',
  'a","=1+1',
  '"},{"resourceType":"Patient","id":"x"',
  '</div><script>ran=1</script>',
  ') Tj ET (x) /JS (app.alert\\(1\\)) endobj',
];

/**
 * Codes, ids, dates and choices stay: what is one word is taken for one, fields that are always free text apart.
 * @returns how many texts were spoiled, and the record with them
 */
export function withBreakingTexts<T>(record: T, schema: z.ZodType): { spoiled: T; count: number } {
  const spoiled = structuredClone(record);
  let count = 0;
  const walk = (at: unknown): void => {
    if (typeof at !== 'object' || at === null) return;
    const holder = at as Record<string, unknown>;
    for (const [key, value] of Object.entries(holder)) {
      if (typeof value !== 'string') walk(value);
      else if (value === '' || /\s/.test(value) || ['name', 'code', 'note', 'grip', 'pen', 'paper'].includes(key)) {
        holder[key] = BREAKING[count % BREAKING.length];
        if (schema.safeParse(spoiled).success) count++;
        else holder[key] = value;
      }
    }
  };
  walk(spoiled);
  return { spoiled, count };
}
