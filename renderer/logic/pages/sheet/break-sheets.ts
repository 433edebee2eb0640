/**
 * How much room a text page takes, so that it can be fitted to one sheet or broken into several without a screen.
 * Heights are in em of the running text (1 pt = 25.4/72 mm) and are the numbers of sheet.css; widths come from the
 * font's own advance widths. Kerning only ever narrows text, so the estimate errs to the safe side.
 */
import type { Block, Doc, DocSheet, Section } from './packet.ts';
import {
  type Room,
  room,
  blockHeight,
  sectionTitle,
  sectionGap,
  rowsOfSections,
  rowHeight,
  headHeight,
  sheetHeight,
} from './block-heights.ts';

type Stop = Extract<Block, { kind: 'stop' }>;

/** A stop box is one piece; one that would fill most of a sheet is broken between its sentences. */
const STOP_SHARE = 0.6;
/** A section of at most this share of a sheet stays whole where that costs no sheet. */
const WHOLE_SHARE = 0.4;
/** Air of a stop box around its words, em; sheet.css says the same. */
const BOX = 1.3;

/** The title goes on with the box; two sentences stay with it, the last one with whom to call. */
function partsOfStop(block: Stop): Block[] {
  const { items, call } = block;
  const parts = items.slice(1, -1).map((item, i) => (i === 0 ? [items[0]!, item] : [item]));
  return [...parts, items.slice(-1)].map((some, i, all) => ({
    ...block,
    items: some,
    call: i === all.length - 1 ? call : '',
  }));
}

/** Splits a block that may be broken over sheets into its parts. */
function partsOf(block: Block, at: Room, full: number): Block[] {
  if (block.kind === 'stop' && block.items.length > 3 && blockHeight(block, at) > STOP_SHARE * full)
    return partsOfStop(block);
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
  if (last?.kind === 'stop' && next.kind === 'stop')
    return [...blocks.slice(0, -1), { ...last, items: [...last.items, ...next.items], call: next.call }];
  return [...blocks, next];
}

/** Height of a part, without the frame and title of the box that it goes on with. */
function partHeight(part: Block, before: Block | undefined, at: Room): number {
  if (part.kind !== 'stop' || before?.kind !== 'stop') return blockHeight(part, at);
  return blockHeight({ ...part, title: '' }, at) - BOX;
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
  const whole = broken(doc, true);
  if (whole.length === 1) return whole;
  const filled = broken(doc, false);
  return whole.length > filled.length ? filled : whole;
}

/** @param whole small sections are not broken */
function broken(doc: Doc, whole: boolean): DocSheet[] {
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
    const parts = section.blocks.flatMap((block) => partsOf(block, at, full));
    const wholeHeight = rowHeight([section], doc);
    for (const [i, part] of parts.entries()) {
      const height = partHeight(part, open?.blocks.at(-1), at);
      const title = open ? 0 : sectionTitle(section, at) + sectionGap;
      const current = sheets.at(-1)!;
      // No title, and no list, begins with a single line at the foot of a sheet.
      const next = parts[i + 1];
      const along = i === 0 && part.kind === 'list' && next ? blockHeight(next, at) : 0;
      const kept = whole && i === 0 && wholeHeight <= WHOLE_SHARE * full ? wholeHeight - title - height : along;
      if (used + title + height + kept > full && (current.length > 0 || sheets.length === 1)) {
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
