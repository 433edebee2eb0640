/** Handing clients over to a colleague's laptop and taking hers in: what an open caseload offers for it. */
import type { Doing } from '../caseload.ts';
import { CaseloadError } from '../codes.ts';
import type { Db } from '../connection.ts';
import type { ExportedPicture } from '../types/client-export.ts';
import type { Fact, FactKind } from '../types/record.ts';
import { guarded } from '../errors.ts';
import { randomUUID } from 'node:crypto';
import { isKind, picturesOfFact } from '../records/kinds.ts';
import { fold, getFact, newStep, together } from '../records/store.ts';
import { append } from '../records/trail.ts';
import { CARRIED_OUT, NOTE } from './handed-entry.ts';
import { entriesOf, grownLaptops, joinedWith, ownNames } from './handed.ts';
import type { BothChanged, Expected, Handed, HandoverRecords } from './handover-types.ts';
import { freeCode, judge, mergedOf, newEntries, takeIn } from './take-in.ts';

interface Named {
  id: string;
  code: string;
  name: string;
  birthYear: number | null;
}

const mayBeOne = (a: Named, b: Named): boolean =>
  a.id !== b.id &&
  fold(a.name).replace(/\s+/g, ' ').trim() === fold(b.name).replace(/\s+/g, ' ').trim() &&
  (a.birthYear === null || b.birthYear === null || a.birthYear === b.birthYear);

/** Pictures that any version of these facts names and that are here. */
function picturesIn(db: Db, handed: Pick<Handed, 'entries'>): Handed['pictures'] {
  const ids = new Set<string>();
  for (const { kind, after } of handed.entries) {
    if (after === null || !isKind(kind)) continue;
    for (const id of picturesOfFact(kind, JSON.parse(after) as object)) ids.add(id);
  }
  const find = db.prepare('SELECT id, client_id AS clientId, sha256, mime, size AS bytes FROM blob WHERE id = ?');
  return [...ids].sort().flatMap((id) => (find.get(id) as (ExportedPicture & { clientId: string }) | undefined) ?? []);
}

export function openHandover(db: Db, folder: string): HandoverRecords {
  const names = (doing: Doing) => ownNames(db, folder, doing);
  const clientsHere = () =>
    db.prepare("SELECT id, code, name, body ->> '$.birthYear' AS birthYear FROM client ORDER BY code").all() as Named[];
  const handedClients = () => db.prepare('SELECT DISTINCT client_id FROM handed_entry').pluck().all() as string[];
  const all = (doing: Doing): BothChanged[] => mergedOf(db, names(doing), handedClients(), null).bothChanged;

  return {
    laptop: (doing) => names(doing).at(-1)?.id ?? '',
    handOver: (clientIds, doing) => {
      for (const id of clientIds)
        if (getFact(db, 'client', id) === null) throw new CaseloadError('not-found', 'client');
      const own = names(doing);
      const ids = joinedWith(db, clientIds);
      const entries = entriesOf(db, own, ids);
      const laptops = new Set(entries.map((entry) => entry.laptop));
      const grown = grownLaptops(db, own).filter((each) => laptops.has(each.laptop));
      return { clientIds: ids, entries, grown, pictures: picturesIn(db, { entries }) };
    },
    expect: (handed, doing) => {
      judge(handed);
      const fresh = newEntries(db, names(doing), handed);
      const merged = mergedOf(db, names(doing), handed.clientIds, handed);
      const here = clientsHere();
      const erased = db.prepare("SELECT 1 FROM trail WHERE client_id = ? AND action = 'erase'").pluck();
      return handed.clientIds.flatMap((id): Expected[] => {
        const found = merged.facts.get(id);
        if (found?.kind !== 'client') return [];
        const fact = JSON.parse(found.body) as Fact<'client'>;
        const known = here.some((each) => each.id === id);
        const changes = fresh.filter((entry) => entry.client_id === id && entry.kind !== NOTE).length;
        const gone = !known && erased.get(id) !== undefined;
        const state = gone ? 'erased-here' : !known ? 'new' : changes === 0 ? 'nothing-new' : 'known';
        const twins = known ? [] : here.filter((each) => mayBeOne(each, fact) || each.code === fact.code);
        return [{ id, code: fact.code, name: fact.name, state, changes, codeHere: freeCode(db, fact.code, id), twins }];
      });
    },
    takeIn: (handed, bytesOf, doing) => takeIn(db, names(doing), handed, bytesOf, doing),
    bothChanged: all,
    settle: (id, take, doing) => {
      // A refusal writes nothing, not even this laptop's name.
      const found = handedClients().length > 0 ? all(doing).find((each) => each.id === id) : undefined;
      if (!found) throw new CaseloadError('not-found', 'handover');
      const { kept, other, kind, clientId } = found;
      guarded(() =>
        db
          .transaction(() => {
            if (take === 'other') putVersion(db, kind, other.after, kept.fact_id, doing);
            const change = { clientId, kind: NOTE, factId: randomUUID(), action: 'set' as const };
            const after = JSON.stringify({ settled: [id], take });
            const { step } = newStep(doing);
            append(db, { ...change, step, reverses: CARRIED_OUT, before: null, after }, doing);
          })
          .immediate(),
      );
    },
    twins: () => {
      const here = clientsHere();
      const handed = new Set(handedClients());
      return here.flatMap((a) =>
        here
          .filter((b) => mayBeOne(a, b) && (handed.has(a.id) ? !handed.has(b.id) || a.id > b.id : false))
          .map((b) => ({ id: a.id, ofId: b.id })),
      );
    },
  };
}

function putVersion(db: Db, kind: FactKind, body: string | null, standing: string, doing: Doing): void {
  together(db, doing, (write) => {
    if (body === null) {
      if (getFact(db, kind, standing) !== null) write.remove(kind, standing);
    } else write.put(kind, JSON.parse(body) as Parameters<typeof write.put>[1]);
  });
}
