import type { TrailRow } from '../db/index.ts';
import { onceFor } from '../db/types/rule-table/once-for.ts';
import { retold } from '../renderer/logic/texts/retold.ts';
import type { Told } from '../renderer/logic/texts/screens/en/screens-en.ts';
import { toldEnglish } from '../renderer/logic/texts/screens/told-english.ts';

type Words = Told['trail'];

export const kindWord = (kind: string, { kinds }: Words): string =>
  (kinds as Readonly<Record<string, string>>)[kind] ?? kind;

/** Fields that changed between two versions of a fact, by name; values stay on the record's own screens. */
function changedFields(row: TrailRow, { fields }: Words): string {
  const { before, after } = row;
  if (typeof before !== 'object' || typeof after !== 'object' || !before || !after) return '';
  const [was, is] = [before as Record<string, unknown>, after as Record<string, unknown>];
  return Object.keys(is)
    .filter((name) => name !== 'at' && name !== 'by' && JSON.stringify(was[name]) !== JSON.stringify(is[name]))
    .map((name) => (fields as Readonly<Record<string, string>>)[name] ?? name)
    .join(', ');
}

/** What left the program, from the English that the entry keeps. */
const exportWords = onceFor(({ exports }: Words) => retold(toldEnglish.trail.exports, exports, (english) => english));

export function summaryOf(row: TrailRow, words: Words): string {
  if (row.kind === 'export') {
    const { what } = (row.after ?? {}) as { what?: string };
    return words.exported(what === undefined ? words.aFile : exportWords(words)(what));
  }
  if (row.kind === 'handover') return row.action === 'import' ? words.takenIn : words.bothSides;
  const what = kindWord(row.kind, words);
  return row.action === 'update' ? words.update(what, changedFields(row, words)) : words[row.action](what);
}
