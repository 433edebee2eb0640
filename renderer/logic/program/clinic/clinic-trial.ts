import { type RuleTable } from '../../../../db/types/rules.ts';
import type { ProgramInput } from '../../../../db/types/program-input.ts';
import { compose } from '../draft/compose.ts';
import type { Told } from '../../texts/screens/en/screens-en.ts';

export interface Trial {
  /** Drafts that would come out differently, of all drafts. */
  changed: number;
  of: number;
  /** Positions of those clients in the list given. */
  clients: number[];
}

/**
 * "Would change 3 of 41 drafts": the same clients drafted with both tables.
 * @param inputsAfter the clients as the new table sees them, where it changes what counts as a finding
 */
export function tryOnCaseload(
  inputs: readonly ProgramInput[],
  before: RuleTable,
  after: RuleTable,
  inputsAfter: readonly ProgramInput[] = inputs,
): Trial {
  const draft = (input: ProgramInput, rules: RuleTable): string =>
    JSON.stringify(compose(input, rules).lines.map((line) => [line.item, line.dose, line.text]));
  const clients = inputs.flatMap((input, i) =>
    draft(input, before) === draft(inputsAfter[i] ?? input, after) ? [] : [i],
  );
  return { changed: clients.length, of: inputs.length, clients };
}

/** More than this many clients are counted only. */
const NAMED = 12;

/** What a trial says, with the codes of the clients whose drafts it would change. */
export function trialWords(
  { changed, of, clients }: { changed: number; of: number; clients: readonly string[] },
  words: Told['ruleWords'],
): string {
  const sentence = words.wouldChange(changed, of);
  if (clients.length === 0) return sentence;
  return words.ofClients(sentence, clients.slice(0, NAMED).join(', '), Math.max(0, clients.length - NAMED));
}
