/** The practice that a page shows, as the print gate asks for it. */
import type { Printed } from '../../program/print-gate.ts';
import type { Packet } from './packet.ts';

/** Steps and practice sheets of a page, in their order. Pages kept in an older form name no lines. */
export function printedPractice(packet: Pick<Packet, 'sheets'>): Printed[] {
  return packet.sheets.flatMap((sheet): Printed[] =>
    sheet.type === 'practice'
      ? [{ lineIds: sheet.lineIds ?? null, title: sheet.title, kind: 'sheet' }]
      : sheet.type === 'spiral' || sheet.type === 'log'
        ? []
        : sheet.sections.flatMap((section) =>
            section.blocks.flatMap((block) =>
              block.kind === 'steps'
                ? block.items.map(({ lineId = null, title }): Printed => ({
                    lineIds: lineId === null ? null : [lineId],
                    title,
                    kind: 'step',
                  }))
                : [],
            ),
          ),
  );
}
