/**
 * Each veto matters: for each there is a client whose draft changes when the veto is taken out of the table. The few
 * that no rule runs into, because the rules themselves ask for less, matter for what is added by hand.
 */
import { expect, test } from 'vitest';
import type { ProgramInput } from '../../../../db/types/program-input.ts';
import type { LibraryItem, RuleTable, Veto } from '../../../../db/types/rules.ts';
import { compose } from '../../../../renderer/logic/program/draft/compose.ts';
import { added } from '../../../../renderer/logic/program/clinic/edit-lines.ts';
import { factsOf } from '../../../../renderer/logic/program/facts/program-facts.ts';
import { checkProgram, vetoesOf } from '../../../../renderer/logic/program/draft/vetoes.ts';
import { rules } from '../support.ts';
import { byHandOnly } from './by-hand-only.ts';
import { witnesses } from './witness.ts';

const touched = (veto: Veto): LibraryItem[] =>
  rules.items.filter(
    (item) =>
      veto.items.includes(item.code) ||
      veto.kinds.includes(item.kind) ||
      veto.hazards.some((hazard) => [...item.hazards, ...item.versions.flatMap((one) => one.hazards)].includes(hazard)),
  );

const draftOf = (input: ProgramInput, table: RuleTable): string => {
  const { lines, leftOut } = compose(input, table);
  return JSON.stringify([lines, leftOut]);
};

test.each(rules.vetoes.map((veto) => [veto.id, veto] as const))('a draft changes without veto %s', (id, veto) => {
  const without = { ...rules, vetoes: rules.vetoes.filter((each) => each !== veto) };
  const clients = touched(veto)
    .flatMap((item) => rules.rules.filter((rule) => rule.gives.includes(item.code)))
    .flatMap((rule) => witnesses({ all: [rule.when, veto.when] }, true, rules));
  const changes = clients.some((input) => draftOf(input, rules) !== draftOf(input, without));
  expect(changes).toBe(!(id in byHandOnly));
});

test.each(Object.entries(byHandOnly))('%s stops what is added by hand (%s)', (id) => {
  const veto = rules.vetoes.find((each) => each.id === id)!;
  const without = { ...rules, vetoes: rules.vetoes.filter((each) => each !== veto) };
  // A hand that holds, so that nothing but this veto stands in the way of what it speaks of.
  const clients = witnesses(veto.when, true, rules).flatMap((input) => [
    input,
    {
      ...input,
      findings: input.findings.map((each) => (each.code === 'strength' ? { ...each, grade: 2 as const } : each)),
    },
  ]);
  const stops = clients.some((input) =>
    touched(veto).some((item) => {
      const lines = added([], item.code, input, rules, 'by-hand');
      return !checkProgram(lines, input, rules).mayApprove && checkProgram(lines, input, without).mayApprove;
    }),
  );
  // What no item of the library does, a line of the therapist's own may.
  const own = veto.hazards.map((hazard): LibraryItem => ({ ...rules.items[0]!, kind: 'advice', hazards: [hazard] }));
  const stopsOwn = clients.some((input) =>
    own.some((item) => {
      const facts = factsOf(input, rules);
      return vetoesOf(item, facts, rules).length > 0 && vetoesOf(item, facts, without).length === 0;
    }),
  );
  expect(stops || stopsOwn).toBe(true);
});
