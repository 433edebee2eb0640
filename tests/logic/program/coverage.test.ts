import { expect, test } from 'vitest';
import { compose, firedRules } from '../../../renderer/logic/program/draft/compose.ts';
import { factsOf } from '../../../renderer/logic/program/facts/program-facts.ts';
import { activeVetoes } from '../../../renderer/logic/program/draft/vetoes.ts';
import { client, rules } from './support.ts';
import { witnesses } from './witness.ts';

const fires = (id: string, input: ReturnType<typeof client>): boolean =>
  firedRules(input, rules).some(({ rule }) => rule.id === id);

test.each(rules.rules.map((rule) => [rule.id, rule] as const))(
  'rule %s fires for one client and not for another',
  (id, rule) => {
    const fired = witnesses(rule.when, true, rules).find((input) => fires(id, input));
    expect(fired, `${id} can never fire`).toBeDefined();
    const quiet = [client(), client({ grasp: null }), ...witnesses(rule.when, false, rules)].find(
      (input) => !fires(id, input),
    );
    expect(quiet, `${id} always fires`).toBeDefined();
  },
);

test.each(rules.rules.map((rule) => [rule.id, rule] as const))('what rule %s gives can reach a client', (id, rule) => {
  const chosen = (code: string): boolean => code === 'paper' || code === 'content';
  const clients = witnesses(rule.when, true, rules);
  for (const code of rule.gives) {
    const reached = clients.some((input) => {
      const draft = compose(input, rules);
      const there = [...draft.lines.map((line) => line.item), ...draft.leftOut.map((each) => each.item)];
      return chosen(code) ? draft.lines.some((line) => line.kind === code && line.rule === id) : there.includes(code);
    });
    expect(reached, `${id} gives ${code}, and safety forbids it in every case`).toBe(true);
  }
});

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
        veto.hazards.some((each) => item.hazards.includes(each)),
    );
    expect(touched.length).toBeGreaterThan(0);
  },
);

test('every item of the library is given by a rule, or is a paper, a text or the referral page', () => {
  const given = new Set(rules.rules.flatMap((rule) => rule.gives));
  const lost = rules.items.filter((item) => !given.has(item.code) && !/^(paper|text)-|^refer-page$/.test(item.code));
  expect(lost.map((item) => item.code)).toEqual([]);
});
