/** Sentences of the screen that name a number: written with a gap, filled from the number in use. */
import type { ItemTable, RedFlagTable } from '../../types/items.ts';

/** "2", "1 or 2", "1 to 4". */
const span = (from: number, to: number): string =>
  from >= to ? `${to}` : `${from} ${to - from === 1 ? 'or' : 'to'} ${to}`;

/** Anchors of rated items: {3} {2} {1} are the ratings that earn this score, {0} the lowest that earns none. */
export function filledItems(table: ItemTable): ItemTable {
  const items = table.items.map((item) => {
    if (item.ratings === null) return item;
    const [three, two, one] = item.ratings.atMost;
    const words: Record<string, string> = {
      '{3}': `${three}`,
      '{2}': span(three + 1, two),
      '{1}': span(two + 1, one),
      '{0}': `${one + 1}`,
    };
    const fill = (text: string): string => text.replace(/\{[0-3]\}/g, (gap) => words[gap] ?? gap);
    const { anchors } = item;
    return { ...item, anchors: { 3: fill(anchors[3]), 2: fill(anchors[2]), 1: fill(anchors[1]), 0: fill(anchors[0]) } };
  });
  return { ...table, items };
}

/** Questions and reasons of red flags: {rating} and {rise} are those of the row that raises the flag. */
export function filledFlags(table: RedFlagTable): RedFlagTable {
  const fill = (text: string, row: RedFlagTable['fromAnswers'][number] | undefined): string =>
    text.replace('{rating}', `${row?.ratingAtLeast ?? ''}`).replace('{rise}', `${row?.riseAtLeast ?? ''}`);
  const rowOf = (flag: string): RedFlagTable['fromAnswers'][number] | undefined =>
    table.fromAnswers.find((row) => row.flag === flag && row.ratingAtLeast !== null);
  return {
    ...table,
    flags: table.flags.map((flag) => ({ ...flag, question: fill(flag.question, rowOf(flag.code)) })),
    fromAnswers: table.fromAnswers.map((row) => ({ ...row, because: fill(row.because, row) })),
  };
}
