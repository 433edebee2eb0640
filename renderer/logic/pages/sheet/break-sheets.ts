/**
 * How much room a text page takes, so that it can be fitted to one sheet or broken into several without a screen.
 * Heights are in em of the running text (1 pt = 25.4/72 mm) and are the numbers of sheet.css; widths come from the
 * font's own advance widths. Kerning only ever narrows text, so the estimate errs to the safe side.
 */
import type { Block, Doc, DocSheet, Section } from './packet.ts';
import {
  room,
  blockHeight,
  sectionTitle,
  sectionGap,
  rowsOfSections,
  rowHeight,
  headHeight,
  sheetHeight,
} from './block-heights.ts';

/** Splits a block that may be broken over sheets into its parts. */
function partsOf(block: Block): Block[] {
  if (block.kind === 'list' || block.kind === 'checks') return block.items.map((item) => ({ ...block, items: [item] }));
  if (block.kind === 'steps') return block.items.map((item) => ({ ...block, items: [item] }));
  if (block.kind === 'facts') return block.rows.map((row) => ({ ...block, rows: [row] }));
  return [block];
}

function joined(blocks: Block[], next: Block): Block[] {
  const last = blocks.at(-1);
  if (last && (last.kind === 'list' || last.kind === 'checks') && next.kind === last.kind)
    return [...blocks.slice(0, -1), { ...last, items: [...last.items, ...next.items] }];
  if (last?.kind === 'steps' && next.kind === 'steps')
    return [...blocks.slice(0, -1), { ...last, items: [...last.items, ...next.items] }];
  if (last?.kind === 'facts' && next.kind === 'facts')
    return [...blocks.slice(0, -1), { ...last, rows: [...last.rows, ...next.rows] }];
  return [...blocks, next];
}

/** Nobody signs an empty sheet: where only the signatures are left over, the section before goes along with them. */
function signedWithWords(sheets: Section[][], doc: Pick<Doc, 'sheet' | 'pt'>): void {
  const [before, last] = sheets.slice(-2);
  if (!before || !last || !last.every((section) => section.blocks.every((block) => block.kind === 'sign'))) return;
  const along = before.at(-1)!;
  if (before.length < 2 || along.beside || rowHeight([along], doc) > sheetHeight(doc) / 2) return;
  before.pop();
  last.unshift(along);
}

/** Breaks a page into sheets: between blocks, list items, steps or rows, never inside one; titles stay with their text. */
export function paginate(doc: Doc): DocSheet[] {
  const at = room(doc);
  const full = sheetHeight(doc);
  const sheets: Section[][] = [[]];
  let used = headHeight(doc);
  for (const row of rowsOfSections(doc.sections)) {
    if (row.length > 1) {
      const height = rowHeight(row, doc);
      if (used + height > full && (sheets.at(-1)!.length > 0 || sheets.length === 1)) {
        sheets.push([]);
        used = 0;
      }
      sheets.at(-1)!.push(...row.map((section) => ({ ...section })));
      used += height;
      continue;
    }
    const section = row[0]!;
    let open: Section | null = null;
    for (const part of section.blocks.flatMap(partsOf)) {
      const height = blockHeight(part, at);
      const title = open ? 0 : sectionTitle(section, at) + sectionGap;
      const current = sheets.at(-1)!;
      if (used + title + height > full && (current.length > 0 || sheets.length === 1)) {
        sheets.push([]);
        used = 0;
        open = null;
      }
      if (!open) {
        open = { key: section.key, title: section.title, blocks: [] };
        sheets.at(-1)!.push(open);
        used += sectionTitle(section, at) + sectionGap;
      }
      open.blocks = joined(open.blocks, part);
      used += height;
    }
  }
  signedWithWords(sheets, doc);
  // A section carried on says so only once.
  const seen = new Set<string>();
  return sheets.map((sections, i) => ({
    ...doc,
    type: 'doc',
    lead: i === 0 ? doc.lead : [],
    title: i === 0 ? doc.title : '',
    sections: sections.map((section) => {
      const again = seen.has(section.key);
      seen.add(section.key);
      return again ? { ...section, title: '' } : section;
    }),
    page: i + 1,
    pages: sheets.length,
  }));
}
