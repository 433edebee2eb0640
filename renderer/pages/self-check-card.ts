import type { PageInput } from './facts.ts';
import { paginate } from './layout.ts';
import type { Doc, DocSheet } from './model.ts';
import type { Texts } from './texts.ts';

/** A card to keep beside the paper: what to check before, after each line and at the end, and a guess to compare. */
export function selfCheckCard(input: PageInput, pt: 14 | 16 | 20, t: Texts): DocSheet[] {
  const c = t.card;
  const doc: Doc = {
    sheet: input.sheet,
    pt,
    title: c.title,
    lead: [],
    sections: [
      { key: 'before', title: c.beforeTitle, blocks: [{ kind: 'checks', items: c.before }] },
      { key: 'during', title: c.duringTitle, blocks: [{ kind: 'checks', items: c.during }] },
      { key: 'after', title: c.afterTitle, blocks: [{ kind: 'list', items: c.after }] },
      { key: 'stop', title: '', blocks: [{ kind: 'stop', title: '', items: [c.stop], call: '' }] },
    ],
    foot: t.common.deferShort,
  };
  return paginate(doc);
}
