import type { TrailRow } from '../db/index.ts';
import { kindWords } from './handlers/sharing/kind-words.ts';

const actionWords: Record<TrailRow['action'], string> = {
  create: 'added',
  update: 'changed',
  remove: 'removed',
  undo: 'undone',
  redo: 'redone',
  erase: 'erased',
  import: 'imported',
  set: 'set',
};

/** Fields that changed between two versions of a fact, by name; values stay on the record's own screens. */
function changedFields(row: TrailRow): string {
  if (
    row.action !== 'update' ||
    typeof row.before !== 'object' ||
    typeof row.after !== 'object' ||
    !row.before ||
    !row.after
  )
    return '';
  const before = row.before as Record<string, unknown>;
  const after = row.after as Record<string, unknown>;
  const names = Object.keys(after).filter(
    (k) => k !== 'at' && k !== 'by' && JSON.stringify(before[k]) !== JSON.stringify(after[k]),
  );
  return names.length ? `: ${names.join(', ')}` : '';
}

export function summaryOf(row: TrailRow): string {
  if (row.kind === 'export') return `exported: ${(row.after as { what?: string } | null)?.what ?? 'a file'}`;
  if (row.kind === 'handover') return row.action === 'import' ? 'hand-over taken in' : 'both sides looked at';
  return `${kindWords[row.kind] ?? row.kind} ${actionWords[row.action]}${changedFields(row)}`;
}
