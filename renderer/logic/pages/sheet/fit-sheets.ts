import { paginate } from './break-sheets.ts';
import { docHeight, sheetHeight } from './block-heights.ts';
import type { Block, Doc, DocSheet } from './packet.ts';

/** One way to make a page shorter: what it does, and the sentence the therapist reads when it was needed. */
export interface Shortening {
  says: string;
  /** What it helps against; 'both' where not given. */
  against?: 'height' | 'words' | 'both';
  apply: (doc: Doc) => Doc;
}

export interface Fitted {
  sheets: DocSheet[];
  /** What was left out, in the order it was left out. */
  shortened: string[];
  words: number;
  fits: boolean;
}

const stepTexts = (block: Block): string[] => {
  switch (block.kind) {
    case 'text':
    case 'small':
      return [block.text];
    case 'list':
    case 'checks':
      return block.items;
    case 'steps':
      return block.items.flatMap((s) => [s.title, s.text, s.dose, ...s.cautions]);
    case 'facts':
      return block.rows.flatMap((r) => [r.label, r.value]);
    case 'stop':
      return [block.title, ...block.items, block.call];
    case 'pictures':
      return block.pictures.map((p) => p.caption);
    case 'setup':
      return block.lines;
    case 'table':
      return [...block.head, ...block.rows.flat()];
    case 'sign':
      return block.labels;
    case 'cut':
      return [];
  }
};

/** All texts of a page in reading order. */
export function textsOf(doc: Doc): string[] {
  return [
    doc.title,
    ...doc.lead.flatMap((l) => [l.label, l.value]),
    ...doc.sections.flatMap((s) => [s.title, ...s.blocks.flatMap(stepTexts)]),
    doc.foot,
  ].filter((text) => text.trim() !== '');
}

/** Words of a page's sections: what somebody has to read, without title, names, dates and foot. */
export function countWords(doc: Pick<Doc, 'sections'>): number {
  return doc.sections
    .flatMap((s) => [s.title, ...s.blocks.flatMap(stepTexts)])
    .reduce((sum, text) => sum + text.split(/\s+/).filter(Boolean).length, 0);
}

/**
 * Shortens a page step by step until it fits one sheet and the word limit. Steps that change nothing are passed over.
 * What no step brings onto one sheet gets the back of it too, with as little left out as that takes.
 * @param wordLimit null = any number of words
 */
export function fitSheet(doc: Doc, shortenings: readonly Shortening[], wordLimit: number | null): Fitted {
  const one = shortened(doc, shortenings, wordLimit, (d) => docHeight(d) > sheetHeight(d));
  if (one.fits || one.sheets.length === 1) return one;
  return shortened(doc, shortenings, wordLimit, (d) => paginate(d).length > 2);
}

function shortened(
  doc: Doc,
  shortenings: readonly Shortening[],
  wordLimit: number | null,
  tooHigh: (doc: Doc) => boolean,
): Fitted {
  const tooWordy = (d: Doc) => wordLimit !== null && countWords(d) > wordLimit;
  const applied: Shortening[] = [];
  let current = doc;
  for (const step of shortenings) {
    const high = tooHigh(current);
    const wordy = tooWordy(current);
    if (!high && !wordy) break;
    if ((step.against === 'height' && !high) || (step.against === 'words' && !wordy)) continue;
    const next = step.apply(current);
    if (JSON.stringify(next) === JSON.stringify(current)) continue;
    current = next;
    applied.push(step);
  }
  // What a later, larger cut made needless comes back, the most missed first.
  for (const step of [...applied].reverse()) {
    const others = applied.filter((other) => other !== step);
    const longer = others.reduce((d, other) => other.apply(d), doc);
    if (tooHigh(longer) || tooWordy(longer)) continue;
    applied.splice(applied.indexOf(step), 1);
    current = longer;
  }
  const says = [...new Set(applied.map((step) => step.says))];
  const fits = !tooHigh(current) && !tooWordy(current);
  return { sheets: paginate(current), shortened: says, words: countWords(current), fits };
}

/** A copy of the page without empty sections, and with one section's blocks changed. */
export function changeSection(doc: Doc, key: string, change: (blocks: Block[]) => Block[]): Doc {
  const sections = doc.sections
    .map((section) => (section.key === key ? { ...section, blocks: change(section.blocks) } : section))
    .filter((section) => section.blocks.length > 0);
  return { ...doc, sections };
}
