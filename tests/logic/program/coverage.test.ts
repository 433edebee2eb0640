import { expect, test } from 'vitest';
import { factsOf } from '../../../renderer/logic/program/facts/program-facts.ts';
import { activeVetoes } from '../../../renderer/logic/program/draft/vetoes.ts';
import { client, rules } from './support.ts';
import { witnesses } from './vetoes/witness.ts';

test.each(rules.vetoes.map((veto) => [veto.id, veto] as const))(
  'veto %s holds for one client and not for another',
  (id, veto) => {
    const holds = (input: ReturnType<typeof client>): boolean =>
      activeVetoes(factsOf(input, rules), rules).some((each) => each.veto.id === id);
    expect(witnesses(veto.when, true, rules).some(holds), `${id} never holds`).toBe(true);
    expect(
      [client(), ...witnesses(veto.when, false, rules)].some((input) => !holds(input)),
      `${id} always holds`,
    ).toBe(true);
    const touched = rules.items.filter(
      (item) =>
        veto.items.includes(item.code) ||
        veto.kinds.includes(item.kind) ||
        veto.hazards.some((each) => [...item.hazards, ...item.versions.flatMap((one) => one.hazards)].includes(each)),
    );
    expect(touched.length).toBeGreaterThan(0);
  },
);

test('every item is given by a rule, or is a paper, a text, the referral page or one wording of a line with versions', () => {
  const given = new Set(rules.rules.flatMap((rule) => rule.gives));
  const byHand = new Set(rules.clashes.flatMap((group) => group.alternatives.flat()));
  const lost = rules.items.filter(
    (item) => !given.has(item.code) && !byHand.has(item.code) && !/^(paper|text)-|^refer-page$/.test(item.code),
  );
  expect(lost.map((item) => item.code)).toEqual([]);
});
