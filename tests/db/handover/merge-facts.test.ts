/** Properties of the merge over random histories of three laptops; the laws are those of a replicated data type. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { mergeFacts } from '../../../db/handover/merge-facts.ts';
import { isDecision } from '../../../db/handover/handed-entries.ts';
import { orderOf } from '../../../db/handover/handed-entry.ts';
import { act, exchangeAll, Laptop, type Act } from './three-laptops.ts';

const acts: fc.Arbitrary<Act[]> = fc.array(
  fc.record({
    laptop: fc.integer({ min: 0, max: 2 }),
    what: fc.integer({ min: 0, max: 9 }),
    thing: fc.integer({ min: 0, max: 3 }),
    value: fc.integer({ min: 0, max: 20 }),
  }),
  { minLength: 5, maxLength: 45 },
);
const orders = fc.shuffledSubarray([0, 1, 2, 3, 4, 5], { minLength: 6, maxLength: 6 });
const skews = fc.tuple(fc.integer({ min: -90, max: 90 }), fc.integer({ min: -90, max: 90 }), fc.constant(0));

function live(history: readonly Act[], skew: readonly number[]) {
  const laptops = ['one', 'two', 'three'].map((name, i) => new Laptop(name, skew[i] ?? 0));
  const files: ReturnType<Laptop['handOver']>[] = [];
  // All begin with one client and two visits.
  const [first, ...others] = laptops as [Laptop, ...Laptop[]];
  for (const thing of [0, 1]) for (const what of [0, 1]) act(laptops, files, { laptop: 0, what, thing, value: 0 }, -1);
  for (const other of others) other.takeIn(first.handOver());
  history.forEach((one, minute) => {
    act(laptops, files, one, minute);
    // What a laptop shows is always what all its entries say.
    const acted = laptops[one.laptop] as Laptop;
    expect(acted.facts).toEqual(acted.merged().facts);
  });
  return { laptops, files };
}
const shown = (laptop: Laptop) => ({
  facts: [...laptop.facts].sort(),
  both: laptop.merged().bothChanged.map(({ id }) => id),
});

test('1,000 histories of three laptops: any order of exchanges ends the same, nothing is lost, a replay changes nothing', () => {
  let both = 0;
  fc.assert(
    fc.property(acts, skews, orders, orders, (history, skew, order, another) => {
      const first = live(history, skew);
      exchangeAll(first.laptops, order);
      const [one, two, three] = first.laptops.map(shown);
      expect(two).toEqual(one);
      expect(three).toEqual(one);

      const second = live(history, skew);
      exchangeAll(second.laptops, another);
      expect(shown(second.laptops[0] as Laptop)).toEqual(one);

      // Every decision of every laptop is on all of them.
      const [laptop, ...others] = first.laptops as [Laptop, ...Laptop[]];
      const hashes = [...laptop.entries.values()]
        .filter(isDecision)
        .map(({ hash }) => hash)
        .sort();
      for (const other of others) {
        expect(
          [...other.entries.values()]
            .filter(isDecision)
            .map(({ hash }) => hash)
            .sort(),
        ).toEqual(hashes);
      }
      // What no later decision took the place of is shown: as it stands, or beside what stands.
      const entries = [...laptop.entries.values()];
      const after = orderOf(entries, []);
      const decisions = entries.filter(isDecision);
      const merged = laptop.merged();
      both += merged.bothChanged.length;
      const beside = new Set(merged.bothChanged.flatMap(({ kept, other }) => [kept.hash, other.hash]));
      const plain = (body: string | null) => JSON.stringify({ ...JSON.parse(body ?? '{}'), at: '', by: '', id: '' });
      for (const entry of decisions) {
        if (entry.after === null || beside.has(entry.hash)) continue;
        const stands = [...merged.facts.values()].some(({ body }) => plain(body) === plain(entry.after));
        const followed = decisions.some((other) => after(other, entry) && other.fact_id === entry.fact_id);
        const question = (each: typeof entry) => {
          const fact = JSON.parse(each.after ?? each.before ?? '{}') as Record<string, unknown>;
          return `${each.kind} ${String(fact['visitId'])} ${String(fact['item'])}`;
        };
        const answered =
          entry.kind === 'intakeAnswer' &&
          decisions.some((other) => after(other, entry) && question(other) === question(entry));
        expect(stands || followed || answered).toBe(true);
      }

      for (const file of first.files) {
        for (const each of first.laptops) {
          const before = shown(each);
          expect(each.takeIn(file)).toBe(false);
          expect(shown(each)).toEqual(before);
        }
      }
    }),
    { numRuns: 1000, seed: 17 },
  );
  // The histories are worth something: both sides did change the same fact.
  expect(both).toBeGreaterThan(1000);
}, 600_000);

test('the set alone counts: entries in any order give the same', () => {
  fc.assert(
    fc.property(acts, skews, orders, fc.integer(), (history, skew, order, turn) => {
      const { laptops } = live(history, skew);
      exchangeAll(laptops, order);
      const entries = (laptops[0] as Laptop).handOver();
      const turned = [...entries].sort((a, b) => (a.hash < b.hash ? -1 : 1) * (turn % 2 === 0 ? 1 : -1));
      expect([...mergeFacts(turned, []).facts].sort()).toEqual([...mergeFacts(entries, []).facts].sort());
    }),
    { numRuns: 100, seed: 17 },
  );
}, 300_000);
