import { homes, isKind } from '../records/kinds.ts';
import type { FactKind } from '../types/record.ts';
import { CARRIED_OUT, type HandedEntry } from './handed-entry.ts';

export const kindOf = (entry: HandedEntry): FactKind => entry.kind as FactKind;
export const factOf = (body: string): Record<string, unknown> => JSON.parse(body) as Record<string, unknown>;

/** Somebody decided something by it: it did not merely carry out a merge. */
export const isDecision = (entry: HandedEntry): boolean => isKind(entry.kind) && entry.reverses !== CARRIED_OUT;

/** Content without stamp. */
export const content = (body: string | null): string =>
  body === null ? '' : JSON.stringify({ ...factOf(body), id: '', at: '', by: '' });

const isFrozen = (entry: HandedEntry): boolean =>
  entry.after !== null &&
  ((entry.kind === 'program' && factOf(entry.after)['status'] === 'approved') || entry.kind === 'issuedPage');

/** The question a fact answers, or its own id. */
function questionOf(entry: HandedEntry): string | null {
  const { question } = homes[kindOf(entry)];
  const body = entry.after ?? entry.before;
  if (question.length === 0 || body === null) return null;
  const fact = factOf(body);
  return JSON.stringify([entry.kind, ...question.map(([field]) => fact[field])]);
}

/** Entries that speak about the same thing: by id, or by the question. */
export function groupsOf(entries: readonly HandedEntry[]): HandedEntry[][] {
  const parent = new Map<string, string>();
  const root = (key: string): string => {
    let at = key;
    for (let up = parent.get(at); up !== undefined; up = parent.get(at)) at = up;
    return at;
  };
  for (const entry of entries) {
    const question = questionOf(entry);
    if (question === null) continue;
    const [a, b] = [root(entry.fact_id), root(question)];
    if (a !== b) parent.set(a, b);
  }
  const groups = new Map<string, HandedEntry[]>();
  for (const entry of entries) {
    const key = root(entry.fact_id);
    const group = groups.get(key);
    if (group) group.push(entry);
    else groups.set(key, [entry]);
  }
  return [...groups.values()];
}

/** Positive when `a` stands before `b`: approved or issued, then newer, then by the hash, which no laptop chooses. */
const stands = (a: HandedEntry, b: HandedEntry): number =>
  Number(isFrozen(a)) - Number(isFrozen(b)) ||
  Date.parse(a.at) - Date.parse(b.at) ||
  (a.hash < b.hash ? -1 : a.hash > b.hash ? 1 : 0);

export const best = (entries: readonly HandedEntry[]): HandedEntry =>
  entries.reduce((found, entry) => (stands(entry, found) > 0 ? entry : found));
