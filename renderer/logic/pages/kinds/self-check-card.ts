import { itemOfOccasion } from '../../record/writing-occasions.ts';
import { type PageInput, programOf } from '../sheet/page-facts.ts';
import { paginate } from '../sheet/break-sheets.ts';
import { docHeight, sheetHeight } from '../sheet/block-heights.ts';
import type { Doc, DocSheet } from '../sheet/packet.ts';
import type { Texts } from '../../texts/en.ts';

/** Nobody has to read a signature: a program that has nothing else to write asks no words. */
function onlySigned(input: PageInput): boolean {
  const writing = (programOf(input)?.lines ?? []).filter(({ kind }) => kind === 'writing');
  return writing.length > 0 && writing.every(({ item }) => item === itemOfOccasion.signature);
}

/** A card to keep beside the paper: what to check before, after each line and at the end, and a guess to compare. */
export function selfCheckCard(input: PageInput, pt: 14 | 16 | 20, t: Texts): DocSheet[] {
  const c = t.card;
  const signed = onlySigned(input) ? c.signed : null;
  const during = signed ? [signed.look, ...c.during.slice(1)] : c.during;
  const at = (size: 14 | 16 | 20): Doc => ({
    sheet: input.sheet,
    pt: size,
    title: c.title,
    lead: [],
    sections: [
      { key: 'before', title: c.beforeTitle, blocks: [{ kind: 'checks', items: c.before }] },
      { key: 'during', title: signed?.duringTitle ?? c.duringTitle, blocks: [{ kind: 'checks', items: during }] },
      ...(signed ? [] : [{ key: 'after', title: c.afterTitle, blocks: [{ kind: 'list' as const, items: c.after }] }]),
      { key: 'stop', title: '', blocks: [{ kind: 'stop', title: '', items: [(signed ?? c).stop], call: '' }] },
    ],
    foot: t.common.deferShort,
  });
  // It is read while writing, from beside the paper: as large as one sheet holds, never smaller than was chosen.
  const sizes = [20, 16] as const;
  const fits = sizes.find((size) => size > pt && docHeight(at(size)) <= sheetHeight(at(size)));
  return paginate(at(fits ?? pt));
}
