/** Hand-overs between real caseload files. */
import { randomUUID } from 'node:crypto';
import { rmSync } from 'node:fs';
import { expect, test } from 'vitest';
import { seeded } from '../../../build/torture/random.ts';
import { openFile } from '../../../db/connection.ts';
import { caseloadFile, laptopFile } from '../../../db/files.ts';
import type { Caseload, Doing } from '../../../db/index.ts';
import type { Handed } from '../../../db/handover/handover-types.ts';
import { hashOf } from '../../../db/records/trail-hash.ts';
import { answer, client, newCaseload, page, reopen, sample, visit } from '../support.ts';

const at = (minute: number, by: string): Doing => ({
  at: new Date(Date.UTC(2026, 2, 4, 9, minute)).toISOString(),
  by,
});
const pictures = (from: Caseload) => (id: string) => from.blob(id)?.data ?? null;
function give(from: Caseload, to: Caseload, ids: string[], doing: Doing) {
  return to.handover.takeIn(from.handover.handOver(ids, doing), pictures(from), doing);
}

async function two(): Promise<{ a: Caseload; b: Caseload; id: string; visitId: string }> {
  const [a, b] = [await newCaseload(), await newCaseload()];
  const { id } = a.put('client', client({ name: 'Ada Invented', code: 'K1' }), at(0, 'MK'));
  const { id: visitId } = a.put('visit', visit(id), at(1, 'MK'));
  give(a, b, [id], at(2, 'JB'));
  return { a, b, id, visitId };
}

test('one client with pictures arrives whole, ids and stamps kept; again changes nothing; both trails stay whole', async () => {
  const [a, b] = [await newCaseload(), await newCaseload()];
  const { id } = a.put('client', client(), at(0, 'MK'));
  const { id: visitId } = a.put('visit', visit(id), at(1, 'MK'));
  const { id: sampleId } = a.put('sample', sample(id, visitId), at(2, 'MK'));
  const blob = a.putBlob(id, 'image/png', Buffer.from('bytes'), at(3, 'MK'));
  a.put('samplePage', page({ clientId: id, visitId, sampleId }, blob), at(4, 'MK'));
  expect(b.handover.expect(a.handover.handOver([id], at(5, 'MK')), at(5, 'JB'))).toMatchObject([
    { id, state: 'new', twins: [] },
  ]);
  expect(give(a, b, [id], at(5, 'JB')).entries).toBe(4);
  expect(b.record(id)).toEqual(a.record(id));
  expect(b.counts()['blob']).toBe(1);
  const seq = b.lastSeq();
  expect(give(a, b, [id], at(6, 'JB')).entries).toBe(0);
  // Back again: the sender learns that it was taken in, and no picture is kept twice.
  give(b, a, [id], at(7, 'MK'));
  expect([b.lastSeq(), a.counts()['blob'], a.record(id).visits.length]).toEqual([seq, 1, 1]);
  expect([a.verifyTrail().whole, b.verifyTrail().whole]).toEqual([true, true]);
  expect(b.trail(id).some(({ kind, by }) => kind === 'handover' && by === 'JB')).toBe(true);
});

test('one fact changed on both sides: the newer stands on both laptops, the other is kept, shown and can be taken', async () => {
  const { a, b, id, visitId } = await two();
  a.put('visit', visit(id, { id: visitId, told: 'said to MK' }), at(10, 'MK'));
  b.put('visit', visit(id, { id: visitId, told: 'said to JB' }), at(12, 'JB'));
  give(a, b, [id], at(20, 'JB'));
  give(b, a, [id], at(21, 'MK'));
  for (const each of [a, b]) {
    expect(each.record(id).visits[0]?.told).toBe('said to JB');
    const [both] = each.handover.bothChanged(at(22, 'MK'));
    expect(JSON.parse(both?.other.after ?? '')).toMatchObject({ told: 'said to MK', by: 'MK' });
    expect(() => each.undo(id, at(22, 'MK'))).toThrow('nothing-to-undo');
  }
  const [both] = a.handover.bothChanged(at(23, 'MK'));
  a.handover.settle(both?.id ?? '', 'other', at(23, 'MK'));
  expect(a.record(id).visits[0]?.told).toBe('said to MK');
  give(a, b, [id], at(24, 'JB'));
  expect(b.record(id)).toEqual(a.record(id));
  expect(b.handover.bothChanged(at(25, 'JB'))).toEqual([]);
});

test('taken away here, written in there: it comes back; the same question answered twice is one answer', async () => {
  const { a, b, id, visitId } = await two();
  a.put('intakeAnswer', answer(id, visitId, { grade: 1 }), at(10, 'MK'));
  b.put('intakeAnswer', answer(id, visitId, { grade: 3 }), at(11, 'JB'));
  give(a, b, [id], at(12, 'JB'));
  give(b, a, [id], at(13, 'MK'));
  expect(a.record(id).intakeAnswers.map(({ grade }) => grade)).toEqual([3]);
  expect(b.record(id)).toEqual(a.record(id));
  expect(b.handover.bothChanged(at(14, 'JB'))).toHaveLength(1);

  a.remove('visit', visitId, at(20, 'MK'));
  b.put('sample', sample(id, visitId), at(21, 'JB'));
  give(a, b, [id], at(22, 'JB'));
  give(b, a, [id], at(23, 'MK'));
  expect(a.record(id).samples).toHaveLength(1);
  expect(a.record(id).visits).toHaveLength(1);
  expect(b.record(id)).toEqual(a.record(id));
  expect(a.verifyTrail().whole).toBe(true);
});

test('the same person entered on two laptops: both records come, a code is changed and told, joining is offered', async () => {
  const [a, b] = [await newCaseload(), await newCaseload()];
  const { id: one } = a.put('client', client({ name: 'Ada Invented', code: 'K1' }), at(0, 'MK'));
  const { id: visitId } = a.put('visit', visit(one), at(1, 'MK'));
  const { id: other } = b.put('client', client({ name: 'ada  invented', code: 'K1' }), at(0, 'JB'));
  const handed = a.handover.handOver([one], at(2, 'MK'));
  expect(b.handover.expect(handed, at(2, 'JB'))).toMatchObject([
    { state: 'new', codeHere: 'K1-2', twins: [{ id: other }] },
  ]);
  expect(give(a, b, [one], at(3, 'JB')).recoded).toEqual([{ id: one, code: 'K1-2' }]);
  expect(b.clients()).toHaveLength(2);
  expect(b.handover.twins()).toEqual([{ id: one, ofId: other }]);
  b.merge(one, other, at(4, 'JB'));
  expect(b.handover.twins()).toEqual([]);
  // Joined there, the two are one here as well, and what is written on later finds its place.
  a.put('visit', visit(one, { id: visitId, told: 'later' }), at(5, 'MK'));
  give(b, a, [other], at(6, 'MK'));
  give(a, b, [other], at(7, 'JB'));
  expect(a.clients().map(({ id }) => id)).toEqual([other]);
  expect(b.record(other)).toEqual(a.record(other));
  expect(a.handover.bothChanged(at(8, 'MK'))).toHaveLength(1);
});

test('spoiled entries are refused whole; a changed copy kept here is found by the check of the trail', async () => {
  const { a, b, id } = await two();
  const handed = a.handover.handOver([id], at(3, 'MK'));
  const spoiled: [string, (handed: Handed) => void][] = [
    [
      'text',
      (h) => {
        const entry = h.entries.find(({ kind }) => kind === 'client')!;
        entry.after = entry.after!.replace('Ada', 'Eva');
      },
    ],
    ['time', (h) => (h.entries[0]!.at = '2027-01-01T00:00:00.000Z')],
    ['stranger', (h) => (h.clientIds = [randomUUID()])],
    ['twice', (h) => h.entries.push(h.entries[0]!)],
  ];
  for (const [what, spoil] of spoiled) {
    const copy = structuredClone(handed);
    spoil(copy);
    const seq = b.lastSeq();
    expect(() => b.handover.takeIn(copy, () => null, at(4, 'JB')), what).toThrow('malformed-request');
    expect(b.lastSeq()).toBe(seq);
  }
  const identity = b.withKey((key) => Buffer.from(key));
  const { folder } = b;
  b.close();
  const db = openFile(caseloadFile(folder), identity);
  db.exec(
    'DROP TRIGGER handed_entry_never_changes; DELETE FROM handed_entry WHERE seq = (SELECT max(seq) FROM handed_entry)',
  );
  db.close();
  expect((await reopen(folder)).verifyTrail().whole).toBe(false);
});

test('an erased client is gone with what colleagues wrote, and comes back only when it is taken in again', async () => {
  const { a, b, id } = await two();
  b.erase(id, at(5, 'JB'));
  expect(b.verifyTrail().whole).toBe(true);
  const handed = a.handover.handOver([id], at(6, 'MK'));
  expect(b.handover.expect(handed, at(6, 'JB'))).toMatchObject([{ state: 'erased-here' }]);
  give(a, b, [id], at(7, 'JB'));
  expect(b.record(id)).toEqual(a.record(id));
});

test('a restored caseload goes on under a new name; a copied folder that went on by itself is refused', async () => {
  const { a, b, id } = await two();
  const name = b.handover.laptop(at(3, 'JB'));
  rmSync(laptopFile(b.folder));
  expect(b.handover.laptop(at(4, 'JB'))).not.toBe(name);
  b.put('visit', visit(id), at(5, 'JB'));
  give(b, a, [id], at(6, 'MK'));
  expect(a.record(id)).toEqual(b.record(id));

  // The same number, another entry: a copy of the folder that went on by itself.
  const handed = b.handover.handOver([id], at(7, 'JB'));
  const own = handed.entries.find(({ laptop }) => laptop === b.handover.laptop(at(7, 'JB')))!;
  const copied = { ...own, at: at(8, 'JB').at };
  copied.hash = hashOf(copied);
  const forked = { ...handed, entries: [...handed.entries.filter((each) => each !== own), copied] };
  const seq = a.lastSeq();
  expect(() => a.handover.takeIn(forked, pictures(b), at(9, 'MK'))).toThrow('handover-forked');
  expect(a.lastSeq()).toBe(seq);
});

test('joined the other way round on two laptops: the same one record stays on both', async () => {
  const { a, b, id } = await two();
  const { id: other } = a.put('client', client({ name: 'Ada Invented', code: 'K2' }), at(3, 'MK'));
  a.put('visit', visit(other), at(3, 'MK'));
  give(a, b, [other], at(4, 'JB'));
  a.merge(id, other, at(5, 'MK'));
  b.merge(other, id, at(6, 'JB'));
  give(a, b, [other], at(7, 'JB'));
  give(b, a, [b.clients()[0]!.id], at(8, 'MK'));
  expect(a.clients()).toHaveLength(1);
  expect(a.clients()).toEqual(b.clients());
  expect(a.record(a.clients()[0]!.id).visits).toHaveLength(2);
  expect([a.verifyTrail().whole, b.verifyTrail().whole]).toEqual([true, true]);
});

test('random lives of three real caseloads end the same', { timeout: 600_000 }, async () => {
  const random = seeded(17);
  const pick = (n: number) => Math.floor(random() * n);
  for (let life = 0; life < 2; life++) {
    const all = [await newCaseload(), await newCaseload(), await newCaseload()];
    const { id } = all[0]!.put('client', client(), at(0, 'L0'));
    const visits = [visit(id), visit(id)].map((each) => all[0]!.put('visit', each, at(1, 'L0')).id);
    for (const to of all.slice(1)) give(all[0]!, to, [id], at(2, 'L1'));
    for (let minute = 3; minute < 40; minute++) {
      const n = pick(3);
      const self = all[n]!;
      const doing = at(minute, `L${n}`);
      const here = self.record(id);
      const visitId = here.visits[pick(here.visits.length)]?.id;
      const what = pick(7);
      if (what === 0) self.put('client', { ...here.client, note: `n${minute}` }, doing);
      else if (what === 1) self.put('visit', visit(id, { id: visits[pick(2)]!, told: `t${minute}` }), doing);
      else if (what === 2 && visitId) self.put('sample', sample(id, visitId), doing);
      else if (what === 3 && visitId) self.put('intakeAnswer', answer(id, visitId, { grade: pick(4) as 0 }), doing);
      else if (what === 4 && visitId) self.remove('visit', visitId, doing);
      else if (what === 5 && self.canUndo(id).undo) self.undo(id, doing);
      else give(all[(n + 1 + pick(2)) % 3]!, self, [id], doing);
    }
    for (let round = 0; round < 3; round++) {
      for (const n of [0, 1, 2]) give(all[n]!, all[(n + 1) % 3]!, [id], at(50 + round, 'LX'));
    }
    const order = ({ visits: v, ...rest }: ReturnType<Caseload['record']>) =>
      JSON.stringify(
        [v, ...Object.values(rest)].map((part) =>
          Array.isArray(part) ? part.map((f) => JSON.stringify(f)).sort() : part,
        ),
      );
    const [one, two, three] = all.map((each) => order(each.record(id)));
    expect(two).toBe(one);
    expect(three).toBe(one);
    for (const each of all) expect(each.verifyTrail().whole).toBe(true);
  }
});
