/**
 * What a client's facts are, given every entry that any laptop wrote about them: a pure function of the set of
 * entries, so that it does not matter in which order, how often and by which way they came together.
 *
 * A fact is what its latest entry says. Entries that did not know of each other: what was approved or issued stands,
 * else the newer by its own time. Answers to one question are one fact, whatever their ids. What is still pointed at
 * is not taken away.
 */
import { clientOf } from '../records/kinds.ts';
import type { Fact, FactKind } from '../types/record.ts';
import { NOTE, orderOf, readNote, type GrownLaptop, type HandedEntry } from './handed-entry.ts';
import { kindOf, factOf, isDecision, content, groupsOf, best } from './handed-entries.ts';

/** One fact changed on two sides that did not know of each other. */
export interface BothChanged {
  /** Hashes of the two entries, smaller first: the same on every laptop. */
  id: string;
  kind: FactKind;
  clientId: string;
  kept: HandedEntry;
  other: HandedEntry;
}

export interface Merged {
  /** Every fact there is, by id, with its JSON text. */
  facts: Map<string, { kind: FactKind; body: string }>;
  /** Ids of facts that there were and are not any more. */
  gone: Map<string, FactKind>;
  /** Records of one person that were joined: the one that is gone, and the one it became. */
  joined: Map<string, string>;
  /** Not looked at yet. */
  bothChanged: BothChanged[];
}

const parents = ['clientId', 'visitId', 'sampleId', 'pageId', 'goalId'];

/** Ids of what a fact belongs to. */
function pointsAt(body: string): string[] {
  const fact = factOf(body);
  return parents.map((field) => fact[field]).filter((id) => typeof id === 'string');
}

export function mergeFacts(all: readonly HandedEntry[], grown: readonly GrownLaptop[]): Merged {
  const after = orderOf(all, grown);
  const decisions = all.filter(isDecision);
  /** Those that no other came after. */
  const lastOf = (entries: readonly HandedEntry[]): HandedEntry[] => {
    const latest = new Map<string, HandedEntry>();
    for (const entry of entries) {
      const known = latest.get(entry.laptop);
      if (!known || known.seq < entry.seq) latest.set(entry.laptop, entry);
    }
    const last = [...latest.values()];
    return last.filter((entry) => !last.some((other) => other !== entry && after(other, entry)));
  };
  const facts: Merged['facts'] = new Map();
  const byFact = new Map<string, HandedEntry[]>();
  for (const entry of decisions) {
    const list = byFact.get(entry.fact_id);
    if (list) list.push(entry);
    else byFact.set(entry.fact_id, [entry]);
  }
  const groups = groupsOf(decisions);
  for (const group of groups) {
    const standing = best(lastOf(group));
    if (standing.after !== null) facts.set(standing.fact_id, { kind: kindOf(standing), body: standing.after });
  }
  // What belonged to a record that was joined into another belongs to that one, whoever wrote it meanwhile.
  const joined = joinedIn(decisions, facts);
  for (const fact of facts.values()) {
    const into = joined.get(String(factOf(fact.body)['clientId']));
    if (into !== undefined) fact.body = JSON.stringify({ ...factOf(fact.body), clientId: into });
  }
  const back = (id: string): { kind: FactKind; body: string } | null => {
    const versions = (byFact.get(id) ?? []).filter((entry) => entry.after !== null);
    if (versions.length === 0) return null;
    const last = best(lastOf(versions));
    const kept = last.after as string;
    const into = joined.get(String(factOf(kept)['clientId']));
    return {
      kind: kindOf(last),
      body: into === undefined ? kept : JSON.stringify({ ...factOf(kept), clientId: into }),
    };
  };
  // Taken away by somebody who did not know what was written into it: it stays.
  const within = new Map<string, HandedEntry[]>();
  for (const entry of decisions) {
    if (entry.after === null) continue;
    for (const id of pointsAt(entry.after)) within.set(id, [...(within.get(id) ?? []), entry]);
  }
  for (const [id, written] of within) {
    if (facts.has(id) || joined.has(id)) continue;
    const removals = lastOf(byFact.get(id) ?? []);
    if (written.every((entry) => removals.some((removal) => after(removal, entry)))) continue;
    const kept = back(id);
    if (kept) facts.set(id, kept);
  }
  // What something points at comes back as it last was.
  const queue = [...facts.values()];
  for (let fact = queue.pop(); fact !== undefined; fact = queue.pop()) {
    for (const id of pointsAt(fact.body)) {
      if (facts.has(id)) continue;
      const found = back(id);
      if (!found) continue;
      facts.set(id, found);
      queue.push(found);
    }
  }
  const gone: Merged['gone'] = new Map();
  for (const [id, entries] of byFact) if (!facts.has(id)) gone.set(id, kindOf(entries[0] as HandedEntry));
  return { facts, gone, joined, bothChanged: bothChangedIn(groups, all, after) };
}

/** Client that is gone -> the one that its facts were moved to in the same step, to the end of the chain. */
function joinedIn(decisions: readonly HandedEntry[], facts: Merged['facts']): Map<string, string> {
  const removed = new Map<string, string>();
  for (const { kind, fact_id, step, after } of decisions) {
    if (kind === 'client' && after === null && !facts.has(fact_id)) removed.set(`${step} ${fact_id}`, fact_id);
  }
  const next = new Map<string, string>();
  for (const { kind, step, before, after } of [...decisions].sort((a, b) => (a.hash < b.hash ? -1 : 1))) {
    if (kind === 'client' || before === null || after === null) continue;
    const from = removed.get(`${step} ${String(factOf(before)['clientId'])}`);
    const into = factOf(after)['clientId'];
    if (from !== undefined && typeof into === 'string' && into !== from) next.set(from, into);
  }
  const joined = new Map<string, string>();
  for (const from of next.keys()) {
    const way = [from];
    let at = next.get(from);
    while (at !== undefined && !facts.has(at) && !way.includes(at)) {
      way.push(at);
      at = next.get(at);
    }
    // Two laptops joined the two the other way round: the same one stays on both.
    const into = at !== undefined && way.includes(at) ? (way.slice(way.indexOf(at)).sort()[0] as string) : at;
    if (into !== undefined && into !== from) joined.set(from, into);
    else if (at === undefined && way.length > 1) joined.set(from, way.at(-1) as string);
  }
  return joined;
}

function bothChangedIn(
  groups: readonly HandedEntry[][],
  all: readonly HandedEntry[],
  after: ReturnType<typeof orderOf>,
): BothChanged[] {
  const settled = new Set(all.filter((entry) => entry.kind === NOTE).flatMap((note) => readNote(note).settled ?? []));
  const found: BothChanged[] = [];
  for (const group of groups) {
    if (new Set(group.map((entry) => entry.laptop)).size < 2) continue;
    const apart = (a: HandedEntry, b: HandedEntry): boolean => a.laptop !== b.laptop && !after(a, b) && !after(b, a);
    const sorted = [...group].sort((a, b) => (a.laptop < b.laptop ? -1 : a.laptop > b.laptop ? 1 : a.seq - b.seq));
    /** The next entry of the same laptop still did not know of `b`: then that one stands for this side. */
    const hasLater = (i: number, b: HandedEntry): boolean => {
      const next = sorted[i + 1];
      return next !== undefined && next.laptop === sorted[i]?.laptop && apart(next, b);
    };
    for (const [i, a] of sorted.entries()) {
      for (let j = i + 1; j < sorted.length; j++) {
        const b = sorted[j] as HandedEntry;
        if (!apart(a, b) || hasLater(i, b) || hasLater(j, a) || content(a.after) === content(b.after)) continue;
        // A third side that went on from one of the two stands for it.
        if (sorted.some((c) => (after(c, a) && apart(c, b)) || (after(c, b) && apart(c, a)))) continue;
        const [low, high] = a.hash < b.hash ? [a, b] : [b, a];
        const id = `${low.hash}:${high.hash}`;
        if (settled.has(id)) continue;
        const kept = best([a, b]);
        const body = (kept.after ?? kept.before ?? '{}') as string;
        const clientId = clientOf(kindOf(kept), factOf(body) as unknown as Fact);
        found.push({ id, kind: kindOf(kept), clientId, kept, other: kept === a ? b : a });
      }
    }
  }
  return found.sort((a, b) => (a.id < b.id ? -1 : 1));
}
