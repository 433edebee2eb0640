/**
 * Each veto matters: for each there is a client whose draft changes when the veto is taken out of the table. The few
 * that no rule runs into, because the rules themselves ask for less, matter for what is added by hand.
 */
import { expect, test } from 'vitest';
import type { ProgramInput } from '../../../db/types/program-input.ts';
import type { LibraryItem, RuleTable, Veto } from '../../../db/types/rules.ts';
import { compose } from '../../../renderer/logic/program/draft/compose.ts';
import { added } from '../../../renderer/logic/program/clinic/edit-lines.ts';
import { checkProgram } from '../../../renderer/logic/program/draft/vetoes.ts';
import { rules } from './support.ts';
import { witnesses } from './witness.ts';

/** Vetoes that guard only what the therapist adds, and why no draft runs into them. */
const byHandOnly: Readonly<Record<string, string>> = {
  V04: 'R10 and R29a give putty for a strength of 1 or 2 only',
  V19: 'R22 gives the weight trial for a known type of tremor only',
  V27: 'R30 gives closed eyes for touch of 2 only',
  V36: 'an unsafe seat is tier 0, where nothing is practiced',
  V39: 'R38 gives neck turns for a mild strain only',
};

const touched = (veto: Veto): LibraryItem[] =>
  rules.items.filter(
    (item) =>
      veto.items.includes(item.code) ||
      veto.kinds.includes(item.kind) ||
      veto.hazards.some((hazard) => item.hazards.includes(hazard)),
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
  const stops = witnesses(veto.when, true, rules).some((input) =>
    touched(veto).some((item) => {
      const lines = added([], item.code, input, rules, 'by-hand');
      return !checkProgram(lines, input, rules).mayApprove && checkProgram(lines, input, without).mayApprove;
    }),
  );
  expect(stops).toBe(true);
});
