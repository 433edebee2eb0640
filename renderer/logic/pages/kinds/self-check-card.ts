import type { PageInput } from '../sheet/page-facts.ts';
import { paginate } from '../sheet/break-sheets.ts';
import { docHeight, sheetHeight } from '../sheet/block-heights.ts';
import type { Doc, DocSheet } from '../sheet/packet.ts';
import type { Texts } from '../../texts/en.ts';

/** A card to keep beside the paper: what to check before, after each line and at the end, and a guess to compare. */
export function selfCheckCard(input: PageInput, pt: 14 | 16 | 20, t: Texts): DocSheet[] {
  const c = t.card;
  const at = (size: 14 | 16 | 20): Doc => ({
    sheet: input.sheet,
    pt: size,
    title: c.title,
    lead: [],
    sections: [
      { key: 'before', title: c.beforeTitle, blocks: [{ kind: 'checks', items: c.before }] },
      { key: 'during', title: c.duringTitle, blocks: [{ kind: 'checks', items: c.during }] },
      { key: 'after', title: c.afterTitle, blocks: [{ kind: 'list', items: c.after }] },
      { key: 'stop', title: '', blocks: [{ kind: 'stop', title: '', items: [c.stop], call: '' }] },
    ],
    foot: t.common.deferShort,
  });
  // It is read while writing, from beside the paper: as large as one sheet holds, never smaller than was chosen.
  const sizes = [20, 16] as const;
  const fits = sizes.find((size) => size > pt && docHeight(at(size)) <= sheetHeight(at(size)));
  return paginate(at(fits ?? pt));
}
