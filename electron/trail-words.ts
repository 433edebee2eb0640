import type { TrailRow } from '../db/index.ts';
import type { Told } from '../renderer/logic/texts/screens/en/screens-en.ts';

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

export function summaryOf(row: TrailRow, words: Words): string {
  if (row.kind === 'export') return words.exported((row.after as { what?: string } | null)?.what ?? words.aFile);
  if (row.kind === 'handover') return row.action === 'import' ? words.takenIn : words.bothSides;
  const what = kindWord(row.kind, words);
  return row.action === 'update' ? words.update(what, changedFields(row, words)) : words[row.action](what);
}
