import { codeText, LOG_LAYOUT } from '../../../measure/index.ts';
import { seedOf } from '../../sample/seeded-choice.ts';
import { dayOf, type PageInput } from './page-facts.ts';
import type { SheetModel } from './packet.ts';

/** What a code holds of a client: the last ten digits of the id. It tells nobody anything but the caseload itself. */
export const clientInCode = (clientId: string): string => clientId.replaceAll('-', '').slice(-10);

/** Sheets that come back written on, each with the code that tells whose and which it is. */
export function coded(sheets: readonly SheetModel[], input: PageInput): SheetModel[] {
  return sheets.map((sheet, at) => {
    if (sheet.type !== 'log' && sheet.type !== 'practice') return sheet;
    const content = (seedOf(JSON.stringify(sheet)) & 0xffffff).toString(16).padStart(6, '0');
    const code = codeText({
      layout: LOG_LAYOUT,
      kind: sheet.type,
      few: sheet.type === 'log' && sheet.few,
      client: clientInCode(input.record.client.id),
      firstDay: dayOf(input),
      sheet: at + 1,
      content,
    });
    return { ...sheet, code };
  });
}
