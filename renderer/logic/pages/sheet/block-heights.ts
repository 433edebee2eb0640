import { breakLines } from '../practice/letter-styles.ts';
import { withWholeAmounts } from '../../texts/whole-amounts.ts';
import type { Block, Doc, Section } from './packet.ts';
import { sheetSizes } from '../practice/sheet-sizes.ts';

const mmPerPt = 25.4 / 72;
const line = 1.3;

/** Margins of text pages and the room kept for the foot, mm. */
const textMargins = { side: 15, top: 15, bottom: 14, foot: 6.5 } as const;

/** The set-up drawing on paper. */
const figureMm = { width: 66, height: 44.5 } as const;

/** In a narrower column the words stand under the drawing; sheet.css says the same. */
const narrowMm = 110;

/** Between two sections that stand side by side. */
const columnGapMm = 7;

/** A line drawing beside a practice line. */
const drawingMm = { width: 26, height: 19.5 } as const;

export interface Room {
  /** mm per em. */
  em: number;
  /** Width of the text column in em. */
  width: number;
}

export function room(doc: Pick<Doc, 'sheet' | 'pt'>): Room {
  const em = doc.pt * mmPerPt;
  return { em, width: (sheetSizes[doc.sheet].widthMm - 2 * textMargins.side) / em };
}

const rows = (text: string, width: number, bold = false): number =>
  breakLines(withWholeAmounts(text), bold ? 'page-bold' : 'page', 1, width * 0.995).length;

/** Height of one block in em, with its distance to the next. */
export function blockHeight(block: Block, { em, width }: Room): number {
  switch (block.kind) {
    case 'text':
      return rows(block.text, width, block.strong) * line + 0.35;
    case 'small':
      // Small in weight, not in size: it prints as large as the rest.
      return rows(block.text, width) * line + 0.3;
    case 'list':
      return block.items.reduce((sum, item) => sum + rows(item, width - 0.95) * line + 0.15, 0);
    case 'checks':
      return block.items.reduce((sum, item) => sum + rows(item, width - 2) * line + 0.35, 0);
    case 'steps':
      return block.items.reduce((sum, step) => {
        const inner = width - 1.1 - (step.drawing ? (drawingMm.width + 4) / em : 0);
        const first = step.dose ? `${step.title}: ${step.dose}` : step.title;
        const text = step.text ? rows(step.text, inner) * line : 0;
        const cautions = step.cautions.reduce((h, caution) => h + rows(caution, inner - 1.4) * line, 0);
        const words = rows(first, inner, true) * line + text + cautions;
        return sum + Math.max(words, step.drawing ? drawingMm.height / em : 0) + 0.32;
      }, 0);
    case 'facts':
      return block.rows.reduce(
        (sum, row) => sum + Math.max(rows(row.value, width * 0.66 - 1), rows(row.label, width * 0.34 - 1)) * line + 0.2,
        0,
      );
    case 'stop': {
      const inner = width - 1.8;
      const items = block.items.reduce((sum, item) => sum + rows(item, inner - 0.95) * line + 0.15, 0);
      const title = block.title ? rows(block.title, inner, true) * line + 0.15 : 0;
      const call = block.call ? rows(block.call, inner, true) * line + 0.2 : 0;
      return title + items + call + 1.3;
    }
    case 'pictures': {
      const { captionMm } = block;
      if (captionMm === undefined)
        return block.pictures.reduce((sum, picture) => sum + picture.heightMm / em + line * 0.85 + 0.6, 0.2);
      return block.pictures.reduce((sum, picture) => {
        const caption = rows(picture.caption, captionMm / em / 0.85) * line * 0.85;
        return sum + Math.max(picture.heightMm / em + 0.1, caption) + 0.4;
      }, 0.2);
    }
    case 'setup': {
      const narrow = width * em < narrowMm;
      const room = narrow ? width : width - (figureMm.width + 5) / em;
      const words = block.lines.reduce((sum, text) => sum + rows(text, room) * line + 0.2, 0);
      return (narrow ? figureMm.height / em + 1 / em + words : Math.max(figureMm.height / em, words)) + 0.4;
    }
    case 'table':
      return ((block.rows.length + 1) * block.rowMm) / em + 0.8;
    case 'sign':
      return block.labels.length * (13 / em) + 0.5;
    case 'cut':
      return 10 / em;
  }
}

export const sectionTitle = (section: Section, { width }: Room): number =>
  section.title ? rows(section.title, width / 1.12, true) * 1.3 * 1.12 + 0.3 : 0;
export const sectionGap = 0.35;

const half = ({ em, width }: Room): Room => ({ em, width: (width - columnGapMm / em) / 2 });

/** Sections as they stand on the page: one over the whole width, or two side by side. */
export function rowsOfSections<S extends Pick<Section, 'beside'>>(sections: readonly S[]): S[][] {
  const out: S[][] = [];
  for (const section of sections) {
    const last = out.at(-1);
    if (section.beside && last?.length === 1) last.push(section);
    else out.push([section]);
  }
  return out;
}

const heightAt = (section: Section, at: Room): number =>
  section.blocks.reduce((sum, block) => sum + blockHeight(block, at), sectionTitle(section, at) + sectionGap);

/** Height of sections that stand side by side, or of one, in em. */
export function rowHeight(row: readonly Section[], doc: Pick<Doc, 'sheet' | 'pt'>): number {
  const at = room(doc);
  return Math.max(...row.map((section) => heightAt(section, row.length > 1 ? half(at) : at)));
}

/** Height of title and lead in em. */
export function headHeight(doc: Doc): number {
  const { em, width } = room(doc);
  const titlePt = 22 * mmPerPt;
  if (!doc.title) return 0;
  const title = (rows(doc.title, (width * em) / titlePt, true) * titlePt * 1.2) / em;
  let lead = 0;
  for (let i = 0; i < doc.lead.length; i += 3) {
    const values = doc.lead.slice(i, i + 3).map((pair) => rows(pair.value, (width - 2) / 3, true));
    lead += 1.05 + Math.max(...values) * 1.3;
  }
  return title + lead + 1.05;
}

/** Height between margins and foot in em. */
export function sheetHeight(doc: Pick<Doc, 'sheet' | 'pt'>): number {
  const { em } = room(doc);
  return (sheetSizes[doc.sheet].heightMm - textMargins.top - textMargins.bottom - textMargins.foot) / em;
}

/** Height of the whole page in em; it fits one sheet when this is at most `sheetHeight`. */
export function docHeight(doc: Doc): number {
  return rowsOfSections(doc.sections).reduce((sum, row) => sum + rowHeight(row, doc), headHeight(doc));
}
